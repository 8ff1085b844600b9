import type { Tube } from '../../ramp/design.ts';
import { settle } from '../../ramp/settle.ts';
import type { Situation } from '../situation.ts';

/** The rail's tube as it was planned and bought, before a caliper had been on it. */
export const nominalTube = (s: Situation): Tube => {
  const settled = settle(s.build.name, s.build.system, s.build.answers);
  return settled.ok ? settled.value.tube : s.ramp.design.tube;
};
