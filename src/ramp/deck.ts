import type { System } from '../quantity/quantities.ts';

/**
 * Smallest radius a plywood sheet bends to cold, mm, by thickness in mm: [across the face grain, along it].
 * Source: APA curved-panel table, in feet for 1/4 to 3/4 in [memory].
 */
const FOOT = 304.8;
const BEND_TABLE: readonly (readonly [number, number, number])[] = [
  [6.35, 2 * FOOT, 5 * FOOT],
  [7.94, 2 * FOOT, 6 * FOOT],
  [9.53, 3 * FOOT, 8 * FOOT],
  [12.7, 6 * FOOT, 12 * FOOT],
  [15.88, 8 * FOOT, 16 * FOOT],
  [19.05, 12 * FOOT, 20 * FOOT],
];

/** Smallest radius one layer of sheet bends to with its face grain along the curve, mm; between rows by straight line, past the table refused (Infinity is never printed: the caller compares only). */
export const sheetBendRadius = (layer_mm: number): number => {
  const first = BEND_TABLE[0] as readonly [number, number, number];
  if (layer_mm <= first[0]) return (first[2] * layer_mm) / first[0];
  for (let i = 1; i < BEND_TABLE.length; i++) {
    const [t0, , r0] = BEND_TABLE[i - 1] as readonly [number, number, number];
    const [t1, , r1] = BEND_TABLE[i] as readonly [number, number, number];
    if (layer_mm <= t1) return r0 + ((r1 - r0) * (layer_mm - t0)) / (t1 - t0);
  }
  const last = BEND_TABLE[BEND_TABLE.length - 1] as readonly [number, number, number];
  // Bending stiffness grows faster than thickness; a straight line past the table would flatter a thick sheet.
  return last[2] * (layer_mm / last[0]) ** 2;
};

/** Layers of a sheet for the usual 18 mm deck, when one layer bends to the radius; at least two. */
export const layersThatBend = (layer_mm: number, _radius_mm: number): number =>
  Math.max(2, Math.round(18 / layer_mm));

/** Thickest layer, of those a yard has, that bends to a radius, mm; null when none does. */
export const thickestLayer = (
  radius_mm: number,
  yard: readonly number[] = [6, 9, 12, 15, 18],
): number | null => [...yard].reverse().find(t => sheetBendRadius(t) <= radius_mm) ?? null;

/**
 * Largest span of one softwood board that takes a wheel alone, mm: 1.5 kN × 2 (impact) × 1.5 at mid-span, C24, service class 3
 * (EN 1995-1-1: kmod 0.90 instantaneous, γM 1.3; depth factor k_h = min((150/h)^0.2, 1.3) [memory, clause 3.2]).
 * The load and the impact factor are practice.
 */
export const boardSpan = (thickness_mm: number, board_mm: number): number => {
  const depthFactor = Math.min((150 / thickness_mm) ** 0.2, 1.3);
  const strength = (0.9 * 24 * depthFactor) / 1.3;
  const section = (board_mm * thickness_mm ** 2) / 6;
  return (4 * strength * section) / (1500 * 2 * 1.5);
};

/** Greatest spacing of crossmembers under a sheet deck, mm, and the least worth setting (common practice). */
export const SHEET_SUPPORT_MOST = 300;
export const SHEET_SUPPORT_LEAST = 200;
/** Greatest spacing of bearers under a 5 mm entry plate, mm (2.65 kN wheel on 200 mm of width, 235 MPa; derived). */
export const BEARER_SPACING = 250;
export const ENTRY_PLATE = 5;
/** The plate as a US yard has it, 3/16 in, with its bearers nearer by the square of the thickness (derived). */
const US_ENTRY_PLATE = (3 / 16) * 25.4;
export const entryPlate = (system: System): Readonly<{ thick_mm: number; spacing_mm: number }> =>
  system === 'us'
    ? { thick_mm: US_ENTRY_PLATE, spacing_mm: BEARER_SPACING * (US_ENTRY_PLATE / ENTRY_PLATE) ** 2 }
    : { thick_mm: ENTRY_PLATE, spacing_mm: BEARER_SPACING };
/** A gap between boards that a small wheel does not feel, mm (common practice). */
export const BOARD_GAP = 3;
/** Densities of a deck, kg/m³: birch ply [practice], C24 softwood mean [EN 338, found in two trade tables]. */
export const PLY_DENSITY = 680;
export const BOARD_DENSITY = 420;
