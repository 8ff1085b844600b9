/**
 * What a page is made of before it reaches a terminal: rows of spans, each with the role its colour stands for.
 * Pages are pure functions that give rows; the terminal paints them, the plain printer and the tests read them.
 */
export type Role =
  | 'plain'
  /** The one thing to do now: bold. */
  | 'lead'
  /** The lit row of a list, the stage you are in: bold and inverse. */
  | 'lit'
  | 'settled'
  | 'attention'
  | 'halt'
  | 'quiet'
  /** Toward the centre of the curve. */
  | 'plus'
  /** Away from the centre of the curve. */
  | 'minus';

export type Span = Readonly<{ text: string; role?: Role }>;
export type Row = readonly Span[];

/** How a page is to look: its room in cells, and whether only 7-bit signs may be used. */
export type Look = Readonly<{ columns: number; rows: number; ascii: boolean }>;
