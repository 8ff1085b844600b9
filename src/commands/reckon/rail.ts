import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { detailOf } from '../../reckon/rail/detail.ts';
import { diagnose } from '../../reckon/rail/diagnose.ts';
import type { RailSurvey } from '../../reckon/rail/diagnosis.ts';
import type { RailPlan } from '../../reckon/rail/rail-plan.ts';
import { planRecuts, type RecutPlan } from '../../reckon/rail/recuts.ts';
import type { Topic, TopicAnswer, TopicInput } from './topic.ts';

const MOST_SLITS = 400;
const MOST_STATIONS = 200;
/** A last station written a little past the end is rounding. */
const PAST_END_MM = 1;

/** Most of the line's arc that one flat may stand for, rad. */
const MOST_BEND = Math.PI / 2;

const DEGREE = Math.PI / 180;
const degrees = (rad: number): number => rad / DEGREE;

type RailInput = {
  radius_mm: number;
  turn_deg: number;
  slits_mm: number[];
  stations_mm: number[];
  offsets_mm: number[];
  read_to_mm?: number;
  depth_mm?: number;
  deck_mm?: number;
  wall_mm?: number;
  tolerance_mm?: number;
  kerf_mm?: number;
  pull_deg?: number;
};

/** The plan, when slits and stations can lie where they are said to. */
function planOf(input: RailInput): Outcome<RailPlan> {
  const { radius_mm, slits_mm, stations_mm, offsets_mm, depth_mm, wall_mm } = input;
  const bend_rad = input.turn_deg * DEGREE;
  const arc = radius_mm * bend_rad;
  const along = `rising, between 0 and ${arc.toFixed(1)}`;
  for (const [i, at] of slits_mm.entries()) {
    if (at > (slits_mm[i - 1] ?? 0) && at < arc) continue;
    return refuse(
      'out-of-range',
      `slits_mm.${i}`,
      `Slit ${i + 1} cannot lie at ${at} mm along the line.`,
      along,
    );
  }
  const longest = slits_mm.reduce((most, at, i) => Math.max(most, at - (slits_mm[i - 1] ?? -at)), 0);
  if (Math.max(longest, 2 * (arc - slits_mm.at(-1)!)) > MOST_BEND * radius_mm)
    return refuse(
      'contradiction',
      'slits_mm',
      'One flat would span more than a right angle.',
      'more slits, or less bend',
    );
  for (const [j, at] of stations_mm.entries()) {
    if (at <= arc + PAST_END_MM) continue;
    const message = `Station ${j + 1} at ${at} mm lies past the end of the line.`;
    return refuse('out-of-range', `stations_mm.${j}`, message, `0 to ${arc.toFixed(1)}`);
  }
  if (offsets_mm.length !== stations_mm.length) {
    const message = `There are ${stations_mm.length} stations and ${offsets_mm.length} offsets.`;
    return refuse('contradiction', 'offsets_mm', message, 'one offset for each station');
  }
  for (const [j, offset] of offsets_mm.entries()) {
    if (Math.abs(offset) <= radius_mm / 2) continue;
    const message = `Offset ${j + 1} is ${offset} mm: no rail lies that far from its line.`;
    return refuse(
      'out-of-range',
      `offsets_mm.${j}`,
      message,
      `at most half the radius, ${radius_mm / 2}, either side`,
    );
  }
  if (depth_mm !== undefined && wall_mm !== undefined && wall_mm * 2 >= depth_mm)
    return refuse(
      'contradiction',
      'wall_mm',
      'The wall fills the tube.',
      `less than half the depth, ${depth_mm / 2}`,
    );
  return good({ radius_mm, bend_rad, slits_mm });
}

/** A gap below nothing by no more than this is a closed one, mm. */
const CLOSED_MM = 0.005;

/** Said when the re-cuts do not bring the rail home, or only with a wider saw cut. */
const leftOver = (plan: RecutPlan): string[] => {
  const wider = plan.recuts.filter(r => r.face_gap_mm !== null && r.face_gap_mm < -CLOSED_MM);
  const most = wider.reduce((mm, r) => Math.max(mm, -(r.face_gap_mm ?? 0)), 0);
  return [
    ...(wider.length === 0
      ? []
      : [
          `Slits ${wider.map(r => r.slit).join(', ')} close by more than the kerf: saw them up to ${most.toFixed(2)} mm wider, or add slits midway.`,
        ]),
    ...(plan.within || plan.recuts.length === 0
      ? []
      : [
          `${plan.recuts.length} re-cuts leave ${plan.worst_after_mm.toFixed(1)} mm: slits midway, or a new rail.`,
        ]),
  ];
};

