import { type Outcome, refuse } from '../../quantity/outcome.ts';
import type { FrameTube, Grade, Standard } from './tube-strength.ts';

/** A corner of the rail's middle line; `slit` where a slit was closed. */
export type RailPoint = Readonly<{ x_mm: number; y_mm: number; slit?: boolean | undefined }>;

/** Stands upright from the base rail to the curved rail; welded to both. */
export type UprightInput = Readonly<{ name: string; x_mm: number; tube: FrameTube }>;

/** Rises from the base rail toward the lip; counted as pinned at both ends. */
export type DiagonalInput = Readonly<{
  name: string;
  base_x_mm: number;
  rail_x_mm: number;
  tube: FrameTube;
}>;

/** A level tube between two neighbouring uprights, welded to both. */
export type TieInput = Readonly<{
  name: string;
  from_x_mm: number;
  to_x_mm: number;
  y_mm: number;
  tube: FrameTube;
}>;

/** A pad or board under the base rail, or under the rail where it starts before the base rail does. */
export type FootInput = Readonly<{ name: string; x_mm: number /** Kept from sliding. */; anchored: boolean }>;

/**
 * One side frame in its own plane: x from the entry toward the lip, y up, mm; all lines are middle lines of their tubes.
 * As drawn or as built: nothing but numbers.
 */
export type SideFrameInput = Readonly<{
  standard: Standard;
  grade: Grade;
  rail: Readonly<{
    /** From the entry end to the lip, x growing. */
    points: readonly RailPoint[];
    tube: FrameTube;
    /** A V is opened along each closed slit. */
    opened: boolean;
    /** Greatest distance between what holds the rail sideways: crossmembers. */
    sideways_mm: number;
  }>;
  base: Readonly<{ tube: FrameTube; y_mm: number; from_x_mm: number; to_x_mm: number }>;
  uprights: readonly UprightInput[];
  diagonals: readonly DiagonalInput[];
  ties?: readonly TieInput[] | undefined;
  feet: readonly FootInput[];
  loads: Readonly<{
    /** L1, square to the deck; all of it on this rail. */
    riding_N: number;
    /** L2, straight down on the upper half. */
    drop_N: number;
    /** Share of L1 along the deck, either way. */
    along_share: number;
    /** L3 on this rail, per mm of run. */
    standing_N_mm: number;
    /** Weight of deck and crossmembers on this rail, per mm of rail. */
    deck_N_mm: number;
  }>;
  /** Leg of the fillets; as wide as the thinner wall when left out. */
  leg_mm?: number | undefined;
  electrode_MPa?: number | undefined;
  slitProven: boolean;
  jointProven: boolean;
  /** Places of the wheel along the rail, at least; 40 when left out. */
  positions?: number | undefined;
}>;

type Refusal = Extract<Outcome<never>, { ok: false }>;

export const USUAL_POSITIONS = 40;
const MOST_POSITIONS = 160;
/** Nothing of a ramp is this long, mm. */
const FARTHEST_MM = 50_000;

const numberFault = (field: string, value: number, least: number, most: number): Refusal | undefined =>
  value >= least && value <= most
    ? undefined
    : refuse('out-of-range', field, `${value} will not do here.`, `${least} to ${most}`);

const railFault = ({ rail }: SideFrameInput): Refusal | undefined => {
  if (rail.points.length < 2)
    return refuse('missing-field', 'rail.points', 'A rail has two ends.', 'two points or more');
  for (const [k, { x_mm, y_mm }] of rail.points.entries()) {
    const fault =
      numberFault(`rail.points.${k}.x_mm`, x_mm, -FARTHEST_MM, FARTHEST_MM) ??
      numberFault(`rail.points.${k}.y_mm`, y_mm, -FARTHEST_MM, FARTHEST_MM);
    if (fault !== undefined) return fault;
    if (k > 0 && x_mm < rail.points[k - 1]!.x_mm + 1)
      return refuse(
        'contradiction',
        `rail.points.${k}.x_mm`,
        'The points of a rail go from the entry to the lip.',
        'each 1 mm or more beyond the last',
      );
  }
  return numberFault('rail.sideways_mm', rail.sideways_mm, 1, FARTHEST_MM);
};

