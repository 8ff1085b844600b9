import { GRAVITY_m_s2 } from '../quantity/gravity.ts';
import { climb, entrySpeedFor } from '../reckon/ride/climb.ts';
import { type Flight, flight } from '../reckon/ride/flight.ts';
import type { Ground } from '../reckon/ride/landing.ts';
import { type LandingBand, landingBand, SPEED_READ_m_s } from '../reckon/ride/landing-band.ts';
import { keptByInput } from './kept-by-input.ts';
import { landingsMarked, MACHINES, readingOf, saidSpeed, speedsRead } from './riding.ts';
import type { Situation } from './situation.ts';

const keptBand = keptByInput(landingBand);
const keptFlight = keptByInput(flight);

/** A landing that falls less than this is level ground to whoever lands on it, rad: 5° [judgement]. */
const LEVEL = (5 * Math.PI) / 180;
/** What a timed two-metre mark is good for: 3 % of the speed, filmed at 60 frames a second (common practice). */
const FILMED = 0.03;
/** A launch is not told nearer than this from marks on the ground, rad: 1° [judgement]. */
const LEAST_SPREAD = Math.PI / 180;

/** The landing as it was said: how far the ground is filled level behind the lip, the open gap after it, and the slope that follows. */
export type SaidLanding = Readonly<{
  kind: 'flat ground' | 'table' | 'gap';
  /** From the lip to where the slope begins, m. */
  knuckle_m: number;
  drop_m: number;
  slope_rad: number;
  length_m: number;
}>;

/** Null until drop and slope were both said. */
export const saidLanding = (s: Situation): SaidLanding | null => {
  const read = (ask: string): number | null => readingOf(s, 'plan/landing', ask);
  // Builds of before have the drop in mm.
  const before = read('landing-drop');
  const drop_m = read('landing-down') ?? (before === null ? null : before / 1000);
  const slope = read('landing-slope');
  if (drop_m === null || slope === null) return null;
  const gap = read('landing-gap') ?? 0;
  return {
    kind: gap > 0 ? 'gap' : Math.abs(slope) < LEVEL ? 'flat ground' : 'table',
    knuckle_m: gap + (read('landing-table') ?? 0),
    drop_m,
    slope_rad: slope,
    length_m: read('landing-length') ?? 0,
  };
};

/** The ground as the flight meets it. Level ground has no knuckle; a slope at the lip begins a hand's breadth ahead of it. */
export const groundOf = (landing: SaidLanding): Ground =>
  landing.kind === 'flat ground'
    ? { drop_m: landing.drop_m }
    : { drop_m: landing.drop_m, gap_m: Math.max(0.01, landing.knuckle_m), slope_rad: landing.slope_rad };

/** The curve as wheels climb it, with its losses. */
export const transitionOf = (s: Situation) => {
  const { arc, use, rider } = s.ramp.design;
  const { rolling, drag_m2 } = MACHINES[use];
  return {
    radius_m: arc.radius_mm / 1000,
    exit_rad: arc.exit_rad,
    rolling,
    drag_area_m2: drag_m2,
    mass_kg: rider,
  };
};

/** Speed along the lip for a speed at the foot, m/s; null where the rider does not come over it. A straight last part is climbed too. */
export const lipSpeed = (s: Situation, foot_m_s: number): number | null => {
  const climbed = climb({ ...transitionOf(s), speed_m_s: foot_m_s });
  if (!climbed.ok) return null;
  const { straight, arc } = s.ramp.design;
  const square =
    climbed.value.exit_speed_m_s ** 2 - 2 * GRAVITY_m_s2 * (straight / 1000) * Math.sin(arc.exit_rad);
  return square > 0 ? Math.sqrt(square) : null;
};

/** The least speed at the foot that comes over the lip, m/s, losses counted; the straight part by its height alone [derived]. */
export const leastSpeed = (s: Situation): number => {
  const transition = transitionOf(s);
  const { straight, arc } = s.ramp.design;
  const square = 2 * GRAVITY_m_s2 * (straight / 1000) * Math.sin(arc.exit_rad);
  return entrySpeedFor(transition, Math.sqrt(square)) ?? 0;
};

