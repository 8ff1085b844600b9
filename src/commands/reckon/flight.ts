import { good } from '../../quantity/outcome.ts';
import { degrees, radians } from '../../reckon/numeric/angle.ts';
import { type FlightInput, flight } from '../../reckon/ride/flight.ts';
import { RIDE_LIMITS } from '../../reckon/ride/ride-limits.ts';
import type { Topic } from './topic.ts';

type FlightFields = Omit<FlightInput, 'exit_rad' | 'slope_rad'> &
  Readonly<{ exit_deg: number; slope_deg?: number }>;

export const topic: Topic = {
  name: 'flight',
  summary:
    'where a rider comes down, and how hard: plain ballistics, with drag if a mass and a drag area are given',
  fields: {
    speed_m_s: { is: 'number', ...RIDE_LIMITS.speed_m_s, about: 'along the lip' },
    exit_deg: { is: 'number', ...RIDE_LIMITS.exit_deg, about: 'above horizontal' },
    drop_m: {
      is: 'number',
      ...RIDE_LIMITS.drop_m,
      about:
        'lip above the landing, or above the knuckle of a slope behind a gap; − when the landing is higher',
    },
    gap_m: { is: 'number', ...RIDE_LIMITS.gap_m, optional: true, about: 'from the lip ahead to the landing' },
    slope_deg: {
      is: 'number',
      ...RIDE_LIMITS.slope_deg,
      optional: true,
      about: 'of the landing, down +; without a gap it is the slope at the landing point',
    },
    mass_kg: { is: 'number', ...RIDE_LIMITS.mass_kg, optional: true, about: 'rider and bike' },
    drag_area_m2: {
      is: 'number',
      ...RIDE_LIMITS.drag_area_m2,
      optional: true,
      about: 'no drag when left out',
    },
    air_kg_m3: { is: 'number', ...RIDE_LIMITS.air_kg_m3, optional: true, about: 'sea level when left out' },
  },
  example: 'flight --speed_m_s 6 --exit_deg 30 --drop_m 0.4 --gap_m 2 --slope_deg 20',
  run: input => {
    const { exit_deg, slope_deg, ...rest } = input as FlightFields;
    const flown = flight({
      ...rest,
      exit_rad: radians(exit_deg),
      slope_rad: slope_deg === undefined ? undefined : radians(slope_deg),
    });
    if (!flown.ok) return flown;
    const { landing_rad, ...answer } = flown.value;
    return good({ ...answer, landing_deg: degrees(landing_rad) });
  },
};
