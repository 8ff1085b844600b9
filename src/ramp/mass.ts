import { BOARD_DENSITY, PLY_DENSITY } from './deck.ts';
import type { Tube } from './design.ts';
import { entryArc } from './entry.ts';
import type { Member, MemberKind } from './member.ts';
import { type Design, deckThickness } from './settle.ts';

/** Steel, kg/m³ (EN 1991-1-1 table A.4 [memory]). */
export const STEEL_DENSITY = 7850;
const STEEL = STEEL_DENSITY * 1e-9;
const SQM = 1e6;

/** Mass of a metre of square-cornered tube, kg; corners are rounded, so this is a per cent or two high (derived). */
export const tubeMassPerMetre = (t: Tube): number =>
  STEEL * 1000 * (t.depth_mm * t.width_mm - (t.depth_mm - 2 * t.wall_mm) * (t.width_mm - 2 * t.wall_mm));

/** Kinds that are cut from flat bar or plate: their width is that of the flat. */
export const FLAT_KINDS: ReadonlySet<MemberKind> = new Set([
  'side plate',
  'foot plate',
  'bearer',
  'entry plate',
]);

export const memberMass = (m: Member): number =>
  FLAT_KINDS.has(m.kind)
    ? STEEL * m.long_mm * m.tube.width_mm * m.tube.wall_mm
    : (tubeMassPerMetre(m.tube) * (m.long_mm + m.short_mm)) / 2000;

/** Length of the deck along its top, from the entry plate to the lip, mm. */
export const deckLength = (d: Design): number => d.arc.arc_mm + d.straight - entryArc(d);

export const deckMass = (d: Design): number =>
  ((deckLength(d) * d.width) / SQM) *
  (deckThickness(d.deck) / 1000) *
  (d.deck.kind === 'sheet' ? PLY_DENSITY : BOARD_DENSITY);

const massOf = (members: readonly Member[]): number => members.reduce((sum, m) => sum + memberMass(m), 0);

/** Masses of the finished thing, kg: the frame's steel, entry plate with its bearers, and deck. */
export const masses = (d: Design, members: readonly Member[], entry: readonly Member[]) => {
  const steel = massOf(members);
  const entry_kg = massOf(entry);
  const deck = deckMass(d);
  return { steel_kg: steel, entry_kg, deck_kg: deck, frame_kg: steel, all_kg: steel + entry_kg + deck };
};
