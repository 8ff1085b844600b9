import { readingKey } from '../../build/fold.ts';
import type { RailName } from '../../ramp/design.ts';
import { jigScene } from '../jig.ts';
import { railTurn } from '../order.ts';
import { type Third, thirdsOf } from '../rail-thirds.ts';
import type { Ask, Fills, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { tackLengths } from './limits.ts';
import { bendAfter, KEYS, leverOf, tackOrder } from './thirds.ts';

/** Kerf of a slit as a first-timer saws it, mm either way: what the bend of a third may be out by (common practice). */
const KERF_SCATTER = 0.1;
/** A gap thinner than this is no gap: the faces are closed tight, mm (common practice). */
const LEAST_GAP = 0.1;
/** A look that differs by more changes how the rest is tacked, rad: 0.3° (common practice: three readings of a 0.1° gauge). */
const LOOK = (0.3 * Math.PI) / 180;
/** What a tack pulls its slit shut by, mm (common practice). */
const TACK_PULLS = [0.2, 0.5] as const;
/** Legs a straight edge needs to read an angle, mm: 1 mm on 600 is 0.1° (common practice; exact). */
const LEG = 600;

const thickness = (v: number) => ({ v, as: 'thickness' }) as const;
const angle = (v: number) => ({ v, as: 'angle' }) as const;
const length = (v: number) => ({ v, as: 'length' }) as const;

const bentAsk = (s: Situation, rail: RailName, t: Third): Ask => {
  const bend = bendAfter(s, rail, t.third);
  const slack = (t.slits.length * KERF_SCATTER) / leverOf(s, rail);
  return {
    ask: 'bent',
    as: 'angle',
    expected: [Math.max(0, bend - slack), bend + slack],
    possible: [0, 2 * bend + 0.2],
  };
};

/** What the look found: bend too much (+) or missing (−) with a third of the tacks in, rad; null until it was read. */
const lookOff = (s: Situation, rail: RailName, third: number): number | null => {
  const read = s.build.readings.get(readingKey(KEYS.look(rail, third), 'bent'));
  return read === undefined ? null : read.value - bendAfter(s, rail, third);
};

/** How the rest is tacked follows from the look: as it lies, with shims in the slits, or pressed against the blocks. */
const restWords = (off: number | null): 'tack-rest' | 'tack-rest-shim' | 'tack-rest-press' => {
  if (off === null || Math.abs(off) <= LOOK) return 'tack-rest';
  return off > 0 ? 'tack-rest-shim' : 'tack-rest-press';
};

const stepsOf = (s: Situation, rail: RailName, index: number, t: Third): readonly StepDraft[] => {
  const { third, slits } = t;
  const [first, last] = [slits[0], slits.at(-1)];
  if (first === undefined || last === undefined) return [];
  const plan = s.ramp.plans.get(rail);
  const tube = { ...s.ramp.design.tube, ...s.measured.tubes.get(rail) };
  const tacks = tackLengths(tube.wall_mm);
  const order = tackOrder(t);
  const off = lookOff(s, rail, third);
  const turn = (part: 'close' | 'read') => railTurn(s.ramp.design, index, { third, part });
  const fills: Fills = {
    rail,
    third,
    first: first.number,
    last: last.number,
    tacked: order.first.map(slit => slit.number).join(', '),
    left: order.rest.map(slit => slit.number).join(', '),
    gap: thickness(first.gap_mm),
    'tack-low': length(tacks.low),
    'tack-high': length(tacks.high),
    'pull-low': thickness(TACK_PULLS[0]),
    'pull-high': thickness(TACK_PULLS[1]),
    leg: length(LEG),
    rise: length(1),
    step: angle(1 / LEG),
    off: angle(Math.abs(off ?? 0)),
    shim: thickness((leverOf(s, rail) * Math.abs(off ?? 0)) / Math.max(1, order.rest.length)),
  };
  const scene = jigScene(s, rail, {
    railOn: 'tack line',
    blocks: true,
    lit_mm: first.at_mm,
  });
  const common = { stage: 'tack', fills, scene, line: 'tack line' } as const;
  const bend = `bend-after@${rail}:${third}`;
  const tight = first.gap_mm < LEAST_GAP;
  const close: StepDraft = {
    ...common,
    key: KEYS.close(rail, third),
    words: tight ? 'close-third' : 'close-third-gap',
    turn: turn('close'),
    needs: [
      `cut/deburr-third@${rail}:${third}`,
      'tack/blocks',
      `tack/lines@${rail}`,
      'prep/place',
      'prep/power',
      'prep/body',
      'prep/weather',
      'prep/dry-steel',
    ],
    uses: [`close-each@${rail}:${third}`, `overhang@${rail}`, bend],
    tall: [`close-each@${rail}:${third}`],
    items: slits.map((slit, i) => ({
      key: `${KEYS.close(rail, third)}#${slit.number}`,
      name: String(slit.number),
      note: { words: i % 3 === 0 ? 'says.tack-close-tack' : 'says.tack-close' },
    })),
    cautions: ['tack-first-arc'],
    minutes: [4 * slits.length, 7 * slits.length],
  };
  const read: StepDraft = {
    ...common,
    key: KEYS.read(rail, third),
    words: 'read-third',
    turn: turn('read'),
    needs: [order.rest.length > 0 ? KEYS.rest(rail, third) : KEYS.close(rail, third)],
    uses: [bend],
    tall: [bend],
    asks: [bentAsk(s, rail, t)],
    minutes: [5, 10],
    scene: jigScene(s, rail, { railOn: 'tack line', lit_mm: plan?.toLip_mm ?? 0 }),
  };
  if (order.rest.length === 0) return [close, read];
  return [
    close,
    {
      ...common,
      key: KEYS.look(rail, third),
      words: 'look-third',
      turn: turn('close') + 2,
      needs: [KEYS.close(rail, third)],
      uses: [bend],
      tall: [bend],
      asks: [bentAsk(s, rail, t)],
      minutes: [3, 6],
    },
    {
      ...common,
      key: KEYS.rest(rail, third),
      words: restWords(off),
      turn: turn('close') + 4,
      needs: [KEYS.look(rail, third)],
      uses: [],
      items: order.rest.map(slit => ({
        key: `${KEYS.rest(rail, third)}#${slit.number}`,
        name: String(slit.number),
      })),
      minutes: [2 * order.rest.length, 4 * order.rest.length],
    },
    read,
  ];
};

/** Closing, tacking and reading a rail, one third at a time, so that the next third is marked from what was read. */
export const thirdSteps = (s: Situation, rail: RailName, index: number): readonly StepDraft[] =>
  thirdsOf(s, rail).flatMap(t => stepsOf(s, rail, index, t));
