import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import { flightPath } from './flight-path.ts';
import { RIDE_LIMITS } from './ride-limits.ts';

/** Halvings of the range of speeds, and how far a search below a metre per second goes on. */
const HALVINGS = 60;

/**
 * The exit speed whose path goes through a point, m/s; undefined when none up to the limit does.
 * Without drag √(gX²/(2cos²θ(X tanθ − Y))) [textbook]; with drag searched for.
 * @param x_m ahead of the lip, more than 0
 * @param y_m above the lip +
 * @param exit_rad above horizontal
 * @param drag_1_m drag per metre; see dragPerMetre
 */
export const speedThrough = (
  x_m: number,
  y_m: number,
  exit_rad: number,
  drag_1_m: number,
): number | undefined => {
  const most: number = RIDE_LIMITS.speed_m_s.atMost;
  const under = x_m * Math.tan(exit_rad) - y_m;
  if (!(under > 0)) return undefined;
  const free = (x_m * Math.sqrt(GRAVITY_m_s2 / (2 * under))) / Math.cos(exit_rad);
  if (drag_1_m === 0) return free <= most ? free : undefined;

  const over = (speed_m_s: number): boolean => {
    const path = flightPath(speed_m_s * Math.cos(exit_rad), speed_m_s * Math.sin(exit_rad), drag_1_m);
    return (path.heightAt(x_m) ?? Number.NEGATIVE_INFINITY) >= y_m;
  };
  if (!over(most)) return undefined;
  // Drag only ever asks for more speed.
  let slow = free;
  let fast = most;
  for (let n = 0; n < HALVINGS; n += 1) {
    const middle = (slow + fast) / 2;
    if (over(middle)) fast = middle;
    else slow = middle;
  }
  return fast;
};
