import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';

/** A moment of a flight, measured from the lip: forward and up +. */
export type Moment = Readonly<{
  time_s: number;
  x_m: number;
  y_m: number;
  forward_m_s: number;
  up_m_s: number;
}>;

/** A plane through a point of the path's own frame, falling forward at a slope (rad, down +). */
export type Plane = Readonly<{ x_m: number; y_m: number; slope_rad: number }>;

/**
 * The path of a point mass without wind, lift or rotation. Every path is a hollow-down curve over the ground, with
 * drag too (d(up/forward)/dt = −g/forward), so it is highest above a plane once and comes down to it once.
 */
export type FlightPath = Readonly<{
  /** Where the path is highest above planes of this slope; the lip when it falls away from them from the start. */
  crest: (slope_rad: number) => Moment;
  /** Where the path comes down to the plane; undefined when it never is above it. */
  touchDown: (plane: Plane) => Moment | undefined;
  /** Height above the lip at a distance ahead; undefined when drag ends the path short of it. */
  heightAt: (x_m: number) => number | undefined;
}>;

/** Height of a moment above a plane, m. */
const over = (plane: Plane, at: Moment): number =>
  at.y_m - plane.y_m + (at.x_m - plane.x_m) * Math.tan(plane.slope_rad);

/** Speed away from planes of this slope, m/s. */
const leaving = (slope_rad: number, at: Moment): number => at.up_m_s + at.forward_m_s * Math.tan(slope_rad);

/**
 * The path of a launch.
 * @param forward_m_s speed ahead, more than 0
 * @param up_m_s speed up, − down
 * @param drag_1_m drag per metre, 0 or more; see dragPerMetre
 */
export const flightPath = (forward_m_s: number, up_m_s: number, drag_1_m: number): FlightPath =>
  drag_1_m === 0 ? parabola(forward_m_s, up_m_s) : dragged(forward_m_s, up_m_s, drag_1_m);

/** Closed form, exact without drag [textbook]. */
const parabola = (forward_m_s: number, up_m_s: number): FlightPath => {
  const at = (time_s: number): Moment => ({
    time_s,
    x_m: forward_m_s * time_s,
    y_m: (up_m_s - (GRAVITY_m_s2 * time_s) / 2) * time_s,
    forward_m_s,
    up_m_s: up_m_s - GRAVITY_m_s2 * time_s,
  });
  const start = at(0);
  return {
    crest: slope => at(Math.max(0, leaving(slope, start)) / GRAVITY_m_s2),
    touchDown: plane => {
      const height = over(plane, start);
      const rate = leaving(plane.slope_rad, start);
      const root = rate * rate + 2 * GRAVITY_m_s2 * height;
      if (root < 0 || (height < 0 && rate < 0)) return undefined;
      // Two forms of one root: each alone loses its digits where the two terms nearly cancel.
      return at(
        rate >= 0 ? (rate + Math.sqrt(root)) / GRAVITY_m_s2 : (2 * height) / (Math.sqrt(root) - rate),
      );
    },
    heightAt: x => at(x / forward_m_s).y_m,
  };
};

/** Largest step of time, and largest share of its speed that drag may take in a step. */
const STEP_s = 0.01;
const SHARE = 0.05;
/** Two answers whose steps differ by a half agree to this before the finer one is given; the contract asks 1e-8. */
const AGREES = 1e-10;
const MOST_HALVINGS = 7;

