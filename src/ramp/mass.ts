import { BOARD_DENSITY, ENTRY_PLATE, PLY_DENSITY } from './deck.ts';
import type { Tube } from './design.ts';
import { entryLength, type Member } from './members.ts';
import { type Design, deckThickness } from './settle.ts';

/** Steel, kg/mm³ (7850 kg/m³, EN 1991-1-1 table A.4 [memory]). */
const STEEL = 7.85e-6;
const SQM = 1e6;

/** Mass of a metre of square-cornered tube, kg; corners are rounded, so this is a per cent or two high (derived). */
export const tubeMassPerMetre = (t: Tube): number =>
  STEEL * 1000 * (t.depth_mm * t.width_mm - (t.depth_mm - 2 * t.wall_mm) * (t.width_mm - 2 * t.wall_mm));

const plateKinds = new Set(['side plate', 'foot plate']);

export const memberMass = (m: Member): number =>
  plateKinds.has(m.kind)
    ? STEEL * m.tube.depth_mm * m.tube.width_mm * m.tube.wall_mm
    : (tubeMassPerMetre(m.tube) * (m.long_mm + m.short_mm)) / 2000;

/** Length of the deck along its top, from the entry plate to the lip, mm. */
export const deckLength = (d: Design): number => d.arc.arc_mm + d.straight - entryLength(d);

export const deckMass = (d: Design): number =>
  ((deckLength(d) * d.width) / SQM) *
  (deckThickness(d.deck) / 1000) *
  (d.deck.kind === 'sheet' ? PLY_DENSITY : BOARD_DENSITY);

export const entryPlateMass = (d: Design): number => STEEL * entryLength(d) * d.width * ENTRY_PLATE;

/** Masses of the finished thing, kg. */
export const masses = (d: Design, members: readonly Member[]) => {
  const steel = members.reduce((sum, m) => sum + memberMass(m), 0);
  const entry = entryPlateMass(d);
  const deck = deckMass(d);
  return { steel_kg: steel, entry_kg: entry, deck_kg: deck, frame_kg: steel, all_kg: steel + entry + deck };
};