const standsFault = (input: SideFrameInput): Refusal | undefined => {
  const { base, uprights, diagonals, ties = [], feet } = input;
  const last = input.rail.points.at(-1)!.x_mm;
  const inside = (field: string, x: number, from: number, to: number): Refusal | undefined =>
    x >= from - 0.5 && x <= to + 0.5
      ? undefined
      : refuse('contradiction', field, `Nothing is there at ${x} mm.`, `${from} to ${to} mm`);
  const onBase = (field: string, x: number) => inside(field, x, base.from_x_mm, base.to_x_mm);
  const onRail = (field: string, x: number) => inside(field, x, input.rail.points[0]!.x_mm, last);
  if (!(base.to_x_mm > base.from_x_mm + 1))
    return refuse('contradiction', 'base.to_x_mm', 'The base rail has no length.', 'beyond its start');
  const faults = [
    onRail('base.from_x_mm', base.from_x_mm),
    numberFault('base.y_mm', base.y_mm, -FARTHEST_MM, FARTHEST_MM),
    ...uprights.flatMap(({ x_mm }, k) => [
      onBase(`uprights.${k}.x_mm`, x_mm),
      onRail(`uprights.${k}.x_mm`, x_mm),
    ]),
    ...diagonals.flatMap(({ base_x_mm, rail_x_mm }, k) => [
      onBase(`diagonals.${k}.base_x_mm`, base_x_mm),
      onRail(`diagonals.${k}.rail_x_mm`, rail_x_mm),
    ]),
    ...ties.flatMap(({ from_x_mm, to_x_mm }, k) => [
      onBase(`ties.${k}.from_x_mm`, from_x_mm),
      onBase(`ties.${k}.to_x_mm`, to_x_mm),
    ]),
    ...feet.map(({ x_mm }, k) =>
      inside(`feet.${k}.x_mm`, x_mm, input.rail.points[0]!.x_mm, Math.max(last, base.to_x_mm)),
    ),
  ];
  const fault = faults.find(one => one !== undefined);
  if (fault !== undefined) return fault;
  const twice = feet.findIndex(({ x_mm }, k) =>
    feet.some((foot, j) => j < k && Math.abs(foot.x_mm - x_mm) < 1),
  );
  if (twice >= 0)
    return refuse(
      'contradiction',
      `feet.${twice}.x_mm`,
      'Two feet stand in one place.',
      'a place of its own',
    );
  if (!feet.some(({ anchored }) => anchored))
    return refuse(
      'contradiction',
      'feet',
      'Nothing keeps the frame from sliding.',
      'one anchored foot or more',
    );
  return undefined;
};

const loadsFault = ({ loads, leg_mm, electrode_MPa, positions }: SideFrameInput): Refusal | undefined =>
  numberFault('loads.riding_N', loads.riding_N, 0, 1e6) ??
  numberFault('loads.drop_N', loads.drop_N, 0, 1e6) ??
  numberFault('loads.along_share', loads.along_share, 0, 1) ??
  numberFault('loads.standing_N_mm', loads.standing_N_mm, 0, 1000) ??
  numberFault('loads.deck_N_mm', loads.deck_N_mm, 0, 1000) ??
  numberFault('leg_mm', leg_mm ?? 3, 0.5, 50) ??
  numberFault('electrode_MPa', electrode_MPa ?? 480, 100, 2000) ??
  numberFault('positions', positions ?? USUAL_POSITIONS, 2, MOST_POSITIONS);

/** The first thing a side frame's numbers contradict themselves in; undefined when they do not. */
export const sideFrameFault = (input: SideFrameInput): Refusal | undefined =>
  railFault(input) ?? standsFault(input) ?? loadsFault(input);