/** Quadratic drag, stepped; the step is halved until the answer stands still. */
const dragged = (forward_m_s: number, up_m_s: number, drag_1_m: number): FlightPath => {
  const start: Moment = { time_s: 0, x_m: 0, y_m: 0, forward_m_s, up_m_s };
  const fastest = Math.max(Math.hypot(forward_m_s, up_m_s), Math.sqrt(GRAVITY_m_s2 / drag_1_m));
  const first_s = Math.min(STEP_s, SHARE / (drag_1_m * fastest));
  const settled = (find: (step_s: number) => Moment | undefined): Moment | undefined => {
    let step_s = first_s;
    let coarse = find(step_s);
    for (let n = 0; n < MOST_HALVINGS && coarse !== undefined; n += 1) {
      step_s /= 2;
      const fine = find(step_s);
      if (fine === undefined || same(coarse, fine)) return fine;
      coarse = fine;
    }
    return coarse;
  };
  const walk = (from: Moment, step_s: number, done: (at: Moment) => boolean): Moment =>
    until(from, step_s, drag_1_m, done);
  const crestBy = (slope: number, step_s: number): Moment =>
    leaving(slope, start) <= 0 ? start : walk(start, step_s, at => leaving(slope, at) <= 0);

  return {
    crest: slope => settled(step_s => crestBy(slope, step_s)) ?? start,
    touchDown: plane =>
      settled(step_s => {
        const crest = crestBy(plane.slope_rad, step_s);
        if (over(plane, crest) < 0) return undefined;
        return walk(crest, step_s, at => over(plane, at) <= 0);
      }),
    heightAt: x => {
      // With drag every path ends over a last distance, falling straight down: past it there is no height.
      const reached = (at: Moment): boolean => at.x_m >= x;
      const spent = (at: Moment): boolean => at.forward_m_s < SPENT_m_s;
      const at = settled(step_s => walk(start, step_s, moment => reached(moment) || spent(moment)));
      return at !== undefined && at.x_m >= x - AGREES * Math.max(1, x) ? at.y_m : undefined;
    },
  };
};

/** Ahead slower than this a rider falls as good as straight down. */
const SPENT_m_s = 1e-3;

const PARTS = ['time_s', 'x_m', 'y_m', 'forward_m_s', 'up_m_s'] as const;

const same = (a: Moment, b: Moment): boolean =>
  PARTS.every(part => Math.abs(a[part] - b[part]) <= AGREES * Math.max(1, Math.abs(b[part])));

/** Walks until a condition holds that, once true, stays true for a step; then halves into the last step. */
const until = (from: Moment, step_s: number, drag_1_m: number, done: (at: Moment) => boolean): Moment => {
  let at = from;
  for (;;) {
    const next = stepped(at, step_s, drag_1_m);
    if (done(next)) break;
    at = next;
  }
  let short = 0;
  let past = step_s;
  for (let n = 0; n < 60; n += 1) {
    const middle = (short + past) / 2;
    if (done(stepped(at, middle, drag_1_m))) past = middle;
    else short = middle;
  }
  return stepped(at, past, drag_1_m);
};

/** One classical fourth-order Runge–Kutta step of x″ = −kVx′, y″ = −g − kVy′ [textbook]. */
const stepped = (at: Moment, step_s: number, drag_1_m: number): Moment => {
  const slow = (forward: number, up: number): readonly [number, number] => {
    const pull = -drag_1_m * Math.hypot(forward, up);
    return [pull * forward, pull * up - GRAVITY_m_s2];
  };
  const half = step_s / 2;
  const { forward_m_s: u, up_m_s: w } = at;
  const [u1, w1] = slow(u, w);
  const [u2, w2] = slow(u + half * u1, w + half * w1);
  const [u3, w3] = slow(u + half * u2, w + half * w2);
  const [u4, w4] = slow(u + step_s * u3, w + step_s * w3);
  return {
    time_s: at.time_s + step_s,
    x_m: at.x_m + step_s * (u + (step_s * (u1 + u2 + u3)) / 6),
    y_m: at.y_m + step_s * (w + (step_s * (w1 + w2 + w3)) / 6),
    forward_m_s: u + (step_s * (u1 + 2 * u2 + 2 * u3 + u4)) / 6,
    up_m_s: w + (step_s * (w1 + 2 * w2 + 2 * w3 + w4)) / 6,
  };
};
