import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import type { Mark } from '../steel/steel.ts';

/** Rider with gear, and machine, kg [practice]. */
export const RIDER_AND_MACHINE_KG = { child: 50 + 11, adult: 100 + 15, heavy: 135 + 17 } as const;

/** What is assumed of a rider where nothing is known of him. All [judgement] but the source says otherwise. */
export const RIDING = {
  /** Load factor that is never gone below, whatever the speed. */
  least_factor: 3,
  /** Centre of mass above the wheels, m: a stiff rider's goes round a curve that much tighter. */
  body_m: 0.9,
  /** A centre of mass that goes round less than this, m, says more of the model than of a rider. */
  least_path_m: 0.5,
  /** Least height a rider comes down from, out of the air onto the upper curve, m. */
  least_drop_m: 0.5,
  /** In which legs and tyres stop him, m: the middle of 0.20 to 0.30. */
  stop_m: 0.25,
  /** Share of the load that brakes or lands along the surface. */
  along_share: 0.3,
  /** Share of the load that pushes sideways: the greater of 0.1 to 0.2. */
  side_share: 0.2,
  /** Proof load, as a share of L1, as dead weight: nobody jumps to test. */
  proof_share: 1.25,
} as const;

/** People standing, N/mm² on plan and N on a foot of 50 × 50 mm: EN 1991-1-1 table 6.2, category C4 [memory]. */
export const STANDING_N_mm2 = 0.005;
export const STANDING_POINT_N = 4500;
/** The edge of a guard, N/mm along it and N at one place: IBC 1607.8, 50 lb/ft and 200 lb [memory]. */
export const GUARD_N_mm = 0.7297;
export const GUARD_N = 890;

export type LoadName = 'L1' | 'L2' | 'L3' | 'L4' | 'L5' | 'L6' | 'L7';

/** One assumption as the person is shown it. `value` is in `unit`; `mark` judgement is ours, with its reason in `source`. */
export type Assumption = Readonly<{
  load: LoadName;
  name: string;
  value: number;
  unit: 'N' | 'N/mm' | 'N/mm²' | 'share';
  where: string;
  source: string;
  mark: Mark | 'judgement';
  /** Whether the checks of this room count it; one that is not is shown so that nobody thinks it is. */
  counted: boolean;
}>;

export type RidingInput = Readonly<{
  /** Rider, gear and machine. */
  mass_kg: number;
  /** At the foot of the curve. */
  speed_m_s: number;
  /** Of the deck top. */
  radius_m: number;
  /** At the lip. */
  exit_rad: number;
  /** From which a rider may come down onto the deck; never counted less than 0.5 m. */
  drop_m?: number | undefined;
  /** In which legs and tyres stop him; 0.25 m when left out. */
  stop_m?: number | undefined;
}>;

export type RidingLoads = Readonly<{
  weight_N: number;
  /** n₀ of a point at the tyres: what the ride's limits are held against. */
  load_factor: number;
  /** n₀ of a stiff rider; null where the curve is too tight for the model. */
  stiff_factor: number | null;
  /** Counted: the greater of the two, and never below 3. */
  riding_factor: number;
  /** Above this speed the load of a curve that tight is not known, m/s; null where it is known. */
  speed_cap_m_s: number | null;
  /** L1, square to the surface, at any place. */
  riding_N: number;
  drop_factor: number;
  /** L2, straight down, on the upper half. */
  drop_N: number;
  /** L4: the greater of L1 and L2 on one wheel. */
  wheel_N: number;
  /** L6: share of L1 along the surface, either way, and of L1 sideways. */
  along_share: number;
  side_share: number;
  /** L6: what L1 pushes forward at the lip, without the share along the surface. */
  lip_push_N: number;
  /** L3: on the plan of the deck. */
  standing_N_mm2: number;
  /** Dead weight to prove the finished frame with. */
  proof_N: number;
  assumptions: readonly Assumption[];
}>;

/** Normal force ÷ weight where an arc begins, n₀ = 1 + v²/(gR) [textbook]. Speed in m/s, radius in m. */
export const entryFactor = (speed_m_s: number, radius_m: number): number =>
  1 + speed_m_s ** 2 / (GRAVITY_m_s2 * radius_m);

/** Peak ÷ weight of a fall of `drop_m` that is stopped evenly in `stop_m`: 1 + h/s [derived]. */
export const dropFactor = (drop_m: number, stop_m: number): number => 1 + drop_m / stop_m;

/**
 * The loads L1 to L7 of a rider on a curve, with the assumptions they stand on. L1 and L2 are peaks: no further
 * impact factor belongs on them. Forces in N.
 * Refuses out-of-range for a mass, speed, radius, angle, drop or stop that no ride has.
 * L1 = m g n, n = 1 + v²/(g(R − 0.9 m)), at least 3 [judgement]; where R − 0.9 m < 0.5 m, n = 1 + v²/(gR) and a cap on the
 * speed, at which that n is 3 [judgement]. L2 = m g (1 + h/s) [derived; h and s practice].
 */
