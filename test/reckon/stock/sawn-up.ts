import type { StockBar, StockJob } from '../../../src/reckon/stock/stock-job.ts';

/** Numbers between 0 and 1, the same for one seed on every run. */
export const series = (seed: number) => {
  let s = seed >>> 0;
  return (): number => {
    s = (Math.imul(s, 1664525) + 1013904223) >>> 0;
    return s / 4294967296;
  };
};

/** Pieces of one length in one row. */
export const rowsOf = (lengths: readonly number[]) => {
  const rows = new Map<number, number>();
  for (const l of lengths) rows.set(l, (rows.get(l) ?? 0) + 1);
  return [...rows].map(([length_mm, count]) => ({ length_mm, count }));
};

/**
 * A job cut the other way round: just these bars are sawn up to the last, each into about one piece a metre and a half, in steps so fine.
 * @param perMm steps in a millimetre
 * @param alike so many bars running are sawn alike
 */
export const sawnUp = (
  seed: number,
  bars: readonly (readonly [length_mm: number, count: number])[],
  perMm: number,
  kerf_mm: number,
  alike = 1,
): { job: StockJob; whole_mm: number } => {
  const chance = series(seed * 7919);
  const lengths: number[] = [];
  let whole_mm = 0;
  for (const [length_mm, count] of bars)
    for (let b = 0; b < count; b += alike) {
      const pieces = Math.max(2, Math.round(length_mm / 1500 + 2 * chance() - 1));
      const net = Math.round((length_mm - kerf_mm * (pieces - 1)) * perMm);
      const cuts = new Set([0, net]);
      while (cuts.size < pieces + 1) cuts.add(Math.round((0.04 + 0.92 * chance()) * net));
      const places = [...cuts].sort((p, q) => p - q);
      const times = Math.min(alike, count - b);
      for (let k = 1; k < places.length; k++)
        for (let n = 0; n < times; n++) lengths.push((places[k]! - places[k - 1]!) / perMm);
      whole_mm += times * length_mm;
    }
  const stock: StockBar[] = bars.map(([length_mm, count]) => ({ length_mm, count }));
  return { job: { pieces: rowsOf(lengths), bars: stock, kerf_mm, aim: 'length' }, whole_mm };
};
