import type { View } from './view.ts';

/** When the build was last worked on, ms; null for one just begun. */
export const lastWorked = (view: View): number | null => {
  const last = view.build.live.filter(e => e.kind !== 'build-begun').at(-1);
  const at = Date.parse(last?.at ?? '');
  return Number.isNaN(at) ? null : at;
};

const DAY = 86_400_000;

export const daysAway = (view: View): number => {
  const last = lastWorked(view);
  return last === null ? 0 : Math.max(0, Math.floor((view.situation.now - last) / DAY));
};

/** One thing to look at after a pause; words under `rechecks.<id>`. */
export type Recheck = Readonly<{ id: string; rail?: string; measured: boolean }>;

/**
 * What to look at again after a pause, measured things first: by what was left open, and for how long
 * (common practice: tacks creep in days, bright steel rusts in one to three, gas leaks in weeks).
 */
export const rechecksOf = (view: View): readonly Recheck[] => {
  const days = daysAway(view);
  if (days < 1) return [];
  const list: Recheck[] = [];
  const { build, ramp } = view;
  const settled = (key: string): boolean => build.ticks.has(key) || build.skips.has(key);
  for (const rail of ramp.rails) {
    const marked = build.marks.some(m => m.rail === rail);
    const surveys = build.surveys.filter(s => s.rail === rail && s.closed && !s.retired);
    const cold = surveys.some(s => s.phase !== 'tacked' && s.phase !== 'half-welded');
    if (surveys.length > 0 && !cold) list.push({ id: 'rail-offsets', rail, measured: true });
    else if (cold && !surveys.some(s => s.phase === 'unclamped'))
      list.push({ id: 'other-rail', rail, measured: true });
    if (marked && !cold) list.push({ id: 'bright-metal', rail, measured: false });
  }
  const begun = build.marks.length > 0;
  if (begun && days >= 7)
    list.push({ id: 'gas-wire', measured: false }, { id: 'lens-battery', measured: false });
  if (build.readings.has('assemble/diagonals#d1') && !settled('assemble/weld'))
    list.push({ id: 'diagonals', measured: true });
  if (settled('brace/hold-base@A')) list.push({ id: 'clamps', measured: false });
  if (settled('finish/deck') || build.readings.has('finish/anchors#pull1')) {
    list.push({ id: 'anchors', measured: true }, { id: 'deck-outdoors', measured: false });
  }
  return [...list].sort((a, b) => Number(b.measured) - Number(a.measured));
};
