import { radians } from '../../reckon/numeric/angle.ts';
import { RIDE_LIMITS } from '../../reckon/ride/ride-limits.ts';
import { type RunInInput, runIn } from '../../reckon/ride/run-in.ts';
import type { Topic } from './topic.ts';

type RunInFields = Omit<RunInInput, 'slope_rad'> & Readonly<{ slope_deg: number }>;

export const topic: Topic = {
  name: 'run-in',
  summary: 'how high a start gives a speed at the ramp, rolling from rest down a slope and over a flat',
  fields: {
    speed_m_s: { is: 'number', ...RIDE_LIMITS.speed_m_s, about: 'where the flat ends' },
    slope_deg: { is: 'number', ...RIDE_LIMITS.run_in_slope_deg, about: 'of the run-in, down +' },
    flat_m: { is: 'number', ...RIDE_LIMITS.flat_m, about: 'level ground between slope and ramp' },
    mass_kg: { is: 'number', ...RIDE_LIMITS.mass_kg, about: 'rider and bike' },
    rolling: { is: 'number', ...RIDE_LIMITS.rolling, about: 'rolling resistance as a share of what presses' },
    drag_area_m2: { is: 'number', ...RIDE_LIMITS.drag_area_m2, about: '0 for no drag' },
  },
  example: 'run-in --speed_m_s 6 --slope_deg 10 --flat_m 4 --mass_kg 80 --rolling 0.006 --drag_area_m2 0.5',
  run: input => {
    const { slope_deg, ...rest } = input as RunInFields;
    return runIn({ ...rest, slope_rad: radians(slope_deg) });
  },
};
