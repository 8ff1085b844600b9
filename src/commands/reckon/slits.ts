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

/** Below this a flat has no room for a tack outside the soft zones of both its welds [practice]. */
const SHORTEST_FLAT_mm = 25;

/** A wall thinner than this burns through at the back corner under a first-timer's hand [practice]. */
const THINNEST_WALL_mm = 2;

/** What a kerf may have beyond half the wall when the cut stops where the corner's round begins [practice]. */
const KERF_BEYOND_HALF_WALL_mm = 0.3;

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
    const warnings = warningsOf(rest.depth_mm, rest.wall_mm, rest.kerf_mm, pitch_mm);
    return good({
      count,
      pitch_mm,
      close_deg: degrees(close_rad),
      face_gap_mm: faceGap_mm,
      facet_sag_mm: facetSag_mm,
      cut_length_mm: cutLength_mm,
      marks_mm,
      ...(warnings.length === 0 ? {} : { warnings }),
    });
  },
};

/** What the shop would say about such slits; the numbers are right all the same. */
const warningsOf = (
  depth_mm: number,
  wall_mm: number,
  kerf_mm: number,
  pitch_mm: number,
): readonly string[] => [
  ...(wall_mm < THINNEST_WALL_mm
    ? [`A wall under ${THINNEST_WALL_mm} mm is no first welding job: the back corners burn through.`]
    : []),
  ...(kerf_mm > wall_mm / 2 + KERF_BEYOND_HALF_WALL_mm
    ? [
        'The slit is wider than half the wall: what stays open at the back corner burns through. Use a thinner disc.',
      ]
    : []),
  ...(pitch_mm < Math.max(SHORTEST_FLAT_mm, depth_mm)
    ? [
        'The flats are shorter than the tube is deep, or than 25 mm: welds so close soften the steel between them.',
      ]
    : []),
];
