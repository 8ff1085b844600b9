import { USUAL_SIZE } from './usual-size.ts';

/** The part of an output stream that painting needs. */
export type PaintStream = Readonly<{
  write: (text: string) => unknown;
  columns?: number | undefined;
  rows?: number | undefined;
  on: (event: 'resize', listener: () => void) => unknown;
  off: (event: 'resize', listener: () => void) => unknown;
}>;

/** A stand-in for the output stream that Ink writes whole frames to. */
export type Painter = Readonly<{
  write: (frame: string) => boolean;
  /** Writes the last frame whole, as on an empty screen. */
  repaint: () => void;
  readonly columns: number;
  readonly rows: number;
  on: (event: string, listener: () => void) => unknown;
  off: (event: string, listener: () => void) => unknown;
}>;

/** One picture at a time: terminals that know the mode show nothing half drawn, others ignore it. */
const BEGIN_PICTURE = '\u001B[?2026h';
const END_PICTURE = '\u001B[?2026l';
const CLEAR = '\u001B[2J';
const CLEAR_LINE = '\u001B[2K';

const at = (row: number): string => `\u001B[${row + 1};1H`;

/**
 * Paints frames on a screen that is ours alone, row by row at its place, and only the rows that changed. The incremental
 * writer of Ink 6.8 counts back one row too few when a frame is lower than the screen, and its other writer sends every
 * row for every key; places on the screen cannot drift. Rows below the screen are left out, so that nothing ever scrolls.
 * @param ready rows from the top that stand in the place of the frame's own
 */
export const framePainter = (out: PaintStream, ready: () => readonly string[] = () => []): Painter => {
  let shown: readonly string[] | null = null;
  let last = '';
  let size = { columns: 0, rows: 0 };

  const sizeNow = (): { columns: number; rows: number } => ({
    columns: out.columns || USUAL_SIZE.columns,
    rows: out.rows || USUAL_SIZE.rows,
  });

  const paint = (frame: string): void => {
    const now = sizeNow();
    // A terminal lays its old rows out anew when its width changes: nothing of them can be kept.
    if (now.columns !== size.columns || now.rows !== size.rows) shown = null;
    size = now;
    const own = ready();
    const lines = frame
      .split('\n')
      .slice(0, now.rows)
      .map((line, i) => own[i] ?? line);
    const before = shown ?? [];
    const changed = Array.from({ length: Math.max(lines.length, before.length) }, (_, row) => row).filter(
      row => (lines[row] ?? '') !== (before[row] ?? ''),
    );
    // The row is cleared before it is written: after a full row, clearing to its end would take its last sign away.
    const written = changed.map(row => at(row) + CLEAR_LINE + (lines[row] ?? ''));
    if (shown === null) written.unshift(CLEAR);
    shown = lines;
    if (written.length > 0) out.write(BEGIN_PICTURE + written.join('') + END_PICTURE);
  };

  return {
    write: frame => {
      // Ink writes empty texts as barriers; no page is empty.
      if (frame !== '') {
        last = frame;
        paint(frame);
      }
      return true;
    },
    repaint: () => {
      shown = null;
      if (last !== '') paint(last);
    },
    get columns() {
      return sizeNow().columns;
    },
    get rows() {
      return sizeNow().rows;
    },
    on: (event, listener) => (event === 'resize' ? out.on('resize', listener) : undefined),
    off: (event, listener) => (event === 'resize' ? out.off('resize', listener) : undefined),
  };
};