/** Where the rider comes down, and what it stands on. */
export type Launch = Readonly<{
  /** At the foot and along the lip, m/s; how far off the latter may be. */
  foot_m_s: number;
  lip_m_s: number;
  error_m_s: number;
  /** Speeds were read at the finished ramp, and landings marked. */
  speeds: number;
  marks: number;
  /** The launch angle that the marks tell, rad; null without two of them. */
  told_rad: Readonly<{ likely: number; spread: number }> | null;
}>;

const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;
const halfRange = (list: readonly number[]): number => (Math.max(...list) - Math.min(...list)) / 2;

type Landed = Readonly<{ speed_m_s: number; ground: Ground; at_m: number }>;

/** The launch angle whose plain flight comes down at a mark, rad: searched between level and 60°. */
const toldAngle = keptByInput(({ speed_m_s, ground, at_m }: Landed): number => {
  // Past the angle of the farthest flight the distance falls again: only the flatter of two launches is a rider's.
  const reach = (exit_rad: number): number => {
    const flown = flight({ ...ground, speed_m_s, exit_rad });
    return flown.ok ? flown.value.distance_m : 0;
  };
  const angles = Array.from({ length: 61 }, (_, k) => (k * Math.PI) / 180);
  const farthest = angles.reduce((best, a) => (reach(a) > reach(best) ? a : best), 0);
  let [low, high] = [0, farthest];
  for (let n = 0; n < 40; n++) {
    const middle = (low + high) / 2;
    if (reach(middle) < at_m) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
});

export const launchOf = (s: Situation, ground: Ground | null): Launch | null => {
  const speeds = speedsRead(s);
  const said = saidSpeed(s);
  const foot_m_s = speeds.length > 0 ? mean(speeds) : said;
  if (foot_m_s === null) return null;
  const lip_m_s = lipSpeed(s, foot_m_s);
  if (lip_m_s === null) return null;
  // An error at the foot grows on the way up, by foot over lip [derived].
  const foot_error = speeds.length > 1 ? Math.max(halfRange(speeds), FILMED * foot_m_s) : SPEED_READ_m_s;
  const marks = landingsMarked(s);
  const angles =
    ground === null || marks.length < 2
      ? []
      : marks.map(at_m => toldAngle({ speed_m_s: lip_m_s, ground, at_m }));
  return {
    foot_m_s,
    lip_m_s,
    error_m_s: (foot_error * foot_m_s) / lip_m_s,
    speeds: speeds.length,
    marks: marks.length,
    told_rad:
      angles.length === 0
        ? null
        : { likely: mean(angles), spread: Math.max(LEAST_SPREAD, halfRange(angles)) },
  };
};

/**
 * The band of landings. Drag is left out of it: below 10 m/s it takes 2 % of the distance, far less than riders add and take away.
 * Landings that were marked take the place of lag and spring: the launch angle they tell, and how far they lay apart.
 */
export const bandOf = (s: Situation, launch: Launch, ground: Ground): LandingBand | null => {
  const { arc, use, straight } = s.ramp.design;
  const { wheelbase_m } = MACHINES[use];
  const told = launch.told_rad;
  const common = {
    ...ground,
    speed_m_s: launch.lip_m_s,
    radius_m: arc.radius_mm / 1000,
    wheelbase_m,
    speed_error_m_s: launch.error_m_s,
  };
  const band =
    told === null
      ? keptBand({ ...common, exit_rad: arc.exit_rad, straight_m: straight / 1000 })
      : keptBand({
          ...common,
          exit_rad: told.likely,
          straight_m: wheelbase_m,
          spring_m_s: { least: -told.spread * launch.lip_m_s, most: told.spread * launch.lip_m_s },
        });
  return band.ok ? band.value : null;
};

/** One plain flight, no rider's own jump, with drag or without. */
export const plainFlight = (s: Situation, launch: Launch, ground: Ground, drag = false): Flight | null => {
  const { use, rider, arc } = s.ramp.design;
  const flown = keptFlight({
    ...ground,
    speed_m_s: launch.lip_m_s,
    exit_rad: launch.told_rad?.likely ?? arc.exit_rad,
    ...(drag ? { drag_area_m2: MACHINES[use].drag_m2, mass_kg: rider } : {}),
  });
  return flown.ok ? flown.value : null;
};
