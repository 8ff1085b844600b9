import type { RailPlan, Rigid } from './rail-plan.ts';

/** What can be wrong with a rail, in the words of the number command. */
export const CAUSES = [
  'on the line',
  'laid askew',
  'wrong edge',
  'over-curl',
  'under-curl',
  'one slit',
  'over-curl and one slit',
  'under-curl and one slit',
  'two slits',
  'unclear',
] as const;
export type Cause = (typeof CAUSES)[number];

/** Offsets as a person read them, with what is known of the tube and the reading. */
export type RailSurvey = Readonly<{
  plan: RailPlan;
  /** Along the line, mm. */
  stations_mm: readonly number[];
  /** As read, the flats' own sag included, mm, + toward the centre. */
  offsets_mm: readonly number[];
  /** Reading step, mm. */
  read_to_mm: number;
  /** Tube depth, deck thickness and wall, mm: the sizes that a wrong edge shows. */
  depth_mm?: number;
  deck_mm?: number;
  wall_mm?: number;
  /** Second less first reading of a few stations read twice, mm: what a reading is worth here. */
  twice_mm?: readonly number[];
  /** What an angle gauge laid on the flats beside single slits says: closed more (+) than planned, rad; slits from 1. */
  gauge?: readonly Readonly<{ slit: number; turn_rad: number }>[];
  /** Where the rail lay on its supports, along the line, mm. */
  supports_mm?: readonly number[];
}>;

/** Something finer than the cause. Stations and slits count from 1. */
export type Note =
  | { is: 'edge'; of: EdgeName; offset_mm: number }
  | { is: 'missed-slit'; slit: number }
  | { is: 'second-slit'; slit: number; turn_rad: number }
  | { is: 'kink-at-support'; slit: number; support_mm: number }
  | { is: 'which-slit'; slits: readonly number[] }
  | { is: 'read-again'; station: number; read_mm: number; neighbours_mm: number }
  | { is: 'jump'; station: number; by_mm: number }
  | { is: 'swing'; station: number; by_mm: number; step_mm: number; about: SwingEnd }
  | { is: 'bump'; at_mm: number; by_mm: number }
  | { is: 'uneven'; thirds_rad: readonly [number, number, number] }
  | { is: 'no-simple-cause' }
  | { is: 'too-few-stations' }
  | { is: 'measure'; at_mm: readonly number[] };

/** The end that a rail stayed on while the other was moved. */
export type SwingEnd = 'entry' | 'lip';

/** Two lines a person can mistake for each other, or an edge that no given size explains. */
export type EdgeName =
  | 'depth'
  | 'deck'
  | 'wall'
  | 'deck and depth'
  | 'back wall'
  | 'deck and back wall'
  | 'unknown';

export type OddSlit = Readonly<{ slit: number; turn_rad: number }>;

export type Rival = Readonly<{ cause: Cause; odd_slits: readonly OddSlit[]; sure: number }>;

export type Diagnosis = Readonly<{
  cause: Cause;
  /** How sure, 0 to 1: the chance of this cause, or when unclear that no one cause can be named. */
  sure: number;
  rivals: readonly Rival[];
  notes: readonly Note[];
  /** What every slit is closed more (+) than planned, rad. */
  even_rad: number;
  /** Slits that stand out beyond that, the greatest first; none while the cause is unclear (see the rivals). */
  odd_slits: readonly OddSlit[];
  /** How the rail lies. */
  rigid: Rigid;
  /** Constant that a wrong edge adds to every reading, mm (0 when none). */
  edge_mm: number;
  /** Best estimate of each slit's error, scatter included, rad: the shape that predictions start from. */
  errors_rad: readonly number[];
  /** A reading that is not believed, counted from 1. */
  doubted_station: number | null;
  /** No rail reads like this: one reading is wrong, or all from some station on have moved. */
  contradictory: boolean;
  /** The readings are to be taken again before any steel is cut by them: one is wrong, or the rail or a support moved. */
  measure_again: boolean;
}>;
