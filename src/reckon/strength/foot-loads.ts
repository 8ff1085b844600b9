import { eachCombination } from './load-combinations.ts';
import type { Responses } from './responses.ts';
import type { SideFrame } from './side-frame.ts';

/** What one foot of a side frame must take, unfactored, all of the rider on this side. */
export type FootLoad = Readonly<{
  name: string;
  x_mm: number;
  /** Pressed down onto the ground, and pulled up off it where it is held down. */
  down_N: number;
  lift_N: number;
  /** Along the ground, as a size; only an anchored foot takes any. */
  along_N: number;
}>;

/**
 * The feet under every arrangement of the loads, with the dead weight. A foot is taken as held down: where it lifts, an anchor
 * or weight has to do it.
 */
export const footLoads = (frame: SideFrame, responses: Responses): FootLoad[] => {
  const feet = frame.feet.map(({ name, x_mm }) => ({ name, x_mm, down_N: 0, lift_N: 0, along_N: 0 }));
  eachCombination(frame, responses, { dead: 1, live: 1 }, 'feet', (_, figures) => {
    for (const [k, foot] of feet.entries()) {
      const up = figures[2 * k + 1]!;
      foot.down_N = Math.max(foot.down_N, up);
      foot.lift_N = Math.max(foot.lift_N, -up);
      foot.along_N = Math.max(foot.along_N, Math.abs(figures[2 * k]!));
    }
  });
  return feet;
};
