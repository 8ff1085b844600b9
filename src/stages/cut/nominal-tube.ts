import type { Tube } from '../../ramp/design.ts';
import { settle } from '../../ramp/settle.ts';
import type { Situation } from '../situation.ts';

/** The rail's tube as it was planned and bought, before a caliper had been on it. */
export const nominalTube = (s: Situation): Tube => {
  const settled = settle(s.build.name, s.build.system, s.build.answers);
  return settled.ok ? settled.value.tube : s.ramp.design.tube;
};

/** Outside sizes of tube below 100 mm may be off by 1 % and at least 0.5 mm; its wall by 10 % up to 5 mm thick (EN 10219-2 [found: two makers' tables]). */
export const sideTolerance = (side_mm: number): number => Math.max(0.5, side_mm / 100);
export const wallTolerance = (wall_mm: number): number => (wall_mm > 5 ? 0.5 : wall_mm / 10);
