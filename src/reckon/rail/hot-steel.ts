/**
 * EN 1993-1-2:2005 table 3.1, carbon steel: what is left of yield strength (at 2 % strain), proportional limit and modulus.
 * Linear between rows. [found: transcribed alike in four open fire-engineering codes] Rates of a fire; a weld is shorter, so
 * these are on the safe side.
 */
const TABLE: readonly (readonly [number, number, number, number])[] = [
  [20, 1, 1, 1],
  [100, 1, 1, 1],
  [200, 1, 0.807, 0.9],
  [300, 1, 0.613, 0.8],
  [400, 1, 0.42, 0.7],
  [500, 0.78, 0.36, 0.6],
  [600, 0.47, 0.18, 0.31],
  [700, 0.23, 0.075, 0.13],
  [800, 0.11, 0.05, 0.09],
  [900, 0.06, 0.0375, 0.0675],
  [1000, 0.04, 0.025, 0.045],
  [1100, 0.02, 0.0125, 0.0225],
  [1200, 0, 0, 0],
];

export type HotSteel = Readonly<{
  /** Share of the yield strength. */
  yield: number;
  /** Share of the proportional limit: use it where no visible set is allowed. */
  proportional: number;
  /** Share of the modulus. */
  modulus: number;
}>;

/** Shares left at a temperature, °C; all of it below 20, nothing above 1200. */
export function hotSteel(at_C: number): HotSteel {
  const above = TABLE.findIndex(row => row[0] >= at_C);
  const high = above === -1 ? TABLE.at(-1)! : TABLE[above]!;
  const low = above > 0 ? TABLE[above - 1]! : high;
  const share = high === low ? 0 : (at_C - low[0]) / (high[0] - low[0]);
  const between = (k: 1 | 2 | 3) => low[k] + share * (high[k] - low[k]);
  return { yield: between(1), proportional: between(2), modulus: between(3) };
}
