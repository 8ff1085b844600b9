/** Chance of a standard normal number below z. Abramowitz and Stegun 7.1.26 for erf, error under 1.5e-7 [memory]. */
export function normalBelow(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const series =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const tail = 0.5 * series * Math.exp(-x * x);
  return z < 0 ? tail : 1 - tail;
}

/** Chance that a normal number of this mean and sd is above a bound. */
export const normalAbove = (bound: number, mean: number, sd: number): number =>
  normalBelow((mean - bound) / sd);

/** Chance that a normal number of this mean and sd is at least `size` away from zero, either side. */
export const normalBeyond = (size: number, mean: number, sd: number): number =>
  normalAbove(size, mean, sd) + normalAbove(size, -mean, sd);

/** log(eᵃ + eᵇ). What is below a part in 10⁹ is left out. */
export function logAdd(a: number, b: number): number {
  const more = Math.max(a, b);
  const less = Math.min(a, b);
  const apart = less - more;
  return apart > -20 ? more + Math.log1p(Math.exp(apart)) : more;
}
