/** What a cutting plan is to have least of: bars, Σ of their lengths, or Σ of their prices. */
export const STOCK_AIMS = ['bars', 'length', 'price'] as const;
type StockAim = (typeof STOCK_AIMS)[number];

/** Pieces of one length. */
type StockPiece = Readonly<{ name?: string | undefined; length_mm: number; count: number }>;

/** Bars of one length; without a count as many as it takes, without a price for the aims that need none. An offcut is a bar with a count. */
export type StockBar = Readonly<{
  length_mm: number;
  count?: number | undefined;
  price?: number | undefined;
}>;

/**
 * What is to be cut, and from what. Pieces fit in a bar when Σ length + kerf × (pieces − 1) + trim ≤ its length.
 */
export type StockJob = Readonly<{
  pieces: readonly StockPiece[];
  bars: readonly StockBar[];
  kerf_mm: number;
  /** Taken off one end of each bar to square it; 0 when not given. */
  trim_mm?: number | undefined;
  aim: StockAim;
}>;

export type PlannedCut = Readonly<{ name?: string; length_mm: number }>;

/** One bar, its pieces from the longest to the shortest. */
export type PlannedBar = Readonly<{
  length_mm: number;
  cuts: readonly PlannedCut[];
  /** Bar − trim − Σ length − kerf × (pieces − 1). */
  left_mm: number;
}>;

export type StockPlan = Readonly<{
  bars: readonly PlannedBar[];
  bar_count: number;
  total_length_mm: number;
  /** Null unless every bar of the job has a price. */
  price: number | null;
  /** No plan has less of what the aim counts, in its own unit. */
  lower_bound: number;
  /** No better plan exists. */
  proven: boolean;
}>;

/** More than these is refused: the search is made for a frame, not for a mill. */
export const MOST_PIECES = 2000;
export const MOST_KINDS = 50;
/** A kilometre: longer is a slip of the pen, and sums would lose their last digits. */
export const LONGEST_MM = 1e6;
