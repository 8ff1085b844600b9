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

/** How far down from the lip a spot of the back wall lies under the deck top, mm: `alongUnder` read backwards. */
export const fromLipOver = (s: Situation, along_mm: number): number => {
  const c = curveOf(s.ramp.design);
  const plan = s.ramp.plans.get(s.ramp.rails[0] ?? '');
  if (plan === undefined) return 0;
  if (along_mm >= plan.bend_mm) return Math.max(0, plan.toLip_mm - along_mm);
  const slope = plan.start_rad + (plan.turn_rad * along_mm) / plan.bend_mm;
  return c.straight_mm + (c.exit_rad - slope) * c.radius_mm;
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

/** Middles of the crossmembers between the rails, from the lip down along the deck top, mm. */
export const supportsOf = (s: Situation): readonly number[] => [
  ...new Set(
    s.ramp.members
      .filter(m => m.kind === 'crossmember')
      .map(m => Math.round(fromLipOver(s, m.along_mm ?? 0) * 10) / 10),
  ),
];

/**
 * Layers of sheet bent along the curve. Each is as long as its own middle, so the lower ones are longer. Every joint lies on a
 * crossmember, that of the next layer on another one.
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
  const supports = supportsOf(s);
  const top = c.radius_mm * (c.exit_rad - from) + c.straight_mm;
  let joints: readonly number[] = [];
  return Array.from({ length: deck.layers }, (_, k) => k + 1).flatMap(layer => {
    const middle = c.radius_mm + (deck.layers - layer + 0.5) * deck.layer_mm;
    /** Length of this layer from the lip down to under a spot of the deck top. */
    const lengthTo = (at: number): number =>
      at <= c.straight_mm ? at : c.straight_mm + ((at - c.straight_mm) * middle) / c.radius_mm;
    joints = jointsOf(top, sheet.long_mm, lengthTo, supports, joints, layer % 2 === 0);
    const ends = [0, ...joints, top].map(lengthTo);
    const lengths = ends.slice(1).map((to, n) => to - (ends[n] ?? 0));
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

/** Joints of two layers nearer than this lie on one crossmember, mm. */
const SAME_SUPPORT = 1;

/**
 * Spots of the deck top where a layer is pieced, from the lip down: on crossmembers, none over a joint of the layer before; every
 * other layer begins with half a sheet. Where no crossmember serves, the sheet's own end, and a batten goes under it.
 */
const jointsOf = (
  end: number,
  sheet: number,
  lengthTo: (at: number) => number,
  supports: readonly number[],
  before: readonly number[],
  half: boolean,
): readonly number[] => {
  const joints: number[] = [];
  let from = 0;
  while (lengthTo(end) - lengthTo(from) > sheet + 1e-9) {
    const most = half && joints.length === 0 ? sheet / 2 : sheet;
    const reach = (limit: number): number | undefined =>
      supports
        .filter(at => at > from + SAME_SUPPORT && lengthTo(at) - lengthTo(from) <= limit)
        .filter(at => before.every(joint => Math.abs(joint - at) > SAME_SUPPORT))
        .sort((a, b) => b - a)[0];
    from = reach(most) ?? reach(sheet) ?? from + most * (end / lengthTo(end));
    joints.push(from);
  }
  return joints;
};
