import { baseStartX } from './base-ends.ts';
import type { RailName, Tube } from './design.ts';
import { type Member, square } from './member.ts';
import type { Design } from './settle.ts';
import { tubeAsPlanned } from './tube-in-hand.ts';

const INCH = 25.4;

/** Plates as a yard's flat bar gives them (trade sizes, practice): long side, width of the flat, thickness of a foot, mm. */
const SIZES = {
  metric: { side: { long: 100, wide: 60 }, foot: { long: 100, wide: 100, thick: 5 } },
  us: {
    side: { long: 4 * INCH, wide: 2.5 * INCH },
    foot: { long: 4 * INCH, wide: 4 * INCH, thick: (3 / 16) * INCH },
  },
} as const;

/** A side plate is as thick as the rail's wall as planned, of flat bar: in the US by the sixteenth. */
const sideThickness = (d: Design): number => {
  const wall = tubeAsPlanned(d).wall_mm;
  return d.system === 'us' ? (Math.max(1, Math.round((16 * wall) / INCH)) / 16) * INCH : wall;
};

/** Side plates that join each rail to its base rail, and the plates it stands on. */
export const plates = (d: Design, rails: readonly RailName[]): readonly Member[] => {
  const members: Member[] = [];
  const { side: sizes, foot: feet } = SIZES[d.system];
  const plate: Tube = { depth_mm: sizes.long, width_mm: sizes.wide, wall_mm: sideThickness(d) };
  const foot: Tube = { depth_mm: feet.long, width_mm: feet.wide, wall_mm: feet.thick };
  for (const rail of rails) {
    for (const side of ['inside', 'outside']) {
      members.push(
        square(`side plate@${rail}:${side}`, 'side plate', plate, sizes.long, baseStartX(d), {
          vents: 0,
          joints: 2,
          rail,
          when: 'now',
        }),
      );
    }
    for (const end of ['entry', 'lip']) {
      members.push(
        square(`foot plate@${rail}:${end}`, 'foot plate', foot, feet.long, 0, {
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
