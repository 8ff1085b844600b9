import type { StepKey } from '../build/fold.ts';
import { readingKey } from '../build/fold.ts';
import type { Situation } from './situation.ts';
import { sameWall } from './weld-walls.ts';

/** Test welds that are broken: an upright on a rail bent flat over, a closed slit bent open, one of them sawn across. */
export const PIECES = ['tee', 'slit', 'sawn'] as const;
export type TestPiece = (typeof PIECES)[number];

/**
 * What is seen on a broken piece, as the person tells it by a number: 1 it held, 2 the bead peeled off a shiny line, 3 a hole or sagged
 * through, 4 pinholes, 5 torn along the bead's edge.
 */
export const LOOKS = ['held', 'cold', 'hot', 'pores', 'edge'] as const;
export type Look = (typeof LOOKS)[number];

export const FIRST_ROUND = 'weld/coupons';
/** Pieces are welded again under a key of their own each time: the first keeps the plain one. */
export const roundKey = (round: number): StepKey => (round === 1 ? FIRST_ROUND : `${FIRST_ROUND}:${round}`);

export type Broken = Readonly<{
  round: number;
  look: Look;
  /** Entry that tells it, and when it was broken, ms. */
  entry: string;
  at_ms: number;
  /** What it was welded with, as it was known then: `weld-kind`, `weld-wire`, `weld-wall`, `joint-wall`. */
  with: Readonly<Record<string, number>>;
}>;

/** What was seen on a piece in one round; null when it was not broken then. */
export const brokenIn = (s: Situation, round: number, piece: TestPiece): Broken | null => {
  const key = readingKey(roundKey(round), piece);
  const read = s.build.readings.get(key);
  if (read !== undefined)
    return {
      round,
      look: LOOKS[Math.round(read.value) - 1] ?? 'cold',
      entry: read.entry,
      at_ms: Date.parse(read.at),
      with: read.basis,
    };
  // A piece that was ticked off held: there was no other thing to say of it.
  const tick = s.build.ticks.get(key);
  return tick === undefined
    ? null
    : { round, look: 'held', entry: tick.entry, at_ms: Date.parse(tick.at), with: tick.basis };
};

/** Rounds of pieces that anything is known of: at least the first. */
export const roundsOf = (s: Situation): number => {
  let round = 1;
  while (
    PIECES.some(piece => brokenIn(s, round + 1, piece) !== null) ||
    s.build.skips.has(roundKey(round + 1))
  )
    round++;
  return round;
};

/** The last piece of its sort that was broken; null when none was. */
export const lastBroken = (s: Situation, piece: TestPiece): Broken | null => {
  for (let round = roundsOf(s); round >= 1; round--) {
    const found = brokenIn(s, round, piece);
    if (found !== null) return found;
  }
  return null;
};

export type Lapse = 'long pause' | 'other wire' | 'other gas' | 'other wall';

/** Kinds of machine that feed the same wire under another gas. */
const SOLID = new Set([1, 2]);
/** A wire told in inches and the same told in mm differ by less, mm. */
const ONE_WIRE_mm = 0.05;

/** What has changed at the machine or the steel since a piece was welded; null when nothing that counts, or nothing was known then. */
export const changedSince = (
  s: Situation,
  then: Readonly<Record<string, number>>,
  wall: Readonly<{ figure: string; now_mm: number }>,
): Exclude<Lapse, 'long pause'> | null => {
  const now = (ask: string): number | undefined =>
    s.build.readings.get(readingKey('weld/machine', ask))?.value;
  const [kind, wire] = [now('kind'), now('wire')];
  const was = { kind: then['weld-kind'], wire: then['weld-wire'], wall: then[wall.figure] };
  if (kind !== undefined && was.kind !== undefined && kind !== was.kind)
    return SOLID.has(kind) && SOLID.has(was.kind) ? 'other gas' : 'other wire';
  if (wire !== undefined && was.wire !== undefined && Math.abs(wire - was.wire) > ONE_WIRE_mm)
    return 'other wire';
  if (was.wall !== undefined && !sameWall(wall.now_mm, was.wall)) return 'other wall';
  return null;
};
