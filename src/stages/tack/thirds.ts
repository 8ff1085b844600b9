import { readingKey } from '../../build/fold.ts';
import type { RailName } from '../../ramp/design.ts';
import type { SlitSpot } from '../../ramp/rail-plan.ts';
import { type Third, thirdsOf } from '../rail-thirds.ts';
import type { Situation } from '../situation.ts';

export const lastThird = (s: Situation, rail: RailName): number | undefined =>
  thirdsOf(s, rail).at(-1)?.third;

/** Depth of the tube less half its back wall: what closing a slit turns about, mm (exact). */
export const leverOf = (s: Situation, rail: RailName): number => {
  const tube = { ...s.ramp.design.tube, ...s.measured.tubes.get(rail) };
  return tube.depth_mm - tube.wall_mm / 2;
};

export const KEYS = {
  close: (rail: RailName, third: number) => `tack/close-third@${rail}:${third}`,
  look: (rail: RailName, third: number) => `tack/look-third@${rail}:${third}`,
  rest: (rail: RailName, third: number) => `tack/tack-rest@${rail}:${third}`,
  read: (rail: RailName, third: number) => `tack/read-third@${rail}:${third}`,
} as const;

/**
 * Bend a rail should have once a third is closed, rad: what was read after the third before it, and what this one's slits close;
 * where nothing was read, all that was closed so far.
 */
export const bendAfter = (s: Situation, rail: RailName, third: number): number => {
  let bend = 0;
  for (const t of thirdsOf(s, rail)) {
    if (t.third > third) break;
    bend += t.slits.reduce((sum, slit) => sum + slit.close_rad, 0);
    const read = s.build.readings.get(readingKey(KEYS.read(rail, t.third), 'bent'));
    if (t.third < third && read !== undefined) bend = read.value;
  }
  return bend;
};

/** Slits of a third that are tacked first, every third one, and those tacked once the bend was looked at. */
export const tackOrder = (t: Third): Readonly<{ first: readonly SlitSpot[]; rest: readonly SlitSpot[] }> => ({
  first: t.slits.filter((_, i) => i % 3 === 0),
  rest: t.slits.filter((_, i) => i % 3 !== 0),
});