export const ridingLoads = (input: RidingInput): Outcome<RidingLoads> => {
  const { mass_kg, speed_m_s, radius_m, exit_rad, stop_m = RIDING.stop_m } = input;
  const drop_m = Math.max(RIDING.least_drop_m, input.drop_m ?? 0);
  for (const [field, value, least, most] of [
    ['mass_kg', mass_kg, 1, 1000],
    ['speed_m_s', speed_m_s, 0, 100],
    ['radius_m', radius_m, 0.1, 1000],
    ['exit_rad', exit_rad, 0, Math.PI / 2],
    ['drop_m', drop_m, 0, 10],
    ['stop_m', stop_m, 0.05, 1],
  ] as const)
    if (!(value >= least && value <= most))
      return refuse('out-of-range', field, `${value} is no such number of a ride.`, `${least} to ${most}`);

  const weight_N = mass_kg * GRAVITY_m_s2;
  const load_factor = entryFactor(speed_m_s, radius_m);
  const path_m = radius_m - RIDING.body_m;
  const stiff_factor = path_m < RIDING.least_path_m ? null : entryFactor(speed_m_s, path_m);
  const riding_factor = Math.max(RIDING.least_factor, stiff_factor ?? load_factor);
  const drop_factor = dropFactor(drop_m, stop_m);
  const riding_N = weight_N * riding_factor;
  const loads = {
    weight_N,
    load_factor,
    stiff_factor,
    riding_factor,
    speed_cap_m_s:
      stiff_factor === null ? Math.sqrt((RIDING.least_factor - 1) * GRAVITY_m_s2 * radius_m) : null,
    riding_N,
    drop_factor,
    drop_N: weight_N * drop_factor,
    wheel_N: Math.max(riding_N, weight_N * drop_factor),
    along_share: RIDING.along_share,
    side_share: RIDING.side_share,
    lip_push_N: riding_N * Math.sin(exit_rad),
    standing_N_mm2: STANDING_N_mm2,
    proof_N: RIDING.proof_share * riding_N,
  };
  return good({ ...loads, assumptions: assumptionsOf(loads) });
};

type Counted = Omit<RidingLoads, 'assumptions'>;

const assumptionsOf = (loads: Counted): readonly Assumption[] => [
  {
    load: 'L1',
    name: 'riding the curve, a stiff rider',
    value: loads.riding_N,
    unit: 'N',
    where: 'square to the deck, at any place',
    source: 'circular motion of a centre of mass 0.9 m above the deck, at least three times the weight',
    mark: 'judgement',
    counted: true,
  },
  {
    load: 'L2',
    name: 'a hard drop',
    value: loads.drop_N,
    unit: 'N',
    where: 'straight down on the upper half of the curve',
    source: 'a fall of at least 0.5 m stopped by legs and tyres in 0.20 to 0.30 m',
    mark: 'judgement',
    counted: true,
  },
  {
    load: 'L3',
    name: 'people standing',
    value: loads.standing_N_mm2,
    unit: 'N/mm²',
    where: 'on the whole plan of the deck',
    source: 'EN 1991-1-1 table 6.2, category C4; ASCE 7 asks 100 lb/ft² for assembly',
    mark: 'memory',
    counted: true,
  },
  {
    load: 'L3',
    name: 'one point of a public place',
    value: STANDING_POINT_N,
    unit: 'N',
    where: 'on 50 × 50 mm',
    source: 'EN 1991-1-1 table 6.2, category C4; more than any rider here, and a public ramp is refused',
    mark: 'memory',
    counted: false,
  },
  {
    load: 'L4',
    name: 'all on one wheel',
    value: loads.wheel_N,
    unit: 'N',
    where: 'on 50 × 50 mm of the deck',
    source: 'the rear wheel lands hardest: force plates under mountain bikes, Phillips and others, ISBS 2016',
    mark: 'found',
    counted: true,
  },
  {
    load: 'L5',
    name: 'all on one rail',
    value: 1,
    unit: 'share',
    where: 'the rail under the wheel',
    source: 'statics: the wheel may roll over any rail',
    mark: 'judgement',
    counted: true,
  },
  {
    load: 'L6',
    name: 'the push at the lip',
    value: loads.lip_push_N,
    unit: 'N',
    where: 'forward at the lip',
    source: 'statics: the share of L1 that is not vertical there',
    mark: 'judgement',
    counted: true,
  },
  {
    load: 'L6',
    name: 'braking and landing along the deck',
    value: loads.along_share * loads.riding_N,
    unit: 'N',
    where: 'along the deck, either way, with L1',
    source: 'common practice, 0.3 of L1',
    mark: 'practice',
    counted: true,
  },
  {
    load: 'L6',
    name: 'the push sideways',
    value: loads.side_share * loads.riding_N,
    unit: 'N',
    where: 'across the deck, either way, with L1',
    source: 'common practice, 0.1 to 0.2 of L1',
    mark: 'practice',
    counted: true,
  },
  {
    load: 'L7',
    name: 'a guard, if there is one',
    value: GUARD_N_mm,
    unit: 'N/mm',
    where: 'along its top, or 890 N at one place',
    source: 'IBC 1607.8: 50 lb/ft, or 200 lb',
    mark: 'memory',
    counted: false,
  },
];
