import type { Situation } from '../situation.ts';
import { jointWall, railWall } from '../weld-walls.ts';

/** Where welds of a wall of their own are laid: the slits of the rails, and the joints of uprights and crossmembers. */
export type Place = 'slits' | 'joints';
export const PLACES: readonly Place[] = ['slits', 'joints'];

/** Figure of the wall welded there: what a reading remembers it by. */
export const WALL_FIGURE: Readonly<Record<Place, string>> = { slits: 'weld-wall', joints: 'joint-wall' };

export const wallAt = (s: Situation, place: Place): number =>
  place === 'slits' ? railWall(s) : jointWall(s);

/** The slit route has both; a rolled rail has joints alone. */
export const placesOf = (s: Situation): readonly Place[] =>
  s.ramp.design.route === 'slit' ? PLACES : ['joints'];
