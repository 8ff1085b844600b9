import { asShown } from '../../quantity/as-shown.ts';
import { flatSection } from '../../reckon/steel/bar-section.ts';
import { type TubeRule, tubeSection } from '../../reckon/steel/section.ts';
import { BOARD_DENSITY, PLY_DENSITY } from '../deck.ts';
import type { Tube } from '../design.ts';
import { entryArc } from '../entry.ts';
import { FLAT_KINDS, STEEL_DENSITY, tubeMassPerMetre } from '../mass.ts';
import { type Member, sectionName } from '../member.ts';
import { type Design, settle } from '../settle.ts';
import { tubeAsPlanned } from '../tube-in-hand.ts';

export type StockKind = 'tube' | 'flat' | 'plate' | 'board' | 'sheet';

/** One thing that is bought by length: its name in the shop, its sizes as sold, what a metre of it weighs. */
export type StockSection = Readonly<{
  name: string;
  kind: StockKind;
  /** Tube: depth, width, wall. Flat: width, width, thickness. Plate: depth, depth, thickness. Board: board width, thickness. Sheet: sheet width, layer. */
  depth_mm: number;
  width_mm: number;
  wall_mm: number;
  kgPerM: number;
  /** The yard cuts it to this length, mm: a plate is sold to size. */
  cutTo_mm?: number;
}>;

export const isSteelStock = ({ kind }: StockSection): boolean =>
  kind === 'tube' || kind === 'flat' || kind === 'plate';

const rounded = (v: number): string => String(Math.round(v * 100) / 100);

const ruleOf = (d: Design): TubeRule => (d.standard === 'AISC' ? 'AISC' : 'EN10219');

/** A metre of tube as sold, corners counted; a tube whose corners do not fit its sides is weighed with sharp ones. */
export const tubeStock = (tube: Tube, rule: TubeRule): StockSection => {
  const section = tubeSection({
    shape: tube.depth_mm === tube.width_mm ? 'square' : 'rect',
    depth_mm: tube.depth_mm,
    width_mm: tube.width_mm,
    wall_mm: tube.wall_mm,
    rule,
  });
  return {
    name: sectionName(tube),
    kind: 'tube',
    ...tube,
    kgPerM: section.ok ? section.value.massPerM_kg : tubeMassPerMetre(tube),
  };
};

const flatStock = (width_mm: number, thick_mm: number): StockSection => {
  const section = flatSection(thick_mm, width_mm);
  return {
    name: `flat ${rounded(width_mm)}x${rounded(thick_mm)}`,
    kind: 'flat',
    depth_mm: width_mm,
    width_mm,
    wall_mm: thick_mm,
    kgPerM: section.ok ? section.value.massPerM_kg : 0,
  };
};

/** Steel plate cut to size by the yard: what the sheet was bought for, to the millimetre. */
const plateStock = (deep_mm: number, thick_mm: number, long_mm: number): StockSection => ({
  name: `plate ${rounded(deep_mm)}x${rounded(thick_mm)}`,
  kind: 'plate',
  depth_mm: deep_mm,
  width_mm: deep_mm,
  wall_mm: thick_mm,
  kgPerM: deep_mm * thick_mm * STEEL_DENSITY * 1e-6,
  cutTo_mm: long_mm,
});

/** A board laid flat across the rails; density of softwood as in the ramp's own mass. */
export const boardStock = (board_mm: number, thick_mm: number): StockSection => ({
  name: `board ${rounded(board_mm)}x${rounded(thick_mm)}`,
  kind: 'board',
  depth_mm: board_mm,
  width_mm: board_mm,
  wall_mm: thick_mm,
  kgPerM: board_mm * thick_mm * BOARD_DENSITY * 1e-6,
});

/** A sheet is cut across into strips: to the cutting plan it is a bar as long as the sheet. */
export const sheetStock = (wide_mm: number, layer_mm: number): StockSection => ({
  name: `sheet ${rounded(layer_mm)}`,
  kind: 'sheet',
  depth_mm: wide_mm,
  width_mm: wide_mm,
  wall_mm: layer_mm,
  kgPerM: wide_mm * layer_mm * PLY_DENSITY * 1e-6,
});

/** The design that steel was bought for, whatever the caliper found since. */
const asBoughtFor = (d: Design): Design => {
  const planned = settle(d.name, d.system, d.answered);
  return planned.ok ? planned.value : d;
};

const RAILS: ReadonlySet<Member['kind']> = new Set(['curved rail', 'base rail']);

/** Plate is ordered to the millimetre, in the US to the sixteenth, and never too small. */
const roundedUp = (d: Design, v: number): number => {
  const step = d.system === 'us' ? 25.4 / 16 : 1;
  return Math.ceil(v / step - 1e-9) * step;
};

/** What a member is cut from: tube by the sizes it was sold in, plates and bearers from flat bar as they are drawn, the entry plate by itself. */
export const sectionOf = (d: Design, m: Member): StockSection => {
  if (m.kind === 'entry plate')
    // As the piece itself is shown: a plate bought a hair shorter than its piece is no plate for it.
    return plateStock(
      roundedUp(d, entryArc(asBoughtFor(d))),
      m.tube.wall_mm,
      asShown(m.long_mm, 'length', d.system),
    );
  if (FLAT_KINDS.has(m.kind)) return flatStock(m.tube.width_mm, m.tube.wall_mm);
  return tubeStock(RAILS.has(m.kind) ? tubeAsPlanned(d) : m.tube, ruleOf(d));
};
