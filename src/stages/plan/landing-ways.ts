import { saidLanding } from '../flight-band.ts';
import type { Situation } from '../situation.ts';
import { lowerLip } from './curve-ways.ts';
import { reading, slower, stepsDown, type Way } from './ride-try.ts';

const DEGREE = Math.PI / 180;

const reach = (v: number) => ({ v, as: 'reach' }) as const;
const angle = (v: number) => ({ v, as: 'angle' }) as const;

/**
 * Strides of the ground's height and of a landing's length as a tape of the build's own units has them, a table that a beginner's
 * landing begins with, and a slope that is long enough, m (common practice).
 */
const TAPE = {
  metric: { ground_m: 0.05, long_m: 0.5, table_m: 1, slope_m: 5 },
  us: { ground_m: 0.1524, long_m: 0.6096, table_m: 0.9144, slope_m: 4.8768 },
} as const;

/** A landing that falls away as the rider does, or one that is not so far down. */
export const softer = (s: Situation): readonly Way[] => {
  const landing = saidLanding(s);
  if (landing === null) return [];
  const steps = [15, 20, 25, 30, 35].map(d => d * DEGREE).filter(slope => slope > landing.slope_rad + 0.01);
  const { ground_m, table_m, slope_m } = TAPE[s.build.system];
  const length_m = Math.max(slope_m, landing.length_m);
  const drops = Array.from(
    { length: 8 },
    (_, k) => Math.floor(landing.drop_m / ground_m - 1e-9 - k) * ground_m,
  );
  return [
    {
      remedy: 'ride-slope',
      minutes: 240,
      tries: steps.map(slope => ({
        change: {
          readings: [
            { step: 'plan/landing', ask: 'landing-slope', value: slope },
            { step: 'plan/landing', ask: 'landing-length', value: length_m },
          ],
        },
        fills: { slope: angle(slope), length: reach(length_m) },
      })),
    },
    {
      remedy: 'ride-raise-landing',
      minutes: 240,
      tries: drops
        .filter(drop => drop >= 0)
        .map(drop => ({
          change: reading('plan/landing', 'landing-down', drop),
          fills: { drop: reach(drop) },
        })),
    },
    // Landing and lip together: neither alone need be enough.
    {
      remedy: 'ride-slope-level',
      minutes: 300,
      tries: [20, 25, 30].map(d => ({
        change: {
          readings: [
            { step: 'plan/landing', ask: 'landing-table', value: table_m },
            { step: 'plan/landing', ask: 'landing-gap', value: 0 },
            { step: 'plan/landing', ask: 'landing-down', value: 0 },
            { step: 'plan/landing', ask: 'landing-slope', value: d * DEGREE },
            { step: 'plan/landing', ask: 'landing-length', value: length_m },
          ],
        },
        fills: { table: reach(table_m), slope: angle(d * DEGREE), length: reach(length_m) },
      })),
    },
    ...slower(s, stepsDown(s)),
    lowerLip(s),
  ];
};

/** A slope long enough that its window of speeds can be hit. */
export const longerLanding = (s: Situation): Way => {
  const landing = saidLanding(s);
  const { long_m } = TAPE[s.build.system];
  const from = Math.ceil((landing?.length_m ?? 0) / long_m - 1e-9);
  return {
    remedy: 'ride-longer-landing',
    minutes: 240,
    tries: Array.from({ length: 16 }, (_, k) => (from + k + 1) * long_m).map(long => ({
      change: reading('plan/landing', 'landing-length', long),
      fills: { length: reach(long) },
    })),
  };
};

/** The open gap filled level, or boarded over. */
export const fillGap = (s: Situation): Way => {
  const landing = saidLanding(s);
  const knuckle = landing?.knuckle_m ?? 0;
  return {
    remedy: 'ride-fill-gap',
    minutes: 240,
    tries: [
      {
        change: {
          readings: [
            { step: 'plan/landing', ask: 'landing-gap', value: 0 },
            { step: 'plan/landing', ask: 'landing-table', value: knuckle },
          ],
        },
        fills: { table: reach(knuckle) },
      },
    ],
  };
};
