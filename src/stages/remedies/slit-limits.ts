import type { Chosen } from '../../build/fold.ts';
import type { Tube } from '../../ramp/design.ts';
import { mostGap } from '../../reckon/rail/recuts.ts';
import type { RailReading } from '../rail-findings/reading.ts';
import { weldedSlits } from '../rail-findings/welded-slits.ts';
import type { Situation } from '../situation.ts';

/** Remedies that turned slits of a rail, each with `slits` in its plan. */
const TURNS_SLITS = new Set(['re-cut', 'close-slit', 'match-rail']);
/** Remedies that put another rail in this one's place: what was done to the old one does not count. */
export const NEW_RAIL: ReadonlySet<string> = new Set(['start-again', 'slits-new-rail', 'nick-new-rail']);
/** A flat is no shorter than this beside a new slit, mm: soft zones must not meet and a tack must fit (derived; common practice). */
const SHORTEST_FLAT = 40;

/** From the middle of the back wall to the slit face, mm. */
export const leverOf = (tube: Tube): number => tube.depth_mm - tube.wall_mm / 2;

const slitsOf = (chosen: Chosen): readonly number[] => {
  const { slits } = chosen.plan;
  return Array.isArray(slits)
    ? slits.flatMap(x =>
        typeof x === 'object' && x !== null && typeof x.slit === 'number' ? [x.slit as number] : [],
      )
    : [];
};

/** Slits that stay as they are: turned once already, nicked at the back wall, or welded while the others are not. */
export const slitsToLeave = (s: Situation, r: RailReading): readonly number[] => {
  const anew = s.build.chosen.filter(c => NEW_RAIL.has(c.remedy) && c.plan.rail === r.rail).at(-1)?.n ?? 0;
  const turned = s.build.chosen
    .filter(c => c.n > anew && TURNS_SLITS.has(c.remedy) && c.plan.rail === r.rail)
    .flatMap(slitsOf);
  const nicked = s.build.slitNotes
    .filter(n => n.n > anew && n.rail === r.rail && n.note === 'nicked')
    .map(n => n.slit);
  const welded = r.survey.phase === 'half-welded' ? [...weldedSlits(s, r.survey, r.plan)] : [];
  return [...new Set([...turned, ...nicked, ...welded])].sort((a, b) => a - b);
};

/** Whether a rail's slits can still be got at: not once its uprights hold it. */
export const slitsFree = (phase: string): boolean =>
  phase === 'tacked' || phase === 'half-welded' || phase === 'cold';

/** Greatest gap left at the face of a slit that is still only tacked, mm. */
const gapNow = (r: RailReading): number => Math.max(0, ...r.plan.slits.map(slit => slit.gap_mm));

/**
 * How far one slit may be turned, rad. A tacked slit is spread from its gap, or sawn wider and closed; a welded one is
 * sawn out, and its new weld pulls once more. Never a wider gap to weld than 1.5 mm or half the wall.
 */
export const turnLimits = (r: RailReading): { open_rad: number; close_rad: number } => {
  const h = leverOf(r.tube);
  const most = mostGap(r.tube.wall_mm);
  const kerf = r.plan.kerf_mm;
  if (r.survey.phase === 'cold')
    return {
      open_rad: Math.max(0, (most - kerf) / h - r.plan.pull.rad),
      close_rad: kerf / h + r.plan.pull.rad,
    };
  const gap = gapNow(r);
  return { open_rad: Math.max(0, (most - gap) / h), close_rad: (gap + kerf) / h };
};

/** How the slit is set before it is welded or tacked again. */
export type SlitSetting = Readonly<{
  slit: number;
  /** As it is to stand once welded and cold, + closed more, rad. */
  turn_rad: number;
  /** Gap at the face before welding, mm. */
  gap_mm: number;
  /** Its face is sawn first. */
  saw: boolean;
}>;

export const settingOf = (r: RailReading, slit: number, turn_rad: number): SlitSetting => {
  const h = leverOf(r.tube);
  const kerf = r.plan.kerf_mm;
  if (r.survey.phase === 'cold')
    return { slit, turn_rad, gap_mm: kerf - h * (turn_rad - r.plan.pull.rad), saw: true };
  const gap = (r.plan.slits.find(x => x.number === slit)?.gap_mm ?? 0) - h * turn_rad;
  return gap >= 0
    ? { slit, turn_rad, gap_mm: gap, saw: false }
    : { slit, turn_rad, gap_mm: gap + kerf, saw: true };
};

/** How far a new slit midway between two others closes once welded, rad, and behind which slits one has room: never where something stands. */
export const freshLimit = (
  s: Situation,
  r: RailReading,
): { most_rad: number; behind: readonly number[] } | null => {
  const { slits, pitch_mm, kerf_mm, pull } = r.plan;
  if (slits.length < 2 || pitch_mm / 2 < SHORTEST_FLAT) return null;
  const taken = new Set(
    s.ramp.members.flatMap(m =>
      m.flat === undefined || (m.rail !== undefined && m.rail !== r.rail) ? [] : [m.flat],
    ),
  );
  const behind = slits.slice(0, -1).flatMap(x => (taken.has(x.number) ? [] : [x.number]));
  return { most_rad: kerf_mm / leverOf(r.tube) + pull.rad, behind };
};
