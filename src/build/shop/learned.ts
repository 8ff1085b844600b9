/** A number as a band: likely value, and the two it lies between nine times in ten. */
export type Band = Readonly<{ low: number; likely: number; high: number }>;

/** What is believed of a number that is never below zero, on the logarithm: a usual range, and how far single readings scatter. */
export type Belief = Readonly<{ usual: readonly [number, number]; scatter: number }>;

export type Learned = Readonly<
  Band & {
    /** Readings it rests on; 0 is the usual range alone. */
    count: number;
  }
>;

/** Standard normal quantile that leaves 5 % above: nine in ten lie within ± it [memory: tables of the normal distribution]. */
const NINE_TENTHS = 1.645;

/**
 * What readings teach of a number, beginning from what is usual: a log-normal mean with a log-normal prior whose 90 % range is the
 * usual one (conjugate update of a normal mean with known scatter; derived). One odd reading moves it by its share, not more; the
 * middle of the readings counts, so that a slip of the pen does not (median).
 * @param readings each above 0; the weight of a reading is one
 */
export const learn = (readings: readonly number[], belief: Belief): Learned => {
  const [from, to] = belief.usual;
  const prior = (Math.log(from) + Math.log(to)) / 2;
  const priorSpread = (Math.log(to) - Math.log(from)) / (2 * NINE_TENTHS);
  const logs = readings.filter(r => r > 0).map(Math.log);
  const n = logs.length;
  const precision = 1 / priorSpread ** 2 + n / belief.scatter ** 2;
  const mean = (prior / priorSpread ** 2 + (n * median(logs, prior)) / belief.scatter ** 2) / precision;
  const spread = 1 / Math.sqrt(precision);
  const at = (z: number): number => Math.exp(mean + z * spread);
  return { low: at(-NINE_TENTHS), likely: at(0), high: at(NINE_TENTHS), count: n };
};

const median = (values: readonly number[], none: number): number => {
  if (values.length === 0) return none;
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  const upper = sorted[half] ?? none;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? none) + upper) / 2;
};
