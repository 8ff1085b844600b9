import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import type { DesignAnswers } from '../../ramp/design.ts';
import { MACHINES, saidSpeed } from '../riding.ts';
import type { Situation } from '../situation.ts';
import { type Change, changed } from './ride-change.ts';
import { downFrom, slower, type Try, type Way } from './ride-try.ts';

const DEGREE = Math.PI / 180;

const length = (v: number) => ({ v, as: 'length' }) as const;
const angle = (v: number) => ({ v, as: 'angle' }) as const;

/** A stride of a curve's sizes as a tape of the build's own units has them, and how much wider a circle is tried, mm. */
const TAPE = {
  metric: { curve_mm: 50, more_mm: [0, 100, 300] },
  us: { curve_mm: 50.8, more_mm: [0, 101.6, 304.8] },
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
export const wider = (s: Situation, radius_mm: number): readonly Way[] => {
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
export const lighter = (s: Situation, factor: number): readonly Way[] => {
  const now = saidSpeed(s) ?? 0;
  const radius_m = s.ramp.design.arc.radius_mm / 1000;
  return [
    ...slower(s, downFrom(Math.sqrt((factor - 1) * GRAVITY_m_s2 * radius_m))),
    ...wider(s, (1000 * now ** 2) / (GRAVITY_m_s2 * (factor - 1))),
  ];
};

/** A lip that is lower, on the same circle. */
export const lowerLip = (s: Situation): Way => {
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

/** The steepest exit that a novice answers, on a longer ramp or a lower one. */
export const gentler = (s: Situation): readonly Way[] => {
  const { arc } = s.ramp.design;
  const exit = 35 * DEGREE - 1e-9;
  return [
    { remedy: 'ride-gentler-long', tries: [shape(s, { height: arc.height_mm, exit })] },
    { remedy: 'ride-gentler-low', tries: [shape(s, { radius: arc.radius_mm, exit })] },
  ];
};

/** A straight last part from front to rear wheel. */
export const straightLip = (s: Situation): Way => {
  const straight = 1000 * MACHINES[s.ramp.design.use].wheelbase_m;
  return {
    remedy: 'ride-straight-lip',
    tries: [{ change: { field: 'straight', value: straight }, fills: { straight: length(straight) } }],
  };
};
