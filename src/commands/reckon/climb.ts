import { radians } from '../../reckon/numeric/angle.ts';
import { type ClimbInput, climb } from '../../reckon/ride/climb.ts';
import { RIDE_LIMITS } from '../../reckon/ride/ride-limits.ts';
import type { Topic } from './topic.ts';

type ClimbFields = Omit<ClimbInput, 'exit_rad'> & Readonly<{ exit_deg: number }>;

export const topic: Topic = {
  name: 'climb',
  summary: 'the speed left at the lip of an arc, and how hard the arc presses at its foot and its lip',
  fields: {
    speed_m_s: { is: 'number', ...RIDE_LIMITS.speed_m_s, about: 'at the foot of the arc' },
    radius_m: { is: 'number', ...RIDE_LIMITS.radius_m, about: 'of the line the tyres follow' },
    exit_deg: { is: 'number', ...RIDE_LIMITS.climb_deg, about: 'above horizontal' },
    mass_kg: { is: 'number', ...RIDE_LIMITS.mass_kg, optional: true, about: 'rider and bike' },
    rolling: {
      is: 'number',
      ...RIDE_LIMITS.rolling,
      optional: true,
      about: 'rolling resistance as a share of what presses; none when left out',
    },
    drag_area_m2: {
      is: 'number',
      ...RIDE_LIMITS.drag_area_m2,
      optional: true,
      about: 'no drag when left out',
    },
    air_kg_m3: { is: 'number', ...RIDE_LIMITS.air_kg_m3, optional: true, about: 'sea level when left out' },
  },
  example: 'climb --speed_m_s 7 --radius_m 3 --exit_deg 45',
  run: input => {
    const { exit_deg, ...rest } = input as ClimbFields;
    return climb({ ...rest, exit_rad: radians(exit_deg) });
  },
};
