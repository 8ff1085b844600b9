import type { Build } from '../../build/fold.ts';
import type { Ramp } from '../../ramp/ramp.ts';
import type { Open } from './open.ts';
import { anchors, diagonals, outdoors, welder } from './open-frame.ts';
import { bright, openRail } from './open-rail.ts';

/**
 * What stands open in a build, measured things first: a rail tacked, half welded, cold or free; a bend; slits sawn; a rail in
 * its clamps; tacked joints; a tacked frame; bare, primed and decked steel; the welding set. `days` is how long it may stand.
 * @param away days of the pause; those that may stand longer are left out
 */
export const leftOpen = (b: Build, ramp: Ramp, away: number): readonly Open[] => {
  const all = [
    ...ramp.rails.flatMap(rail => openRail(b, rail, ramp)),
    ...diagonals(b),
    ...anchors(b),
    ...ramp.rails.flatMap(rail => bright(b, rail)),
    ...welder(b),
    ...outdoors(b, away),
  ];
  return all.filter(o => away >= o.days);
};
