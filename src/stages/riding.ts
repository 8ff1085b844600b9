import { readingKey } from '../build/fold.ts';
import { GRAVITY_m_s2 } from '../quantity/gravity.ts';
import type { Design } from '../ramp/settle.ts';
import { DRAG_AREA_m2, ROLLING } from '../reckon/ride/rider-figures.ts';
import { RIDING, type RidingLoads, ridingLoads } from '../reckon/strength/loads.ts';
import type { Situation } from './situation.ts';

export const readingOf = (s: Situation, step: string, ask: string): number | null =>
  s.build.readings.get(readingKey(step, ask))?.value ?? null;

/** What is ridden: axle to axle in m (bike: the longest of mountain bikes, practice; the others from memory), and what slows it. */
export const MACHINES = {
  bike: {
    wheelbase_m: 1.15,
    drag_m2: DRAG_AREA_m2.bike.likely,
    rolling: ROLLING['bike on boards or smooth concrete'].likely,
  },
  scooter: {
    wheelbase_m: 0.8,
    drag_m2: DRAG_AREA_m2.skateboard.likely,
    rolling: ROLLING['scooter on smooth concrete'].likely,
  },
  skate: {
    wheelbase_m: 0.36,
    drag_m2: DRAG_AREA_m2.skateboard.likely,
    rolling: ROLLING['skateboard on smooth concrete'].likely,
  },
  'inline skates': {
    wheelbase_m: 0.25,
    drag_m2: DRAG_AREA_m2.skateboard.likely,
    rolling: ROLLING['skateboard on smooth concrete'].likely,
  },
} as const satisfies Record<Design['use'], object>;

/** Times that the speed at the foot is read, and landings that are marked, at the first rides. */
export const SPEED_READS = 5;
export const LANDING_MARKS = 3;

const all = (s: Situation, step: string, ask: string, count: number): readonly number[] =>
  Array.from({ length: count }, (_, k) => readingOf(s, step, `${ask}${k + 1}`)).filter(v => v !== null);

/** Speeds read at the foot of the finished ramp, m/s, and landings marked, m ahead of the lip. */
export const speedsRead = (s: Situation): readonly number[] => all(s, 'finish/speeds', 'speed', SPEED_READS);
export const landingsMarked = (s: Situation): readonly number[] =>
  all(s, 'finish/landings', 'mark', LANDING_MARKS);

/**
 * The fastest that a load factor covers, m/s: v² = (n − 1) g (R − body), a stiff rider; on a tight curve a point at the tyres [derived].
 */
export const fastestAt = (radius_m: number, factor: number = RIDING.least_factor): number => {
  const path_m = radius_m - RIDING.body_m;
  return Math.sqrt((factor - 1) * GRAVITY_m_s2 * (path_m < RIDING.least_path_m ? radius_m : path_m));
};

/** The speed at the foot the person means to ride at, m/s; null until he said. */
export const saidSpeed = (s: Situation): number | null => readingOf(s, 'plan/ride', 'entry-speed');

/** The speed that loads are reckoned with, m/s: the one said, else the fastest that three times the weight covers. */
export const loadSpeed = (s: Situation): number =>
  saidSpeed(s) ?? fastestAt(s.ramp.design.arc.radius_mm / 1000);

/** Rider, machine and speed as the loads L1 to L7. Null where the curve is one no load is known for. */
export const loadsOf = (s: Situation): RidingLoads | null => {
  const { arc, rider } = s.ramp.design;
  const loads = ridingLoads({
    mass_kg: rider,
    speed_m_s: loadSpeed(s),
    radius_m: arc.radius_mm / 1000,
    exit_rad: arc.exit_rad,
  });
  return loads.ok ? loads.value : null;
};
