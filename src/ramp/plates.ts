import { baseStartX } from './base-ends.ts';
import type { RailName, Tube } from './design.ts';
import { type Member, square } from './member.ts';
import type { Design } from './settle.ts';

const FOOT: Tube = { depth_mm: 100, width_mm: 100, wall_mm: 5 };

/** Side plates that join each rail to its base rail, and the plates it stands on. */
export const plates = (d: Design, rails: readonly RailName[]): readonly Member[] => {
  const members: Member[] = [];
  const plate: Tube = { depth_mm: 100, width_mm: 60, wall_mm: d.tube.wall_mm };
  for (const rail of rails) {
    for (const side of ['inside', 'outside']) {
      members.push(
        square(`side plate@${rail}:${side}`, 'side plate', plate, 100, baseStartX(d), {
          vents: 0,
          joints: 2,
          rail,
          when: 'now',
        }),
      );
    }
    for (const end of ['entry', 'lip']) {
      members.push(
        square(`foot plate@${rail}:${end}`, 'foot plate', FOOT, 100, 0, {
          vents: 0,
          joints: 1,
          rail,
          when: 'now',
        }),
      );
    }
  }
  return members;
};
