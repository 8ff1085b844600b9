import { GRIPS, LIFT_LIMITS, type LiftInput, lift } from '../../reckon/handling/lift.ts';
import { radians } from '../../reckon/numeric/angle.ts';
import type { Topic } from './topic.ts';

type LiftFields = Omit<LiftInput, 'twist_rad'> & Readonly<{ twist_deg: number }>;

export const topic: Topic = {
  name: 'lift',
  summary: 'what one person may lift, by the revised NIOSH equation: a guide, not a safe limit',
  fields: {
    load_kg: { is: 'number', ...LIFT_LIMITS.load_kg },
    hands_from_body_mm: {
      is: 'number',
      ...LIFT_LIMITS.hands_from_body_mm,
      about: 'middle of the hands ahead of the ankles',
    },
    hands_height_mm: { is: 'number', ...LIFT_LIMITS.hands_height_mm, about: 'above the floor, at the start' },
    raise_mm: { is: 'number', ...LIFT_LIMITS.raise_mm, about: 'how far the hands go up, − down' },
    twist_deg: { is: 'number', ...LIFT_LIMITS.twist_deg, about: 'of the body out of straight ahead' },
    lifts_per_min: { is: 'number', ...LIFT_LIMITS.lifts_per_min },
    hours: { is: 'number', ...LIFT_LIMITS.hours, about: 'of such lifting in a day' },
    grip: { is: 'choice', of: GRIPS, about: 'a tube frame without handles is poor' },
  },
  example:
    'lift --load_kg 18 --hands_from_body_mm 350 --hands_height_mm 400 --raise_mm 500 --twist_deg 20 --lifts_per_min 0.5 --hours 1 --grip fair',
  run: input => {
    const { twist_deg, ...rest } = input as LiftFields;
    return lift({ ...rest, twist_rad: radians(twist_deg) });
  },
};
