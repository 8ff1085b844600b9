import type { Step } from '../../coach/walk.ts';
import { read } from '../../quantity/read.ts';
import { write } from '../../quantity/write.ts';
import { type PointFrame, type PointRead, readPoints } from '../../reckon/rail/points.ts';
import { typedLine } from '../fields/typed-line.ts';
import type { Desk } from './desk.ts';

type Face = 'rail bottom face' | 'rail top face';

/** Between two points, between the two numbers of one, and the word before rises from a string. */
const POINT = ';';
const PAIR = ':';
const STRING = 'string';

const TITLE = `Points x${PAIR}y${POINT} x${PAIR}y`;

/** Said where the way of reading is chosen. */
export const POINTS_HELP = [
  `Or points: m, then x${PAIR}y${POINT} x${PAIR}y ... along the base line and square up from it;`,
  `with "${STRING}" before them, along a string, entry to lip, and the rise off it.`,
] as const;

/** What was typed as points, or what of it was not understood. */
const pointsOf = (
  text: string,
  desk: Desk,
): { frame: PointFrame; points: readonly PointRead[] } | { not: string } => {
  const onString = text.trim().toLowerCase().startsWith(STRING);
  const rest = onString ? text.trim().slice(STRING.length) : text;
  const points: PointRead[] = [];
  for (const part of rest.split(POINT).map(p => p.trim())) {
    if (part === '') continue;
    const both = part.split(PAIR).map(n => read(n.trim(), 'length', desk.system));
    const [x, y] = both;
    if (both.length !== 2 || x?.ok !== true || y?.ok !== true) return { not: part };
    points.push({ x_mm: x.value, y_mm: y.value });
  }
  return { frame: onString ? 'string' : 'base line', points };
};

/**
 * A line of points in place of offsets: they become a survey at the stations where they lie, which is read through and ended like
 * any other; the circle through them is said with the standard error of its radius.
 */
export const askPoints = (desk: Desk, step: Step, edge: Face, begun: () => void): void => {
  const ask = step.survey;
  const plan = ask === undefined ? undefined : desk.view.ramp.plans.get(ask.rail);
  if (ask === undefined || plan === undefined) return;
  const { radius_mm, turn_rad } = ask.to === 'tack line' ? plan.tack : plan.finished;
  const line = { radius_mm, bend_rad: turn_rad, straight_mm: plan.straight_mm, slits_mm: [] };
  desk.ask({
    title: TITLE,
    line: typedLine(),
    submit: text => {
      if (text.trim() === '') return;
      const typed = pointsOf(text, desk);
      if ('not' in typed) return desk.say(`Not a point: "${typed.not}". Two numbers with ${PAIR} between`);
      const got = readPoints(line, typed.frame, typed.points);
      if (!got.ok) return desk.say(`${got.fault.message} Give ${got.fault.accepted}`);
      const { stations_mm, offsets_mm, circle } = got.value;
      const mm = (v: number): string => `${Math.round(v * 1000) / 1000} mm`;
      if (!desk.act({ do: 'open-survey', step: step.key, edge, stations: stations_mm.map(mm) })) return;
      if (!desk.act({ do: 'offsets', from: 1, values: offsets_mm.map(mm) })) return;
      begun();
      const [r, sd] = [circle.radius_mm, circle.radius_sd_mm].map(v => write(v, 'length', desk.system));
      desk.say(
        `Circle through them ${r}, give or take ${sd}; the line's is ${write(radius_mm, 'length', desk.system)}.`,
      );
    },
  });
};