function run(raw: TopicInput): Outcome<TopicAnswer> {
  const input = raw as unknown as RailInput;
  const { depth_mm, deck_mm, wall_mm, kerf_mm } = input;
  const plan = planOf(input);
  if (!plan.ok) return plan;
  const survey: RailSurvey = {
    plan: plan.value,
    stations_mm: input.stations_mm,
    offsets_mm: input.offsets_mm,
    read_to_mm: input.read_to_mm ?? 1,
    ...(depth_mm === undefined ? {} : { depth_mm }),
    ...(deck_mm === undefined ? {} : { deck_mm }),
    ...(wall_mm === undefined ? {} : { wall_mm }),
  };
  const found = diagnose(survey);
  const lever = depth_mm === undefined || wall_mm === undefined ? undefined : depth_mm - wall_mm / 2;
  const recutPlan = planRecuts(survey, found, {
    tolerance_mm: input.tolerance_mm ?? 2,
    wider: true,
    pull_rad: (input.pull_deg ?? 0) * DEGREE,
    ...(kerf_mm === undefined ? {} : { kerf_mm }),
    ...(lever === undefined ? {} : { lever_mm: lever }),
  });
  const odd_slits = found.odd_slits.map(o => ({ slit: o.slit, deg: degrees(o.turn_rad) }));
  return good({
    cause: found.cause,
    sure: found.sure,
    rivals: found.rivals.map(r => ({ cause: r.cause, odd_slit: r.odd_slits[0]?.slit ?? null, sure: r.sure })),
    detail: [detailOf(found), ...leftOver(recutPlan)].join(' ').trim(),
    even_deg: degrees(found.even_rad),
    odd_slit: odd_slits[0]?.slit ?? null,
    odd_deg: odd_slits[0]?.deg ?? 0,
    odd_slits,
    rigid: { x_mm: 0, y_mm: found.rigid.y_mm, turn_deg: degrees(found.rigid.turn_rad) },
    worst_mm: recutPlan.worst_mm,
    recuts: recutPlan.recuts.map(r => ({
      slit: r.slit,
      turn_deg: degrees(r.turn_rad),
      face_gap_mm: r.face_gap_mm,
    })),
    worst_after_mm: recutPlan.worst_after_mm,
    measure_again: found.measure_again,
  });
}

export const topic: Topic = {
  name: 'rail',
  summary: 'What happened to a rail, from its offsets, and which slits to open or close again.',
  fields: {
    radius_mm: {
      is: 'number',
      above: 0,
      atMost: 1e6,
      about: 'radius of the line that the offsets were read from',
    },
    turn_deg: { is: 'number', above: 0, atMost: 180, about: 'bend angle of that line' },
    slits_mm: {
      is: 'list',
      of: { is: 'number', above: 0 },
      least: 1,
      most: MOST_SLITS,
      about: 'slits along the line, rising',
    },
    stations_mm: {
      is: 'list',
      of: { is: 'number', atLeast: 0 },
      least: 3,
      most: MOST_STATIONS,
      about: 'stations along the line',
    },
    offsets_mm: {
      is: 'list',
      of: { is: 'number' },
      least: 3,
      most: MOST_STATIONS,
      about: 'offset at each station as read, + toward the centre',
    },
    read_to_mm: { is: 'number', above: 0, atMost: 20, optional: true, about: 'reading step, 1 if not given' },
    depth_mm: { is: 'number', above: 0, atMost: 1000, optional: true, about: 'depth of the tube' },
    deck_mm: { is: 'number', above: 0, atMost: 1000, optional: true, about: 'thickness of the deck' },
    wall_mm: { is: 'number', above: 0, atMost: 1000, optional: true, about: 'wall of the tube' },
    tolerance_mm: {
      is: 'number',
      above: 0,
      optional: true,
      about: 'largest offset let stand, 2 if not given',
    },
    kerf_mm: { is: 'number', above: 0, atMost: 1000, optional: true, about: 'kerf of a re-cut' },
    pull_deg: {
      is: 'number',
      atLeast: 0,
      atMost: 10,
      optional: true,
      about: 'how much a slit turns as its weld cools',
    },
  },
  example:
    'rail --radius_mm 3000 --turn_deg 45 --slits_mm 235.6,706.9,1178.1,1649.3,2120.6 ' +
    '--stations_mm 0,471.2,942.5,1413.7,1885,2356.2 --offsets_mm 0,0.5,3,6.5,12,19.5 --read_to_mm 0.5',
  run,
};
