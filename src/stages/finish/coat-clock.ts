import { readingKey } from '../../build/fold.ts';
import type { Figure, Fills, Gate } from '../sheet.ts';
import type { Situation } from '../situation.ts';

const HOUR_ms = 3_600_000;
/** Steel bare longer than this has begun to rust again, h: prime the same day, three to four hours (trade pages found; hours practice). */
export const BARE_h = 4;
/** The last coat stands so long before a deck is screwed down on it, h (common practice; the tin may say more). */
export const HARD_h = 24;

export const COAT = { prime: 'finish/prime', first: 'finish/top', last: 'finish/paint' } as const;
export const CLEAN = 'finish/clean';
export const TINS = 'finish/tins';

const reading = (s: Situation, step: string, ask: string) =>
  s.build.readings.get(readingKey(step, ask)) ?? null;
const tickedAt = (s: Situation, step: string): number | null => {
  const at = Date.parse(s.build.ticks.get(step)?.at ?? '');
  return Number.isNaN(at) ? null : at;
};
const time = (ms: number) => ({ v: Math.max(0, ms) / 1000, as: 'time' }) as const;

/** How long the steel has been bare since it was read free of rust, ms, up to its primer; null before. */
export const bareFor = (s: Situation): number | null => {
  const clean = reading(s, CLEAN, 'rust');
  if (clean === null) return null;
  return Math.max(0, (tickedAt(s, COAT.prime) ?? s.now) - Date.parse(clean.at));
};

/** Shut while rust is left, and again once the steel has stood bare too long: wiped, looked at and read once more, it opens. */
export const bareGate = (s: Situation): Gate => {
  const left = reading(s, CLEAN, 'rust')?.value ?? 0;
  const bare = bareFor(s) ?? 0;
  return {
    id: left > 0 ? 'rust-left' : 'bare-too-long',
    shut: left > 0 || bare > BARE_h * HOUR_ms,
    fills: { left, bare: time(bare), most: time(BARE_h * HOUR_ms) },
    measure: CLEAN,
  };
};

/** When the coat after `before` may go on, by the tins: from, to, epoch ms; null before the coat or the tins were read. */
const window = (s: Situation, before: string): { from: number; to: number } | null => {
  const at = tickedAt(s, before);
  const from = reading(s, TINS, 'from')?.value;
  const to = reading(s, TINS, 'to')?.value;
  if (at === null || from === undefined || to === undefined) return null;
  return { from: at + from * 1000, to: at + Math.max(from, to) * 1000 };
};

/** Shut until the coat before takes another, and once it is too hard for one to bite. */
export const recoatGate = (s: Situation, before: string): Gate => {
  const open = window(s, before);
  const soon = open !== null && s.now < open.from;
  const late = open !== null && s.now > open.to;
  return {
    id: late ? 'recoat-too-late' : 'recoat-too-soon',
    shut: soon || late,
    fills: {
      left: time(open === null ? 0 : open.from - s.now),
      past: time(open === null ? 0 : s.now - open.to),
    },
  };
};

/** The window of the next coat as its step says it; a question mark where the tins were not read or the coat is not on. */
export const recoatFills = (s: Situation, before: string): Fills => {
  const open = window(s, before);
  return {
    from: open === null ? '?' : time(open.from - s.now),
    // Minutes say nothing of days.
    to: open === null ? '?' : time(Math.floor((open.to - s.now) / HOUR_ms) * HOUR_ms),
  };
};

/** Shut until the last coat has hardened enough to be screwed through. */
export const paintSoftGate = (s: Situation): Gate => {
  const at = tickedAt(s, COAT.last);
  const left = at === null ? 0 : at + HARD_h * HOUR_ms - s.now;
  return { id: 'paint-soft', shut: left > 0, fills: { left: time(left), wait: time(HARD_h * HOUR_ms) } };
};

/** What the clocks say: time left to prime in, and until the next coat and its end. */
export const clockFigures = (s: Situation): readonly Figure[] => {
  const figure = (id: string, ms: number | null, needs: string): Figure => ({
    id,
    kind: 'size',
    as: 'time',
    value: ms === null ? { is: 'unknown', needs } : { is: 'exact', v: Math.max(0, ms) / 1000 },
    matters: 60,
  });
  const bare = bareFor(s);
  const before = tickedAt(s, COAT.first) === null ? COAT.prime : COAT.first;
  const next = tickedAt(s, COAT.last) === null ? window(s, before) : null;
  const needs = tickedAt(s, before) === null ? before : TINS;
  return [
    figure('bare-left', bare === null ? null : BARE_h * HOUR_ms - bare, CLEAN),
    figure('coat-from', next === null ? null : next.from - s.now, needs),
    figure('coat-to', next === null ? null : next.to - s.now, needs),
  ];
};
