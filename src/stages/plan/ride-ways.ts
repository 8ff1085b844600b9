import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import type { DesignAnswers } from '../../ramp/design.ts';
import { LEAST_ANCHORS } from '../../reckon/strength/anchors.ts';
import { GROUNDS } from '../../reckon/strength/ground.ts';
import { saidLanding } from '../flight-band.ts';
import { MACHINES, saidSpeed } from '../riding.ts';
import type { Situation } from '../situation.ts';
import { standingStill } from '../standing-still.ts';
import { deckWays } from './deck-ways.ts';
import { type Change, changed } from './ride-change.ts';
import { downFrom, reading, slower, stepsDown, type Try, type Way } from './ride-try.ts';

const DEGREE = Math.PI / 180;

const length = (v: number) => ({ v, as: 'length' }) as const;
const distance = (v: number) => ({ v, as: 'distance' }) as const;
const angle = (v: number) => ({ v, as: 'angle' }) as const;

/**
 * Sizes as a tape of the build's own units has them: a stride of a curve's sizes in mm, of the ground's height and a landing's length
 * in m, a table that a beginner's landing begins with, and a slope that is long enough (common practice).
 */
const TAPE = {
  metric: { curve_mm: 50, more_mm: [0, 100, 300], ground_m: 0.05, long_m: 0.5, table_m: 1, slope_m: 5 },
  us: {
    curve_mm: 50.8,
    more_mm: [0, 101.6, 304.8],
    ground_m: 0.1524,
    long_m: 0.6096,
    table_m: 0.9144,
    slope_m: 4.8768,
  },
} as const;

type Shape = DesignAnswers['shape'];

const shape = (s: Situation, to: Shape): Try => {
  const change: Change = { field: 'shape', value: to };
  const arc = (changed(s, change) ?? s).ramp.design.arc;
  return {
    change,
    fills: {
      radius: length(arc.radius_mm),
      height: length(arc.height_mm),
      exit: angle(arc.exit_rad),
      run: length(arc.run_mm),
    },
  };
};

/** A wider circle, with the lip as high or the exit as steep. */
const wider = (s: Situation, radius_mm: number): readonly Way[] => {
  const { arc } = s.ramp.design;
  const { curve_mm, more_mm } = TAPE[s.build.system];
  const radii = more_mm
    .map(more => Math.ceil(radius_mm / curve_mm) * curve_mm + more)
    .filter(r => r > arc.radius_mm);
  return [
    { remedy: 'ride-wider-lip', tries: radii.map(radius => shape(s, { height: arc.height_mm, radius })) },
    { remedy: 'ride-wider-exit', tries: radii.map(radius => shape(s, { radius, exit: arc.exit_rad })) },
  ];
};

/** So that no more than `factor` times the weight presses where the curve begins: v² = (n − 1) g R [textbook]. */
const lighter = (s: Situation, factor: number): readonly Way[] => {
  const now = saidSpeed(s) ?? 0;
  const radius_m = s.ramp.design.arc.radius_mm / 1000;
  return [
    ...slower(s, downFrom(Math.sqrt((factor - 1) * GRAVITY_m_s2 * radius_m))),
    ...wider(s, (1000 * now ** 2) / (GRAVITY_m_s2 * (factor - 1))),
  ];
};

const lowerLip = (s: Situation): Way => {
  const { arc } = s.ramp.design;
  const { curve_mm } = TAPE[s.build.system];
  const heights = Array.from(
    { length: 10 },
    (_, k) => Math.floor(arc.height_mm / curve_mm - 1e-9 - k) * curve_mm,
  );
  return {
    remedy: 'ride-lower-lip',
    tries: heights.filter(h => h >= 150).map(height => shape(s, { height, radius: arc.radius_mm })),
  };
};

/** A landing that falls away as the rider does, or one that is not so far down. */
const softer = (s: Situation): readonly Way[] => {
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
        fills: { slope: angle(slope), length: distance(length_m) },
      })),
    },
    {
      remedy: 'ride-raise-landing',
      minutes: 240,
      tries: drops
        .filter(drop => drop >= 0)
        .map(drop => ({
          change: reading('plan/landing', 'landing-down', drop),
          fills: { drop: distance(drop) },
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
        fills: { table: distance(table_m), slope: angle(d * DEGREE), length: distance(length_m) },
      })),
    },
    ...slower(s, stepsDown(s)),
    lowerLip(s),
  ];
};

