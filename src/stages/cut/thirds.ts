import type { RailName } from '../../ramp/design.ts';
import type { SlitSpot } from '../../ramp/rail-plan.ts';
import { thirdsOf } from '../rail-thirds.ts';
import type { Situation } from '../situation.ts';
import { isSawn } from '../slit-strip.ts';

export const markKey = (rail: RailName, third: number): string => `cut/mark-third@${rail}:${third}`;
export const markItemKey = (rail: RailName, third: number, slit: number): string =>
  `${markKey(rail, third)}#${slit}`;

const slitsOf = (s: Situation, rail: RailName, third: number): readonly SlitSpot[] =>
  thirdsOf(s, rail).find(t => t.third === third)?.slits ?? [];

/** The next slit of a third to mark, and to saw. */
export const nextMark = (s: Situation, rail: RailName, third: number): SlitSpot | undefined =>
  slitsOf(s, rail, third).find(
    slit => slit.marked === null && !s.build.ticks.has(markItemKey(rail, third, slit.number)),
  );
export const nextSlit = (s: Situation, rail: RailName, third: number): SlitSpot | undefined =>
  slitsOf(s, rail, third).find(slit => !isSawn(s, rail, third, slit.number));
