import type { RailName } from '../../ramp/design.ts';
import { TURN } from '../order.ts';
import type { Ask, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { failing, LOOK_AFTER, LOOKS } from './failing.ts';
import { acrossGroups, type JointGroup, sideGroups } from './joint-groups.ts';
import { weldGates } from './weld-gates.ts';

/** Slits nearest the lip that are looked at with dye (bench rule; practice). */
const NEAREST_LIP = 5;
/** Minutes to look at one weld with lamp and fingernail (common practice). */
const MINUTES = [0.7, 1.5] as const;

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

/** Slits with the rail they are in; rolled rails have none: their joints with the uprights are dyed, a rail at a time. */
const dyeItems = (s: Situation, rolled: boolean): readonly Item[] =>
  s.ramp.rails.flatMap((rail): readonly Item[] => {
    const ask = LOOKS.cracked(rail);
    if (rolled) return [{ key: `${LOOKS.slits}#${rail}`, name: rail, ask }];
    return slitsToLookAt(s, rail).map(slit => ({
      key: `${LOOKS.slits}#${rail}${slit}`,
      name: `${rail}${slit}`,
      ask,
    }));
  });

/** How many of a group fail: 0 is said by passing it. */
const failsAsk = (ask: string, most: number): Ask => ({
  ask,
  as: 'count',
  expected: [0, Math.max(1, most)],
  possible: [0, Math.max(1, most)],
  optional: true,
});

const groupItem = (s: Situation, step: string, group: JointGroup): Item => {
  const open = failing(s).find(f => f.step === step && f.ask === group.ask);
  return {
    key: `${step}#${group.ask}`,
    name: group.name,
    ask: group.ask,
    ...(open === undefined ? {} : { value: { v: open.count, as: 'count' } as const }),
    note:
      open === undefined
        ? { words: 'says.finish-joints', fills: { count: group.welds } }
        : { words: 'says.finish-joints-fail', fills: { count: group.welds, fail: open.count } },
  };
};

const groupStep = (
  s: Situation,
  key: string,
  words: string,
  turn: number,
  groups: readonly JointGroup[],
): StepDraft => {
  const welds = groups.reduce((sum, g) => sum + g.welds, 0);
  return {
    key,
    stage: 'finish',
    words,
    fills: { welds },
    turn,
    needs: ['assemble/weld', 'assemble/feet', 'assemble/lugs', 'assemble/entry-plate'],
    uses: ['weld-groove', 'weld-pore', 'weld-leg', 'weld-short', 'weld-proud', 'slit-step'],
    items: groups.map(g => groupItem(s, key, g)),
    asks: groups.map(g => failsAsk(g.ask, g.welds)),
    minutes: [Math.ceil(welds * MINUTES[0]), Math.ceil(welds * MINUTES[1])],
  };
};

/** Looking at bare welds before anything hides them: each group passed with one key, or said to fail and how many. */
export const inspectSteps = (s: Situation): readonly StepDraft[] => {
  const rolled = s.ramp.rails.every(rail => slitsToLookAt(s, rail).length === 0);
  const items = dyeItems(s, rolled);
  const joints = s.ramp.rails.map((rail, k) => {
    const step = groupStep(s, LOOKS.joints(rail), 'inspect-joints', TURN.finish + k / 2, sideGroups(s, rail));
    return { ...step, fills: { ...step.fills, rail } };
  });
  return [
    ...joints,
    groupStep(s, LOOKS.across, 'inspect-across', TURN.finish + 8, acrossGroups(s)),
    {
      key: LOOKS.slits,
      stage: 'finish',
      words: rolled ? 'inspect-rolled' : 'inspect',
      fills: { count: items.length, nearest: NEAREST_LIP },
      turn: TURN.finish + 10,
      needs: [...s.ramp.rails.map(LOOKS.joints), LOOKS.across],
      uses: [],
      items,
      asks: s.ramp.rails.map(rail =>
        failsAsk(LOOKS.cracked(rail), Math.max(1, s.ramp.plans.get(rail)?.slits.length ?? 1)),
      ),
      minutes: [Math.max(15, 3 * items.length), Math.max(30, 5 * items.length)],
    },
  ];
};

/** The same look after the first jumps, when welds that were going to crack have begun to. */
export const lookAgainSteps = (s: Situation): readonly StepDraft[] =>
  LOOK_AFTER.map((jumps, k) => ({
    key: LOOKS.again(jumps),
    stage: 'finish',
    words: 'look-again',
    fills: { jumps },
    turn: TURN.finish + 160 + 10 * k,
    needs: ['finish/first-use', ...LOOK_AFTER.slice(0, k).map(LOOKS.again)],
    uses: [],
    asks: [{ ask: 'cracks', as: 'count', expected: [0, 0], possible: [0, 200] }],
    // A crack of the first look keeps the next jumps from happening.
    gates: k === 0 ? [] : weldGates(s),
    minutes: [15, 30],
  }));
