import { readingKey } from '../../build/fold.ts';
import type { RailName } from '../../ramp/design.ts';
import { TURN } from '../order.ts';
import type { Finding, Gate, Item, Offer, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';

/** Slits nearest the lip that are looked at with dye, and jumps after which the frame is looked at again (bench rule; practice). */
const NEAREST_LIP = 5;
const LOOK_AFTER = [10, 50] as const;

const LOOKS: readonly string[] = ['finish/cracks', ...LOOK_AFTER.map(n => `finish/look-again@${n}`)];

const cracksAt = (s: Situation, step: string): number =>
  s.build.readings.get(readingKey(step, 'cracks'))?.value ?? 0;

/** Cracks found and not read as mended since. */
export const openCracks = (s: Situation): number => LOOKS.reduce((sum, step) => sum + cracksAt(s, step), 0);

/** No reason opens it: a crack is mended and looked at again, or the ramp stays out of use. */
export const crackGate = (s: Situation): Gate => ({
  id: 'open-crack',
  shut: openCracks(s) > 0,
  never: true,
  fills: { count: openCracks(s) },
  measure: LOOKS.find(step => cracksAt(s, step) > 0) ?? 'finish/cracks',
});

/** Slits of a rail to look at: those nearest the lip, those beside its uprights, and any whose back wall was nicked. */
export const slitsToLookAt = (s: Situation, rail: RailName): readonly number[] => {
  const slits = s.ramp.plans.get(rail)?.slits ?? [];
  const look = new Set(slits.slice(-NEAREST_LIP).map(slit => slit.number));
  for (const m of s.ramp.members) {
    if (m.rail !== rail || m.kind !== 'upright' || m.flat === undefined) continue;
    // Flat k lies between slit k and slit k + 1.
    look.add(m.flat);
    look.add(m.flat + 1);
  }
  for (const note of s.build.slitNotes) if (note.rail === rail && note.note === 'nicked') look.add(note.slit);
  return slits.map(slit => slit.number).filter(number => look.has(number));
};

const slitItems = (s: Situation): readonly Item[] =>
  s.ramp.rails.flatMap(rail =>
    slitsToLookAt(s, rail).map(slit => ({ key: `finish/inspect#${rail}${slit}`, name: `${rail}${slit}` })),
  );

/** Joints in groups a person walks along: each side frame's, and those between the frames. */
const jointItems = (s: Situation): readonly Item[] => {
  const item = (name: string, joints: number): Item => ({
    key: `finish/inspect-joints#${name}`,
    name,
    note: { words: 'says.finish-joints', fills: { count: joints } },
  });
  const joints = (members: typeof s.ramp.members): number => members.reduce((sum, m) => sum + m.joints, 0);
  return [
    ...s.ramp.rails.map(rail => item(rail, joints(s.ramp.members.filter(m => m.rail === rail)))),
    item(s.ramp.rails.join('-'), joints(s.ramp.members.filter(m => m.rail === undefined))),
  ];
};

const cracksAsk = { ask: 'cracks', as: 'count', expected: [0, 0], possible: [0, 200] } as const;

/** Looking at bare welds before anything hides them, and saying how many are cracked. */
export const inspectSteps = (s: Situation): readonly StepDraft[] => {
  const slits = slitItems(s);
  const rolled = slits.length === 0;
  // Rolled rails have no slits: their joints with the uprights are dyed, a rail at a time.
  const items = rolled ? s.ramp.rails.map(rail => ({ key: `finish/inspect#${rail}`, name: rail })) : slits;
  return [
    {
      key: 'finish/inspect-joints',
      stage: 'finish',
      words: 'inspect-joints',
      fills: {},
      turn: TURN.finish,
      needs: ['assemble/weld', 'assemble/feet', 'assemble/lugs', 'assemble/entry-plate'],
      uses: [],
      items: jointItems(s),
      minutes: [30, 60],
    },
    {
      key: 'finish/inspect',
      stage: 'finish',
      words: rolled ? 'inspect-rolled' : 'inspect',
      fills: { count: items.length, nearest: NEAREST_LIP },
      turn: TURN.finish + 10,
      needs: ['finish/inspect-joints'],
      uses: [],
      items,
      minutes: [Math.max(15, 3 * items.length), Math.max(30, 5 * items.length)],
    },
    {
      key: 'finish/cracks',
      stage: 'finish',
      words: 'cracks',
      fills: {},
      turn: TURN.finish + 15,
      needs: ['finish/inspect'],
      uses: [],
      asks: [cracksAsk],
      minutes: [1, 3],
    },
  ];
};

/** The same look after the first jumps, when welds that were going to crack have begun to. */
export const lookAgainSteps = (): readonly StepDraft[] =>
  LOOK_AFTER.map((jumps, k) => ({
    key: `finish/look-again@${jumps}`,
    stage: 'finish',
    words: 'look-again',
    fills: { jumps },
    turn: TURN.finish + 160 + 10 * k,
    needs: ['finish/first-use', ...LOOK_AFTER.slice(0, k).map(n => `finish/look-again@${n}`)],
    uses: [],
    asks: [cracksAsk],
    minutes: [15, 30],
  }));

const offer = (remedy: string, minutes: number, count: number): Offer => ({
  remedy,
  minutes,
  plan: { cracks: count },
});

/** A crack open in a weld: mended by whoever can, or the ramp is put away. Riding on is not among what can be done. */
export const crackFindings = (s: Situation): readonly Finding[] => {
  const count = openCracks(s);
  if (count === 0) return [];
  return [
    {
      key: 'open-crack',
      stage: 'finish',
      severity: 'stop',
      words: count === 1 ? 'open-crack' : 'open-cracks',
      fills: { count },
      tall: { v: count, as: 'count' },
      worst_mm: count,
      offers: [
        offer('crack-out-of-use', 5, count),
        offer('crack-grind-out', 60 * count, count),
        offer('crack-coded-welder', 90 * count, count),
        offer('crack-new-rail', 600, count),
      ],
      blocks: ['finish/deck', 'finish/first-use'],
    },
  ];
};
