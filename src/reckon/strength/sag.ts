import type { Responses } from './responses.ts';
import type { SideFrame } from './side-frame.ts';

/** Rails may sag to this share of the length between what holds them, under one rider [practice]; a free end counts twice its length (IBC 1604.3 [memory]). */
const SAG_SHARE = 1 / 300;

/** How far L1 presses the rail in at one place, mm, and what is allowed. */
export type Sag = Readonly<{ sag_mm: number; allowed_mm: number; x_mm: number }>;

export type Sags = Readonly<{
  /** How far the lip itself goes down, square to the deck, with the wheel on it. */
  lip: Sag;
  /** The worst span: how far its middle goes below the line between its ends. */
  span: Sag;
}>;

/**
 * Sag of the rail under L1, unfactored, at the lip and in the worst span between what holds it. Elastic, dead weight left out.
 */
export const sagsOf = (frame: SideFrame, responses: Responses): Sags => {
  const { places, input } = frame;
  const held = places.flatMap((place, k) => (place.held || k === 0 || k === places.length - 1 ? [k] : []));
  const pressed = (wheel: number, at: number): number => {
    const { slope_rad } = places[wheel]!;
    const node = 3 * places[at]!.node;
    const { slope_rad: there } = places[at]!;
    const by = (axis: 0 | 1) =>
      Math.sin(slope_rad) * responses.right[wheel]!.moved[node + axis]! -
      Math.cos(slope_rad) * responses.up[wheel]!.moved[node + axis]!;
    // Square to the deck, inward +.
    return input.loads.riding_N * (Math.sin(there) * by(0) - Math.cos(there) * by(1));
  };

  let span: Sag = { sag_mm: 0, allowed_mm: 1, x_mm: places[0]!.x_mm };
  for (let k = 1; k < held.length; k++) {
    const [a, b] = [held[k - 1]!, held[k]!];
    const length = places[b]!.along_mm - places[a]!.along_mm;
    const allowed_mm = length * SAG_SHARE;
    for (let at = a + 1; at < b; at++) {
      const share = (places[at]!.along_mm - places[a]!.along_mm) / length;
      const sag_mm = pressed(at, at) - (1 - share) * pressed(at, a) - share * pressed(at, b);
      if (sag_mm / allowed_mm > span.sag_mm / span.allowed_mm)
        span = { sag_mm, allowed_mm, x_mm: places[at]!.x_mm };
    }
  }

  const last = places.length - 1;
  const lastHeld = places.findLastIndex(place => place.held);
  const before = held.filter(k => k < lastHeld).at(-1) ?? 0;
  const free = places[last]!.along_mm - places[Math.max(0, lastHeld)]!.along_mm;
  const lastSpan = places[Math.max(0, lastHeld)]!.along_mm - places[before]!.along_mm;
  return {
    span,
    lip: {
      sag_mm: pressed(last, last),
      allowed_mm: Math.max(2 * free, lastSpan, 1) * SAG_SHARE,
      x_mm: places[last]!.x_mm,
    },
  };
};
