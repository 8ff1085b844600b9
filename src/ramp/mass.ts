import { tubeSection } from '../reckon/steel/section.ts';
import { BOARD_DENSITY, PLY_DENSITY } from './deck.ts';
import type { Tube } from './design.ts';
import { entryArc } from './entry.ts';
import type { Member, MemberKind } from './member.ts';
import { type Design, deckThickness } from './settle.ts';

/** Steel, kg/m³ (EN 1991-1-1 table A.4 [memory]). */
export const STEEL_DENSITY = 7850;
const STEEL = STEEL_DENSITY * 1e-9;
const SQM = 1e6;

/** Tubes are few and asked for often. */
const perMetre = new WeakMap<Tube, number>();

/**
 * Mass of a metre of tube, kg, with the round corners it is sold with (tubeSection); one whose corners do not fit its sides is weighed
 * with sharp ones (derived).
 */
export const tubeMassPerMetre = (t: Tube): number => {
  const known = perMetre.get(t);
  if (known !== undefined) return known;
  const { depth_mm, width_mm, wall_mm } = t;
  const section = tubeSection({ shape: 'rect', depth_mm, width_mm, wall_mm, rule: 'EN10219' });
  const sharp = STEEL * 1000 * (depth_mm * width_mm - (depth_mm - 2 * wall_mm) * (width_mm - 2 * wall_mm));
  const kg = section.ok ? section.value.massPerM_kg : sharp;
  perMetre.set(t, kg);
  return kg;
};

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
