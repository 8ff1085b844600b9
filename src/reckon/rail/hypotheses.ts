import type { Cause, EdgeName, SwingEnd } from './diagnosis.ts';

/**
 * What may have happened to a rail, as the diagnosis weighs it, with how likely each is before anything is read.
 * Every figure here is our own [derived]: sizes from working ranges (weld pull 1.25 to 10 mrad a slit, a missed
 * slit 31 mrad, misplacements of a few mm and mrad, slit scatter sd up to 1 mrad), tuned on simulated rails.
 */

/** Something in the readings that is no one slit and no edge. A swing is a rail turned
 * about one of its ends while it was read. A run is a stretch of slits that pulled more, or less, than the rest. */
export type Oddity =
  | { is: 'reading'; station: number }
  | { is: 'jump'; after: number }
  | { is: 'swing'; after: number; about: SwingEnd }
  | { is: 'bump'; at_mm: number; half_mm: number }
  | { is: 'run'; from: number; to: number };

/** How far the rail lies from its mark before anything is read: sd across the line at the start and at the far end, mm. */
export type Lay = Readonly<{
  name: 'true' | 'askew' | 'far askew';
  across_mm: number;
  turn_mm: number;
  turn_rad: number;
}>;

export const LAYS: readonly Lay[] = [
  { name: 'true', across_mm: 0.4, turn_mm: 0.6, turn_rad: 0 },
  { name: 'askew', across_mm: 6, turn_mm: 6, turn_rad: 0.004 },
  { name: 'far askew', across_mm: 25, turn_mm: 25, turn_rad: 0.015 },
];
/** Share of the three lays where being askew is not the cause itself. */
export const LAY_SHARE = [0.4, 0.5, 0.1] as const;

export type Hypothesis = Readonly<{
  cause: Cause;
  /** log of the prior weight, whole hypothesis. */
  prior: number;
  /** Lays to be summed over, with their shares. */
  lays: readonly Readonly<{ lay: Lay; share: number }>[];
  /** An even error in every slit: its sd (rad), 0 when there is none. `sign` keeps one side. */
  even_sd: number;
  sign: 1 | -1 | 0;
  /** Odd slits, counted from 0. `known` is the size of a missed slit. */
  slits: readonly Readonly<{ at: number; mean_rad: number; sd_rad: number; truncated: boolean }>[];
  edge: Readonly<{ of: EdgeName; mm: number; sd_mm: number; least_mm: number }> | null;
  oddity: Oddity | null;
  /** Sd of the oddity's size, mm. */
  odditySd: number;
  /** Unevenness along the rail: each a weight for every slit, and the sd of its size (rad). */
  patterns: readonly Readonly<{ weights: readonly number[]; sd_rad: number }>[];
  /** Spreads beyond any good rail: the catch-all. */
  wild: boolean;
}>;

/** A slit is odd from 6 mrad (contract of the number command); the reading of one may fall a little short. */
export const ODD_FROM = 0.006;
export const ODD_SD = 0.018;
/** The least even error worth a name, rad. */
export const EVEN_FROM = 0.0001;
export const EVEN_SD = [0.0008, 0.0035] as const;
export const EVEN_SHARE = [0.35, 0.65] as const;
/** Slits that at least this many stations see from either side: fewer cannot tell a slit from a rail laid askew. */
export const SEEN_BY = 2;
/** Two odd slits nearer to each other than this, in slits, read as one. */
export const PAIR_APART = 3;
export const MISSED_SHARE = 0.15;
export const MISSED_SD = 0.001;

/** Prior weights of the causes. They need not add up to one. */
export const WEIGHT = {
  line: 0.17,
  askew: 0.17,
  edge: 0.13,
  over: 0.14,
  under: 0.1,
  one: 0.14,
  overOne: 0.1,
  underOne: 0.06,
  two: 0.07,
  reading: 0.006,
  readingSlit: 0.003,
  jump: 0.01,
  swing: 0.01,
  bump: 0.02,
  smooth: 0.012,
  run: 0.012,
  wild: 0.003,
} as const;

/** Sd of one wrong reading (a finger on the next key, a factor of ten), of a jump, of a bump, and of a swing at its far end, mm. */
export const READING_SD = [4, 40] as const;
export const JUMP_SD = 5;
export const BUMP_SD = 5;
export const SWING_SD = 5;
/** Sd of the first of four smooth waves of error along the rail, rad a slit; each next is less. */
export const SMOOTH_SD = 0.0025;
export const SMOOTH_WAVES = 4;
/** Sd of what a run of slits has beyond the rest, rad a slit. */
export const RUN_SD = 0.003;

/** The spread of readings (mm, sd) and of slits (rad, sd), with the weight of each before anything is read. */
export type Spread = Readonly<{ noise_mm: number; scatter_rad: number; prior: number; wild: boolean }>;

const READING_ERRORS = [
  [0, 0.15],
  [0.15, 0.2],
  [0.3, 0.25],
  [0.5, 0.2],
  [0.8, 0.13],
  [1.3, 0.07],
] as const;
const SCATTERS = [
  [0.0001, 0.2],
  [0.0004, 0.25],
  [0.0007, 0.25],
  [0.001, 0.25],
  [0.0014, 0.05],
] as const;
const WILD = [
  [1, 0.0025],
  [1, 0.005],
  [3, 0.001],
  [3, 0.004],
  [8, 0.002],
] as const;

/** Most that two readings of one station may differ and still be two readings of one thing: beyond it one was misread, mm. */
const TWICE_MOST = 6;

/** A second reading stands on the same mark and the same line as the first, and sees only part of what a reading is out by [practice]. */
const TWICE_WORTH = 0.5;

/** What stations read twice say of a noise: each difference is one of N(0, 2 noise²), its rounding in the noise. [derived] */
const toldTwice = (noise_mm: number, twice_mm: readonly number[]): number =>
  TWICE_WORTH *
  twice_mm.reduce(
    (sum, d) => sum - Math.log(noise_mm) - Math.min(Math.abs(d), TWICE_MOST) ** 2 / (4 * noise_mm ** 2),
    0,
  );

/** Spreads to be weighed for readings taken to a step: uniform rounding is step/√12 [derived], to it a reading error is added. */
export function spreads(read_to_mm: number, twice_mm: readonly number[] = []): Spread[] {
  const rounding = read_to_mm / Math.sqrt(12);
  const good = READING_ERRORS.flatMap(([error, a]) =>
    SCATTERS.map(([scatter_rad, b]) => ({
      noise_mm: Math.hypot(rounding, error, 0.02),
      scatter_rad,
      prior: Math.log(a * b) + toldTwice(Math.hypot(rounding, error, 0.02), twice_mm),
      wild: false,
    })),
  );
  const wild = WILD.map(([times, scatter_rad]) => ({
    noise_mm: times * Math.hypot(rounding, 0.5),
    scatter_rad,
    prior: Math.log(1 / WILD.length) + toldTwice(times * Math.hypot(rounding, 0.5), twice_mm),
    wild: true,
  }));
  return [...good, ...wild];
}
