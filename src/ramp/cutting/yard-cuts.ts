import { asShown } from '../../quantity/as-shown.ts';
import type { System } from '../design.ts';
import type { CutBar } from './cut-bars.ts';

/** Where the yard may cut a bar so that it goes home, and how far its saw may wander there without costing a piece. */
export type YardCuts = Readonly<{
  /** From the end that the bar's list is counted from, mm. */
  at_mm: readonly number[];
  /** How many of the bar's pieces lie ahead of each. */
  ahead: readonly number[];
  /** To each side of those marks, mm. */
  wander_mm: number;
  /** Longest part the bar is then carried as, mm. */
  longest_mm: number;
}>;

/** More play than this at a cut is of no use, mm (a yard's saw and tape are within it [practice]). */
const ENOUGH = 10;

/** Where the saw may wander no more than this, mm, its mark is not rounded to a step of the tape. */
const ROUNDED = 2;

/** What is left over and shorter than this is not worth a cut of the yard's, mm [practice]. */
const LEAST_REST = 300;

type Gap = Readonly<{ at: number; ahead: number; inside: boolean }>;

/** Places between two pieces where a square cut harms neither, and those behind the last piece. */
const gaps = (bar: CutBar, reach: number): readonly Gap[] => {
  const front = bar.trim_mm / 2;
  const list = bar.cuts.flatMap((cut, i): Gap[] => {
    const before = bar.cuts[i - 1]?.to_mm;
    // Mitres turned to each other overlap: a square cut there would take a corner off both.
    return before === undefined || cut.from_mm < before
      ? []
      : [{ at: front + (before + cut.from_mm) / 2, ahead: i, inside: true }];
  });
  const last = bar.cuts.at(-1);
  if (last === undefined) return list;
  for (let at = front + last.to_mm + 1; bar.length_mm - at >= LEAST_REST; at += reach)
    list.push({ at, ahead: bar.cuts.length, inside: false });
  return list;
};

/**
 * Cuts for transport between the pieces of a bar, so that no part is longer than can be carried, where the pieces allow it. What
 * is left over in the bar is shared out as room for the yard's saw, since each cut end is squared again at home.
 * @param carry_mm the longest that goes home
 * @param system marks are given as its tapes have them, where there is room
 */
export const yardCuts = (bar: CutBar, carry_mm: number, system: System): YardCuts => {
  const reach = Math.max(1, carry_mm - 2 * ENOUGH);
  const chosen: Gap[] = [];
  let from = 0;
  let rest = gaps(bar, reach);
  while (bar.length_mm - from > carry_mm && rest.length > 0) {
    const within = rest.filter(g => g.at - from <= reach);
    const next = within.at(-1) ?? (rest[0] as Gap);
    chosen.push(next);
    from = next.at;
    rest = rest.filter(g => g.at > next.at);
  }
  const inside = chosen.filter(g => g.inside).length;
  const wander_mm = inside === 0 ? ENOUGH : Math.min(ENOUGH, bar.left_mm / (2 * inside));
  // Every cut moves what lies behind it on by the room it was given, to both sides of its saw.
  const at_mm = chosen
    .map((g, k) => g.at + wander_mm * (g.inside ? 2 * k + 1 : 2 * k))
    .map(v => (wander_mm < ROUNDED ? v : asShown(v, 'length', system)));
  const marks = [0, ...at_mm, bar.length_mm];
  return {
    at_mm,
    ahead: chosen.map(g => g.ahead),
    wander_mm,
    longest_mm: Math.max(...marks.slice(1).map((m, i) => m - (marks[i] ?? 0))),
  };
};
