import { good, type Outcome, refuse } from '../../quantity/outcome.ts';

/** Halvings of the angle between the rear wheel and the start of the straight: to the last bits. */
const HALVINGS = 60;

/**
 * How far the line through both axles lags behind the lip's own angle as the front wheel leaves, rad: the launch of a
 * rider lies between the two. Half the angle that the wheelbase subtends on a curve that goes on to the lip,
 * asin(w/2R); nothing when the last straight is a wheelbase long [derived].
 * Refuses out-of-range for a wheelbase that is no chord of the curve.
 * @param wheelbase_m between the axles
 * @param radius_m of the line the tyres follow
 * @param straight_m last straight part of the lip, 0 or more
 */
export const wheelLag = (wheelbase_m: number, radius_m: number, straight_m: number): Outcome<number> => {
  if (!(radius_m > 0))
    return refuse('out-of-range', 'radius_m', `A radius of ${radius_m} m is no curve.`, 'more than 0 m');
  if (!(wheelbase_m > 0 && wheelbase_m < 2 * radius_m))
    return refuse(
      'out-of-range',
      'wheelbase_m',
      `A wheelbase of ${wheelbase_m} m does not fit a curve of radius ${radius_m} m.`,
      `more than 0 and less than ${2 * radius_m} m`,
    );
  if (!(straight_m >= 0))
    return refuse(
      'out-of-range',
      'straight_m',
      `A straight of ${straight_m} m has no length.`,
      '0 m or more',
    );
  if (straight_m >= wheelbase_m) return good(0);

  // The rear wheel stands where the chord to the lip is a wheelbase long: on the arc, short of the straight.
  const chord = (turned: number): readonly [along: number, below: number] => [
    straight_m + radius_m * Math.sin(turned),
    2 * radius_m * Math.sin(turned / 2) ** 2,
  ];
  let near = 0;
  let far = 2 * Math.asin(wheelbase_m / (2 * radius_m));
  for (let n = 0; n < HALVINGS; n += 1) {
    const middle = (near + far) / 2;
    const [along, below] = chord(middle);
    if (Math.hypot(along, below) < wheelbase_m) near = middle;
    else far = middle;
  }
  const [along, below] = chord((near + far) / 2);
  return good(Math.atan2(below, along));
};
