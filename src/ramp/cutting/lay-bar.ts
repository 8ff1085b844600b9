import type { Needed } from './needed.ts';

/** How a cut leans, seen from above with the bar's squared end at the left; `|` is square. */
export type Lean = '/' | '\\' | '|';

/** A piece as it lies in its bar. Distances along the bar from its squared end, mm, long point to long point. */
export type Cut = Readonly<{
  piece: Needed;
  from_mm: number;
  to_mm: number;
  /** Angles of its two ends as it lies, from square, rad. */
  start_rad: number;
  end_rad: number;
  start_lean: Lean;
  end_lean: Lean;
  /** Lies half rolled over against its neighbour, so that their mitres meet: they are one line, or two of the same lean. */
  turned: boolean;
  /** One of its mitres leans against the mitre that is cut before it: the saw swings over, or the bar is rolled. */
  swung: boolean;
}>;

export type LaidBar = Readonly<{
  cuts: readonly Cut[];
  /** All saw cuts along the bar, the last one too where something is left behind it, mm. */
  kerfs_mm: number;
  /** What pieces reach into each other where mitres are turned, mm: length of pieces beyond the length they take. */
  turned_mm: number;
  /** What turning saves against the same pieces unturned, kerfs counted, mm: it is in what is left. */
  saved_mm: number;
  /** Usable length behind the last cut, mm. */
  left_mm: number;
}>;

/** Ends nearer to square than this are square, rad: a saw's own scatter is larger. */
const SQUARE = 1e-4;

/** A piece either way round. */
type Way = Readonly<{ start: number; end: number }>;

const waysOf = (p: Needed): readonly Way[] => {
  const first = Math.abs(p.ends.first_rad);
  const second = Math.abs(p.ends.second_rad);
  const plain = { start: first, end: second };
  return p.known && Math.abs(first - second) > SQUARE ? [plain, { start: second, end: first }] : [plain];
};

/**
 * Distance along the bar from one piece's long point to the next one's, mm: − when they reach into each other. Two mitres that
 * face each other, one piece rolled half over, share the wedge of the flatter one; the blade takes kerf ÷ cos (derived).
 */
const between = (before: Needed, end: number, after: Needed, start: number, kerf_mm: number): number => {
  const plain = kerf_mm / Math.cos(end);
  if (!nested(before, end, after, start)) return plain;
  const across = Math.min(before.across_mm, after.across_mm);
  return kerf_mm / Math.cos(Math.max(end, start)) - across * Math.min(Math.tan(end), Math.tan(start));
};

const nested = (before: Needed, end: number, after: Needed, start: number): boolean =>
  before.known && after.known && end > SQUARE && start > SQUARE;

/** Which way round each piece lies so that the row is shortest: the best way to end with each way of the last piece. */
const bestWays = (pieces: readonly Needed[], kerf_mm: number): readonly Way[] => {
  type Row = Readonly<{ ways: readonly Way[]; sum: number }>;
  let rows: readonly Row[] = [];
  pieces.forEach((piece, i) => {
    rows = waysOf(piece).map((way): Row => {
      const before = pieces[i - 1];
      if (before === undefined) return { ways: [way], sum: 0 };
      const reached = rows.map(row => ({
        ways: [...row.ways, way],
        sum: row.sum + between(before, row.ways.at(-1)?.end ?? 0, piece, way.start, kerf_mm),
      }));
      return reached.reduce((a, b) => (b.sum < a.sum - 1e-9 ? b : a));
    });
  });
  return rows.reduce((a, b) => (b.sum < a.sum - 1e-9 ? b : a), rows[0] ?? { ways: [], sum: 0 }).ways;
};

/** A diagonal's mitres are parallel, the base's and the rail's; those of any other piece lean toward each other over its short side. */
const leansAlike = (p: Needed): boolean => p.kind === 'diagonal';

type Mitre = Exclude<Lean, '|'>;
const against = (lean: Mitre): Mitre => (lean === '/' ? '\\' : '/');

/** How the two cuts of a piece lean: the first as its neighbour's it meets, else as the saw stands already. */
const leansOf = (p: Needed, way: Way, asSawStands: Mitre): readonly [start: Lean, end: Lean] => {
  const end = leansAlike(p) || way.start <= SQUARE ? asSawStands : against(asSawStands);
  return [way.start > SQUARE ? asSawStands : '|', way.end > SQUARE ? end : '|'];
};

/** Room of a piece in its bar: one not known yet holds its steel back with what it may come out longer. */
const roomOf = (p: Needed): number => p.long_mm + p.over_mm;

const plainWidth = (pieces: readonly Needed[], kerf_mm: number): number =>
  pieces.reduce(
    (sum, p, i) =>
      sum + roomOf(p) + (i + 1 < pieces.length ? kerf_mm / Math.cos(Math.abs(p.ends.second_rad)) : 0),
    0,
  );

/**
 * The pieces of one bar in their order, with neighbouring mitres turned to each other where that saves. Never longer than the
 * plan, which was proven by long points.
 * @param usable_mm the bar's length without what squaring takes
 */
export const layBar = (pieces: readonly Needed[], usable_mm: number, kerf_mm: number): LaidBar => {
  const ways = bestWays(pieces, kerf_mm);
  const cuts: Cut[] = [];
  let kerfs_mm = 0;
  let turned_mm = 0;
  let at = 0;
  let saw_lean: Mitre = '\\';
  pieces.forEach((piece, i) => {
    const way = ways[i] ?? { start: 0, end: 0 };
    const before = cuts.at(-1);
    let turned = false;
    if (before !== undefined) {
      const apart = between(before.piece, before.end_rad, piece, way.start, kerf_mm);
      const meets = nested(before.piece, before.end_rad, piece, way.start);
      const saw = kerf_mm / Math.cos(meets ? Math.max(before.end_rad, way.start) : before.end_rad);
      at += apart;
      kerfs_mm += saw;
      turned_mm += saw - apart;
      turned = meets && !before.turned;
    }
    const to_mm = at + roomOf(piece);
    // The saw stands as the last mitre was cut, which is the one that a neighbour's lies against.
    const [start_lean, end_lean] = leansOf(piece, way, saw_lean);
    const swung = end_lean !== '|' && end_lean !== saw_lean;
    if (end_lean !== '|') saw_lean = end_lean;
    const ends = { start_rad: way.start, end_rad: way.end, start_lean, end_lean };
    cuts.push({ piece, from_mm: at, to_mm, ...ends, turned, swung });
    at = to_mm;
  });
  const behind = Math.max(0, usable_mm - at);
  const last = cuts.at(-1);
  const lastKerf = last === undefined ? 0 : Math.min(behind, kerf_mm / Math.cos(last.end_rad));
  return {
    cuts,
    kerfs_mm: kerfs_mm + lastKerf,
    turned_mm,
    saved_mm: Math.max(0, plainWidth(pieces, kerf_mm) - at),
    left_mm: behind - lastKerf,
  };
};
