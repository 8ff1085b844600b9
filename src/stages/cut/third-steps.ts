import { asShown } from '../../quantity/as-shown.ts';
import type { RailName } from '../../ramp/design.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import { railTurn } from '../order.ts';
import { type Third, thirdsOf } from '../rail-thirds.ts';
import type { Fill, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sawItemKey, slitStrip } from '../slit-strip.ts';
import { stopLine } from './hinge.ts';
import { slitSawNeeds } from './saw-steps.ts';
import { betweenMarks, blankLength } from './slit-marks.ts';
import { markItemKey, markKey, nextMark, nextSlit } from './thirds.ts';

/** The rail is clamped this near both sides of the cut, so that it cannot sag shut on the disc, mm (common practice). */
const CLAMP_NEAR = 150;
/** Slits between two looks at the disc and the hands (common practice). */
const REST_AFTER = 5;
/** Two registrations of three cuts agree to this for a first-timer, mm (common practice). */
const THREE_CUTS = 0.5;
/** Strip that must pass along the whole face, mm (common practice). */
const STRIP = 1;
/** A disc slower than this times the first five slits is done (common practice). */
const SLOWER = 1.5;

const length = (v: number): Fill => ({ v, as: 'length' });
const thickness = (v: number): Fill => ({ v, as: 'thickness' });

/** What a third is marked after: the tests and the blank, or the third before it closed and read. */
const markNeeds = (
  s: Situation,
  rail: RailName,
  index: number,
  third: number,
  before: number | null,
): string[] => {
  if (before !== null) return [`tack/read-third@${rail}:${before}`];
  const teacher = s.ramp.design.sequence === 'one after the other' ? s.ramp.rails[index - 1] : undefined;
  return [
    'cut/test-piece',
    'weld/test-piece',
    `cut/clean-rail@${rail}`,
    `cut/mark-blank@${rail}`,
    // One after the other means that the welded rail teaches the next one its pull before it is marked.
    ...(teacher === undefined || third !== 1 ? [] : [`weld/cold-survey@${teacher}`]),
  ];
};

const sawWords = (s: Situation): 'saw-third' | 'saw-third-band' | 'saw-third-blade' | 'saw-third-chop' => {
  switch (s.ramp.design.cutter.kind) {
    case 'thin disc':
      return 'saw-third';
    case 'chop saw':
      return 'saw-third-chop';
    case 'band saw':
      return 'saw-third-band';
    default:
      return 'saw-third-blade';
  }
};

const steps = (
  s: Situation,
  plan: RailPlan,
  index: number,
  t: Third,
  before: number | null,
): readonly StepDraft[] => {
  const { rail } = plan;
  const { third, slits } = t;
  const d = s.ramp.design;
  const tube = { ...d.tube, ...s.measured.tubes.get(rail) };
  const first = slits[0];
  const last = slits.at(-1);
  if (first === undefined || last === undefined) return [];
  const line = { face: 'hinge line', rail } as const;
  const numbers = { rail, first: first.number, last: last.number };
  const marked = first.marked !== null;
  return [
    {
      key: markKey(rail, third),
      stage: 'cut',
      words: slits.length === 1 ? 'mark-third-one' : 'mark-third',
      fills: {
        ...numbers,
        from: { v: first.at_mm, as: 'slit' },
        to: { v: last.at_mm, as: 'slit' },
        span: { v: betweenMarks(s, first.at_mm, last.at_mm), as: 'slit' },
        'to-end': {
          v: betweenMarks(s, last.at_mm, asShown(blankLength(s, plan), 'length', s.build.system)),
          as: 'slit',
        },
        pitch: { v: plan.pitch_mm, as: 'slit' },
        stop: length(stopLine(tube)),
        close: { v: first.close_rad, as: 'angle' },
        hook: length(s.build.system === 'us' ? 254 : 100),
        within: { v: 0.5, as: 'slit' },
      },
      turn: railTurn(d, index, { third, part: 'mark' }),
      needs: markNeeds(s, rail, index, third, before),
      uses: [`stop-line@${rail}`],
      tall: [`stop-line@${rail}`],
      line,
      items: slits.map(slit => ({
        key: markItemKey(rail, third, slit.number),
        name: String(slit.number),
        value: { v: slit.at_mm, as: 'slit' },
      })),
      marks: { rail, third },
      minutes: [5 + slits.length, 8 + 2 * slits.length],
      scene: slitStrip(s, rail, marked ? undefined : nextMark(s, rail, third)?.number),
    },
    {
      key: `cut/saw-third@${rail}:${third}`,
      stage: 'cut',
      words: sawWords(s),
      fills: {
        ...numbers,
        stop: length(stopLine(tube)),
        near: { v: CLAMP_NEAR, as: 'length', step: 1 },
        rest: REST_AFTER,
        off: { v: THREE_CUTS, as: 'slit' },
        slower: { v: SLOWER, as: 'ratio', step: 0.1 },
        wall: length(tube.wall_mm),
      },
      turn: railTurn(d, index, { third, part: 'saw' }),
      needs: [markKey(rail, third), ...slitSawNeeds(s)],
      uses: [`stop-line@${rail}`, `overhang@${rail}`],
      tall: [`stop-line@${rail}`],
      line,
      items: slits.map(slit => ({
        key: sawItemKey(rail, third, slit.number),
        name: String(slit.number),
        value: { v: slit.at_mm, as: 'slit' },
      })),
      minutes: [4 * slits.length, 7 * slits.length],
      cautions: ['cut-guard', 'cut-grab'],
      scene: slitStrip(s, rail, nextSlit(s, rail, third)?.number),
    },
    {
      key: `cut/deburr-third@${rail}:${third}`,
      stage: 'cut',
      words: 'deburr-third',
      // The kerf as marked: what this very reading teaches must not stand in its own words.
      fills: {
        ...numbers,
        kerf: thickness(s.measured.marks.get(rail)?.find(m => m.third === third)?.kerf_mm ?? plan.kerf_mm),
        strip: thickness(STRIP),
      },
      turn: railTurn(d, index, { third, part: 'deburr' }),
      needs: [`cut/saw-third@${rail}:${third}`],
      uses: [`overhang@${rail}`],
      asks: [
        {
          ask: 'kerf',
          as: 'thickness',
          expected: [Math.max(0.3, d.cutter.kerf_mm - 0.3), d.cutter.kerf_mm + 0.3],
          possible: [0.2, 6],
        },
      ],
      minutes: [2 * slits.length, 4 * slits.length],
      scene: slitStrip(s, rail),
    },
  ];
};

/** The slits of every rail, in thirds: marked from one end, sawn, deburred and gauged. Closing belongs to tacking. */
export const thirdSteps = (s: Situation): readonly StepDraft[] =>
  s.ramp.rails.flatMap((rail, index) => {
    const plan = s.ramp.plans.get(rail);
    const thirds = thirdsOf(s, rail);
    return plan === undefined
      ? []
      : thirds.flatMap((t, i) => steps(s, plan, index, t, i === 0 ? null : (thirds[i - 1]?.third ?? null)));
  });
