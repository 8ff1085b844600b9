import type { RailName, Tube } from './design.ts';

/** One third of a rail's slits as marked on steel: frozen, whatever the plan says later. */
export type MarkedThird = Readonly<{
  entry: string;
  third: number;
  /** Number of its first slit, from 1. */
  first: number;
  marks_mm: readonly number[];
  close_rad: number;
  kerf_mm: number;
  gap_mm: number;
  /** Bend of the whole rail so far, read after this third was closed and tacked, rad; null until read. */
  bent_rad: number | null;
  /** Narrowest kerf at the face by feeler after deburring, mm; null until read. */
  feeler_mm: number | null;
}>;

/** Offsets of a rail's bottom face from the line it was read to, + toward the centre. */
export type MeasuredCurve = Readonly<{
  survey: string;
  phase: 'tacked' | 'half-welded' | 'cold' | 'braced' | 'unclamped';
  line: 'tack line' | 'finished line';
  stations_mm: readonly number[];
  offsets_mm: readonly number[];
  read_to_mm: number;
}>;

/** Bend that one slit's weld adds as it cools: likely value and the log spread of what is believed of it. */
export type Pull = Readonly<{ rad: number; spread: number; from: 'prior' | 'test piece' | 'welded rail' }>;

/** Everything measured at the bench that the ramp is computed from. */
export type Measured = Readonly<{
  /** By rail: the caliper's tube. */
  tubes: ReadonlyMap<RailName, Partial<Tube>>;
  /** Kerf learned from the test piece, mm. */
  kerf_mm: number | null;
  /** Turn of one welded slit of the test piece, rad. */
  testPull_rad: number | null;
  marks: ReadonlyMap<RailName, readonly MarkedThird[]>;
  curves: ReadonlyMap<RailName, MeasuredCurve>;
  /** Cold surveys of welded rails whose even over-curl told the pull: rad a slit, by rail. */
  weldedPull: ReadonlyMap<RailName, number>;
}>;

export const NOTHING_MEASURED: Measured = {
  tubes: new Map(),
  kerf_mm: null,
  testPull_rad: null,
  marks: new Map(),
  curves: new Map(),
  weldedPull: new Map(),
};