const longerLanding = (s: Situation): Way => {
  const landing = saidLanding(s);
  const { long_m } = TAPE[s.build.system];
  const from = Math.ceil((landing?.length_m ?? 0) / long_m - 1e-9);
  return {
    remedy: 'ride-longer-landing',
    minutes: 240,
    tries: Array.from({ length: 16 }, (_, k) => (from + k + 1) * long_m).map(long => ({
      change: reading('plan/landing', 'landing-length', long),
      fills: { length: distance(long) },
    })),
  };
};

const fillGap = (s: Situation): Way => {
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
        fills: { table: distance(knuckle) },
      },
    ],
  };
};

const anchors = (s: Situation): readonly Way[] => {
  const each = standingStill(s)?.anchors?.entry ?? LEAST_ANCHORS / 2;
  const count = Math.max(LEAST_ANCHORS, 2 * each);
  return [
    {
      remedy: 'anchors-plan',
      minutes: 90,
      tries: [
        {
          change: {
            readings: [
              { step: 'plan/ground', ask: 'anchors', value: count },
              { step: 'plan/ground', ask: 'entry-anchors', value: count / 2 },
            ],
          },
          fills: { count, entry: count / 2 },
        },
      ],
    },
  ];
};

/** Ground that is less slippery and holds a stake better, where there is a choice of where it stands. */
const firmer = (s: Situation): readonly Way[] => [
  {
    remedy: 'ground-firmer',
    minutes: 60,
    tries: (['dry lawn', 'gravel', 'concrete'] as const)
      .filter(ground => GROUNDS[ground].friction > GROUNDS[s.ramp.design.ground].friction)
      .map(ground => ({ change: { field: 'ground', value: ground }, fills: { ground } })),
  },
];

const gentler = (s: Situation): readonly Way[] => {
  const { arc } = s.ramp.design;
  const exit = 35 * DEGREE - 1e-9;
  return [
    { remedy: 'ride-gentler-long', tries: [shape(s, { height: arc.height_mm, exit })] },
    { remedy: 'ride-gentler-low', tries: [shape(s, { radius: arc.radius_mm, exit })] },
  ];
};

const straightLip = (s: Situation): Way => {
  const straight = 1000 * MACHINES[s.ramp.design.use].wheelbase_m;
  return {
    remedy: 'ride-straight-lip',
    tries: [{ change: { field: 'straight', value: straight }, fills: { straight: length(straight) } }],
  };
};

/** What may mend each limit: ways to try, none promised. */
export const WAYS: Readonly<Record<string, (s: Situation) => readonly Way[]>> = {
  'load-novice': s => lighter(s, s.ramp.design.first ? 2 : 3),
  'load-novice-band': s => lighter(s, 2),
  'load-hard': s => lighter(s, s.ramp.design.first ? 2 : 3),
  'load-engineer': s => lighter(s, s.ramp.design.first ? 2 : 3),
  'tight-and-fast': s => [...slower(s, downFrom(6)), ...wider(s, 2000), straightLip(s)],
  'speed-cap': s => [...lighter(s, 3), ...wider(s, 1400)],
  'steep-novice': gentler,
  'flat-from-high': softer,
  'fall-stop': softer,
  'fall-hard': softer,
  'window-narrow': s => [longerLanding(s)],
  'gap-first': s => [fillGap(s)],
  'anchors-few': anchors,
  'anchors-entry': anchors,
  'anchors-short': s => [...anchors(s), ...firmer(s)],
  'anchors-none-hold': s => [...firmer(s), ...slower(s, stepsDown(s)), lowerLip(s)],
  'deck-over-used': deckWays,
  'drop-engineer': s => [lowerLip(s)],
  narrow: () => [
    {
      remedy: 'ride-width',
      tries: [{ change: { field: 'width', value: 1200 }, fills: { width: length(1200) } }],
    },
  ],
};
