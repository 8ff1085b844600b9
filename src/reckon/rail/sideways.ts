/** The bow of a rail out of its own plane, read from a string along its side. */
export type Sideways = Readonly<{
  /** Greatest bow from the straight between first and last reading, with its sign, mm. */
  worst_mm: number;
  worst_at_mm: number;
  /** Bow at each station, mm. */
  bow_mm: readonly number[];
  shape: 'straight' | 'smooth' | 'kinked';
  /** Where it is kinked, mm; null when it is not. */
  kink_at_mm: number | null;
}>;

/** Within this many reading steps all along, a rail is straight. */
const STRAIGHT_STEPS = 1.5;
/** A kink must explain the readings better than a smooth bow by this many times the reading's variance. */
const CLEARLY = 12;

/**
 * Sideways bow from a string line. The string's own distance from the rail is taken off by the straight between the two ends, so any
 * packing under it will do. A smooth bow is a parabola, a kink a corner at one station; the nearer of the two in least squares
 * names the shape. [derived]
 *
 * @param stations_mm along the rail, rising, three or more
 * @param readings_mm from the string to the rail, mm, + on the side that is to be called +
 * @param read_to_mm reading step, mm
 */
export function sidewaysBow(
  stations_mm: readonly number[],
  readings_mm: readonly number[],
  read_to_mm: number,
): Sideways {
  const n = stations_mm.length;
  const from = stations_mm[0]!;
  const length = stations_mm.at(-1)! - from;
  const share = stations_mm.map(s => (length > 0 ? (s - from) / length : 0));
  const bow_mm = readings_mm.map(
    (r, j) => r - readings_mm[0]! - share[j]! * (readings_mm[n - 1]! - readings_mm[0]!),
  );
  const worst = bow_mm.reduce((most, b, j) => (Math.abs(b) > Math.abs(bow_mm[most]!) ? j : most), 0);
  const parabola = leftOver(
    bow_mm,
    share.map(u => 4 * u * (1 - u)),
  );
  let kink = 0;
  let corner = Number.POSITIVE_INFINITY;
  for (let k = 1; k + 1 < n; k++) {
    const tent = share.map(u => Math.min(u / share[k]!, (1 - u) / (1 - share[k]!)));
    const left = leftOver(bow_mm, tent);
    if (left < corner) {
      corner = left;
      kink = k;
    }
  }
  const variance = read_to_mm ** 2 / 6; // two roundings: the reading and the ends it is taken from
  const straight = Math.abs(bow_mm[worst]!) <= STRAIGHT_STEPS * read_to_mm;
  const kinked = !straight && n > 3 && parabola - corner > CLEARLY * variance;
  return {
    worst_mm: bow_mm[worst]!,
    worst_at_mm: stations_mm[worst]!,
    bow_mm,
    shape: straight ? 'straight' : kinked ? 'kinked' : 'smooth',
    kink_at_mm: kinked ? stations_mm[kink]! : null,
  };
}

/** Σ squares left when a shape is scaled to fit best. */
function leftOver(bow: readonly number[], shape: readonly number[]): number {
  const fit = shape.reduce((sum, v, j) => sum + v * bow[j]!, 0);
  const size = shape.reduce((sum, v) => sum + v * v, 0);
  const all = bow.reduce((sum, b) => sum + b * b, 0);
  return size > 0 ? all - fit ** 2 / size : all;
}
