import { CLEAR_OF_SLIT } from '../../ramp/members.ts';
import { curveOf } from '../../ramp/rail-plan.ts';
import type { Situation } from '../situation.ts';

/** A board or strip ripped narrower than this share of a whole one splits at its screws: the last two share what is left (common practice). */
const NARROWEST_SHARE = 1 / 3;
/** Screws keep this far from a board's edge, and two in one board this far apart, mm (common practice). */
const EDGE = 20;
const APART = 40;

/** One board as it lies on the deck top, distances down the curve from the lip, mm. */
export type Board = Readonly<{ number: number; from_mm: number; width_mm: number }>;

/**
 * Boards across the travel from the lip down, whole ones first; what is left is ripped, and shared by the last two where it would
 * be a sliver. A rest too small for a gap and a sliver widens the gaps instead.
 * @param long_mm deck top from lip to entry plate
 * @param board_mm width of a board as measured
 * @param gap_mm between boards
 */
export const layBoards = (long_mm: number, board_mm: number, gap_mm: number): readonly Board[] => {
  const whole = Math.max(0, Math.floor((long_mm + gap_mm) / (board_mm + gap_mm) + 1e-9));
  if (whole === 0) return [{ number: 1, from_mm: 0, width_mm: long_mm }];
  const rest = long_mm - whole * (board_mm + gap_mm);
  const widths = Array.from({ length: whole }, () => board_mm);
  let gap = gap_mm;
  if (rest <= 0) gap = whole > 1 ? gap_mm + (rest + gap_mm) / (whole - 1) : gap_mm;
  else if (rest >= NARROWEST_SHARE * board_mm) widths.push(rest);
  else {
    const shared = (board_mm + rest) / 2;
    widths.splice(-1, 1, shared, shared);
  }
  let from = 0;
  return widths.map((width_mm, k) => {
    const board = { number: k + 1, from_mm: from, width_mm };
    from += width_mm + gap;
    return board;
  });
};

/** Back-wall distance under a spot of the deck top so far down from the lip, mm; negative in front of the rails. */
export const alongUnder = (s: Situation, fromLip_mm: number): number => {
  const c = curveOf(s.ramp.design);
  const plan = s.ramp.plans.get(s.ramp.rails[0] ?? '');
  if (plan === undefined) return 0;
  const intoArc = fromLip_mm - c.straight_mm;
  if (intoArc <= 0) return plan.toLip_mm - fromLip_mm;
  const slope = c.exit_rad - intoArc / c.radius_mm;
  return ((slope - plan.start_rad) / plan.turn_rad) * plan.bend_mm;
};

/** Distances from a board's lip edge where a screw goes into every rail and stays clear of every slit, mm: two, one, or none. */
export const screwSpots = (s: Situation, board: Board): readonly number[] => {
  const slits = s.ramp.rails.flatMap(rail => (s.ramp.plans.get(rail)?.slits ?? []).map(slit => slit.at_mm));
  const first = EDGE;
  const last = board.width_mm - EDGE;
  const clear = Array.from({ length: Math.max(0, Math.floor(last - first)) + 1 }, (_, k) => first + k).filter(
    at => {
      const along = alongUnder(s, board.from_mm + at);
      return along >= EDGE && at <= last && slits.every(slit => Math.abs(slit - along) >= CLEAR_OF_SLIT);
    },
  );
  const low = clear[0];
  const high = clear.at(-1);
  if (low === undefined || high === undefined) return [];
  return high - low >= APART ? [low, high] : [(low + high) / 2];
};

/** Deck top from the lip down to where the entry plate ends, mm. */
export const deckTopLength = (s: Situation): number => {
  const c = curveOf(s.ramp.design);
  const from = Math.asin(Math.min(1, s.ramp.entry.length_mm / c.radius_mm));
  return c.radius_mm * (c.exit_rad - from) + c.straight_mm;
};

/** One piece of sheet: its layer from the rails up, its place across and along, its size. */
export type SheetPiece = Readonly<{
  layer: number;
  across: number;
  along: number;
  length_mm: number;
  width_mm: number;
}>;

/**
 * Layers of sheet bent along the curve. Each is as long as its own middle, so the lower ones are longer. Joints of neighbouring
 * layers are half a sheet apart.
 */
export const laySheets = (
  s: Situation,
  sheet: { width_mm: number; long_mm: number },
  wide_mm: number,
  gap_mm: number,
): readonly SheetPiece[] => {
  const { deck } = s.ramp.design;
  if (deck.kind !== 'sheet') return [];
  const c = curveOf(s.ramp.design);
  const from = Math.asin(Math.min(1, s.ramp.entry.length_mm / c.radius_mm));
  const strips = Math.max(1, Math.ceil((wide_mm + gap_mm) / (sheet.width_mm + gap_mm) - 1e-9));
  const lastWide = wide_mm - (strips - 1) * (sheet.width_mm + gap_mm);
  return Array.from({ length: deck.layers }, (_, k) => k + 1).flatMap(layer => {
    const middle = c.radius_mm + (deck.layers - layer + 0.5) * deck.layer_mm;
    const long = middle * (c.exit_rad - from) + c.straight_mm;
    const lengths = cutAlong(long, sheet.long_mm, layer % 2 === 0);
    return Array.from({ length: strips }, (_, a) => a + 1).flatMap(across =>
      lengths.map((length_mm, n) => ({
        layer,
        across,
        along: n + 1,
        length_mm,
        width_mm: across === strips ? lastWide : sheet.width_mm,
      })),
    );
  });
};

/** Lengths of one layer from the lip down; every other layer begins with half a sheet where it has a joint at all. */
const cutAlong = (long: number, sheet: number, half: boolean): readonly number[] => {
  if (long <= sheet) return [long];
  const lengths: number[] = [];
  let left = long;
  while (left > 1e-9) {
    const piece = Math.min(left, half && lengths.length === 0 ? sheet / 2 : sheet);
    lengths.push(piece);
    left -= piece;
  }
  return lengths;
};
