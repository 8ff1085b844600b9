/**
 * Rails made up for the tests: a chain of straight pieces walked like a turtle, crossed with the normals of its line piece
 * by piece. Shares no code with the model under test. Chance is seeded: the same rail every time.
 */

export type Chance = {
  next: () => number;
  between: (low: number, high: number) => number;
  normal: () => number;
  pick: <T>(of: readonly T[]) => T;
  whole: (low: number, high: number) => number;
  sign: () => number;
};

/** A small seeded generator (multiply and shift), enough for made-up rails. */
export function chance(seed: number): Chance {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const between = (low: number, high: number) => low + (high - low) * next();
  return {
    next,
    between,
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    pick: of => of[Math.floor(next() * of.length)]!,
    whole: (low, high) => Math.floor(between(low, high + 1)),
    sign: () => (next() < 0.5 ? -1 : 1),
  };
}

export type MadeRail = {
  radius: number;
  bend: number;
  count: number;
  /** Closing error of each slit, rad. */
  errors: number[];
  /** The rail laid: shift along and across the line at the start, mm, turn about the start, rad. */
  laid: { x: number; y: number; turn: number };
};

/** True offsets at stations, sag included: exact, whatever the size of the errors. */
export function trueOffsets(rail: MadeRail, stations: readonly number[]): number[] {
  const { radius, bend, count, errors, laid } = rail;
  const close = bend / count;
  const half = radius * Math.tan(close / 2);
  const points: [number, number][] = [];
  let heading = laid.turn;
  let x = laid.x;
  let y = laid.y;
  const walk = (d: number) => {
    x += d * Math.cos(heading);
    y += d * Math.sin(heading);
    points.push([x, y]);
  };
  walk(-500);
  walk(500 + half);
  for (let i = 0; i < count; i++) {
    heading += close + errors[i]!;
    walk(i === count - 1 ? half + 500 : 2 * half);
  }
  return stations.map(s => {
    const phi = s / radius;
    const [tx, ty] = [Math.cos(phi), Math.sin(phi)];
    const [lx, ly] = [radius * Math.sin(phi), radius - radius * Math.cos(phi)];
    let best = Number.POSITIVE_INFINITY;
    for (let k = 0; k + 1 < points.length; k++) {
      const [ax, ay] = points[k]!;
      const [bx, by] = points[k + 1]!;
      const ga = (ax - lx) * tx + (ay - ly) * ty;
      const gb = (bx - lx) * tx + (by - ly) * ty;
      if (ga > 0 || gb < 0 || ga === gb) continue;
      const u = ga / (ga - gb);
      const o = (ax + u * (bx - ax) - lx) * -ty + (ay + u * (by - ay) - ly) * tx;
      if (Math.abs(o) < Math.abs(best)) best = o;
    }
    return best;
  });
}

/** What is read: the truth, a reading error, rounded to the reading step. */
export const readOffsets = (truth: readonly number[], sd: number, step: number, dice: Chance): number[] =>
  truth.map(o => Math.round((o + sd * dice.normal()) / step) * step);
