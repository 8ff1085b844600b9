import { good } from '../../quantity/outcome.ts';
import { slitPlan } from '../../reckon/curve/slits.ts';
import { degrees, radians } from '../../reckon/numeric/angle.ts';
import { underFields } from './fault-field.ts';
import type { Topic } from './topic.ts';

type Input = Readonly<{
  hinge_radius_mm: number;
  turn_deg: number;
  depth_mm: number;
  wall_mm: number;
  kerf_mm: number;
  gap_mm?: number;
  pull_deg?: number;
  count?: number;
}>;

/** Shortest flat between slits that leaves room for a tack outside both soft zones [practice]. */
const SHORTEST_FLAT_mm = 25;

export const topic: Topic = {
  name: 'slits',
  summary: 'how many slits bend a rail, where to saw them and how far to close each',
  fields: {
    hinge_radius_mm: { is: 'number', above: 0, about: 'to the middle of the uncut back wall' },
    turn_deg: { is: 'number', above: 0, atMost: 120, about: 'bend the slits have to make' },
    depth_mm: { is: 'number', above: 0, about: 'of the tube' },
    wall_mm: { is: 'number', above: 0, about: 'of the tube' },
    kerf_mm: { is: 'number', above: 0, about: 'width of a slit as cut' },
    gap_mm: {
      is: 'number',
      atLeast: 0,
      optional: true,
      about: 'least gap left at the mouth (0)',
    },
    pull_deg: {
      is: 'number',
      above: -90,
      below: 90,
      optional: true,
      about: 'bend one slit adds as its weld cools (0)',
    },
    count: { is: 'number', whole: true, atLeast: 1, optional: true, about: 'of slits (the fewest)' },
  },
  example: 'slits --hinge_radius_mm 3056.5 --turn_deg 45 --depth_mm 40 --wall_mm 3 --kerf_mm 1.2',
  run: input => {
    const { hinge_radius_mm, turn_deg, gap_mm = 0, pull_deg = 0, ...rest } = input as Input;
    const plan = slitPlan({
      ...rest,
      hingeRadius_mm: hinge_radius_mm,
      turn_rad: radians(turn_deg),
      gap_mm,
      pull_rad: radians(pull_deg),
    });
    if (!plan.ok)
      return underFields(plan, {
        hingeRadius_mm: 'hinge_radius_mm',
        turn_rad: 'turn_deg',
        pull_rad: 'pull_deg',
      });
    const { count, pitch_mm, close_rad, faceGap_mm, facetSag_mm, cutLength_mm, marks_mm } = plan.value;
    const short = pitch_mm < Math.max(SHORTEST_FLAT_mm, rest.depth_mm);
    return good({
      count,
      pitch_mm,
      close_deg: degrees(close_rad),
      face_gap_mm: faceGap_mm,
      facet_sag_mm: facetSag_mm,
      cut_length_mm: cutLength_mm,
      marks_mm,
      ...(short
        ? {
            warning:
              'the flats are shorter than the tube is deep, or than 25 mm: welds this close soften one another.',
          }
        : {}),
    });
  },
};
