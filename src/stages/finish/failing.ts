import { type Reading, readingKey } from '../../build/fold.ts';
import type { RailName } from '../../ramp/design.ts';
import type { Situation } from '../situation.ts';
import { acrossGroups, type JointGroup, sideGroups } from './joint-groups.ts';

/** Jumps after which the frame is looked at again (bench rule; practice). */
export const LOOK_AFTER = [10, 50] as const;

export const LOOKS = {
  joints: (rail: RailName) => `finish/inspect-joints@${rail}`,
  across: 'finish/inspect-across',
  slits: 'finish/inspect',
  cracked: (rail: RailName) => `cracked@${rail}`,
  again: (jumps: number) => `finish/look-again@${jumps}`,
} as const;

/** What a failing weld shows; a crack is one of them. */
export const DEFECTS = [
  'weld-crack',
  'weld-not-wetted',
  'weld-hole',
  'weld-pores',
  'weld-groove',
  'weld-short',
  'weld-crater',
] as const;

/** Welds of a group that were said to fail and are not read as sound since. */
export type Failing = Readonly<{
  step: string;
  ask: string;
  /** Key of the finding: a new reading asks anew what is wrong. */
  key: string;
  group: JointGroup;
  rail: RailName | null;
  count: number;
  /** What was said of the worst of them; null until it is. */
  seen: string | null;
}>;

const reading = (s: Situation, step: string, ask: string): Reading | undefined =>
  s.build.readings.get(readingKey(step, ask));

const failingOf = (
  s: Situation,
  step: string,
  rail: RailName | null,
  groups: readonly JointGroup[],
): Failing[] =>
  groups.flatMap((group): Failing[] => {
    const read = reading(s, step, group.ask);
    if (read === undefined || read.value <= 0) return [];
    const key = `${step}#${group.ask}:${read.entry}`;
    const seen = s.build.chosen.filter(c => c.finding === key).at(-1)?.remedy ?? null;
    return [{ step, ask: group.ask, key, group, rail, count: read.value, seen }];
  });

const known = new WeakMap<Situation, readonly Failing[]>();

/** Groups of joints with welds that fail. Many steps ask it of the same moment: kept by the situation. */
export const failing = (s: Situation): readonly Failing[] => {
  const before = known.get(s);
  if (before !== undefined) return before;
  const now = [
    ...s.ramp.rails.flatMap(rail => failingOf(s, LOOKS.joints(rail), rail, sideGroups(s, rail))),
    ...failingOf(s, LOOKS.across, null, acrossGroups(s)),
  ];
  known.set(s, now);
  return now;
};

/** Cracks found and not read as mended since: where they were read, how many, and in which rail where that is known. */
export type Cracks = Readonly<{ step: string; rail: RailName | null; count: number }>;

/** Whether a reading counts cracks. */
export const saysCracks = (step: string, ask: string): boolean =>
  (step === LOOKS.slits && ask.startsWith('cracked@')) ||
  (ask === 'cracks' && LOOK_AFTER.some(jumps => step === LOOKS.again(jumps)));

export const cracks = (s: Situation): readonly Cracks[] => {
  const at = (step: string, ask: string, rail: RailName | null): Cracks => ({
    step,
    rail,
    count: reading(s, step, ask)?.value ?? 0,
  });
  return [
    ...failing(s)
      .filter(f => f.seen === 'weld-crack')
      .map(({ step, rail, count }) => ({ step, rail, count })),
    ...s.ramp.rails.map(rail => at(LOOKS.slits, LOOKS.cracked(rail), rail)),
    ...LOOK_AFTER.map(jumps => at(LOOKS.again(jumps), 'cracks', null)),
  ].filter(c => c.count > 0);
};
