import type { StockJob } from './stock-job.ts';

/**
 * The job in whole numbers. A size is a piece with one kerf, a room is a bar less its trim with one kerf, so that sizes in a bar simply add
 * up: Σ length + kerf × (n − 1) + trim ≤ bar is the same as Σ (length + kerf) ≤ bar − trim + kerf. Sizes fall from the first to the
 * last, and so do rooms.
 */
export type Shelf = Readonly<{
  size: Float64Array;
  room: Float64Array;
  /** How many bars of a type there are; no more than there are pieces. */
  limit: Int32Array;
  /** What a bar of a type costs, in whole steps of the aim. */
  cost: Float64Array;
}>;

export type Kinds = Readonly<{
  shelf: Shelf;
  /** Pieces of each kind. */
  demand: Int32Array;
  /** Which rows of the job a kind stands for. */
  rows: readonly (readonly number[])[];
  /** Which bar of the job a type is. */
  barOf: readonly number[];
  /** Steps of cost in one unit of the aim. */
  steps: number;
}>;

/** Units in a millimetre: fine enough that inches in sixty-fourths are whole, and 90 km still exact. */
const PER_MM = 1e8;
/** What just fits by the figures is let fit: 0.000 000 5 mm, half the last digit anyone could mean. */
const LET_MM = 5e-7;
const STEPS_PER_UNIT = 1e6;

/** A length for a person, without the noise of the last digits. */
export const mmText = (length_mm: number): string => `${Math.round(length_mm * 1e4) / 1e4} mm`;

/** The same of a length in units. */
export const lengthText = (units: number): string => mmText(units / PER_MM);

/** Pieces of one length to the unit are one kind, whatever row they stand in. */
const unitsOf = (length_mm: number): number => Math.round(length_mm * PER_MM);

/** A piece is never nothing, however short. */
const pieceUnits = (length_mm: number): number => Math.max(1, unitsOf(length_mm));

/** How many different lengths a job has. */
export const kindCount = (job: StockJob): number =>
  new Set(job.pieces.map(p => pieceUnits(p.length_mm))).size;

/** Whether a piece goes into a bar by itself. */
export const goesInto = (length_mm: number, bar_mm: number, trim_mm: number): boolean =>
  pieceUnits(length_mm) <= Math.round((bar_mm - trim_mm + LET_MM) * PER_MM);

/** Turns a checked job into kinds and types of bar. Bars too short for any piece are left out. */
export const kindsOf = (job: StockJob): Kinds => {
  const trim = job.trim_mm ?? 0;
  const rows = new Map<number, number[]>();
  job.pieces.forEach((piece, row) => {
    const units = pieceUnits(piece.length_mm);
    rows.set(units, [...(rows.get(units) ?? []), row]);
  });
  const lengths = [...rows.keys()].sort((a, b) => b - a);
  const kerf = unitsOf(job.kerf_mm);
  const size = Float64Array.from(lengths, l => l + kerf);
  const demand = Int32Array.from(lengths, l =>
    rows.get(l)!.reduce((sum, row) => sum + job.pieces[row]!.count, 0),
  );
  const pieces = demand.reduce((a, b) => a + b, 0);
  const roomOf = (bar: number): number =>
    Math.round((job.bars[bar]!.length_mm - trim + LET_MM) * PER_MM) + kerf;
  const countOf = (bar: number): number => Math.min(job.bars[bar]!.count ?? pieces, pieces);
  const barOf = job.bars
    .map((_, bar) => bar)
    .filter(bar => countOf(bar) > 0 && roomOf(bar) >= size.at(-1)!)
    .sort((a, b) => roomOf(b) - roomOf(a));
  const inAim = (bar: number): number => {
    const { length_mm, price = 0 } = job.bars[bar]!;
    return job.aim === 'bars' ? 1 : job.aim === 'length' ? length_mm : price;
  };
  // A step so fine that prices stay apart, and so coarse that their sum stays exact.
  const most = Math.max(...barOf.map(inAim), 1e-6) * pieces;
  const steps = job.aim === 'bars' ? 1 : Math.min(STEPS_PER_UNIT, 10 ** Math.floor(Math.log10(1e15 / most)));
  return {
    shelf: {
      size,
      room: Float64Array.from(barOf, roomOf),
      limit: Int32Array.from(barOf, countOf),
      cost: Float64Array.from(barOf, bar => Math.round(inAim(bar) * steps)),
    },
    demand,
    rows: lengths.map(l => rows.get(l)!),
    barOf,
    steps,
  };
};
