import type { RailAnswer, RailQuestion } from '../heavy/rail-answer.ts';
import { AIM, limitsOf } from '../rail-findings/limits.ts';
import { between, type RailReading, stationsOnWall } from '../rail-findings/reading.ts';
import { type Answer, type Ask, answer, type Situation } from '../situation.ts';
import { freshLimit, slitsFree, slitsToLeave, turnLimits } from './slit-limits.ts';

const rounded = (v: number, to: number): number => Math.round(v / to) * to || 0;
const mm = (v: number): number => rounded(v, 1e-3);
const rad = (v: number): number => rounded(v, 1e-7);

/** How far a rail lies from another, its own flats' sag left in, mm: as if that other were its line. */
const apartFrom = (r: RailReading, onto: RailReading): readonly number[] => {
  const at = stationsOnWall(r);
  const onOther = stationsOnWall(onto);
  return r.deviations_mm.map((o, j) => o - between(onOther, onto.lies_mm, at[j] ?? 0));
};

/**
 * The heavy question that a rail's survey asks: what happened, and which slits mend it. The same survey asks the same.
 * Null for a rail without slits.
 * @param onto another rail that this one is to match, instead of its line
 */
export const railAsk = (
  s: Situation,
  r: RailReading,
  onto?: RailReading,
): (Ask & { input: RailQuestion }) | null => {
  if (r.line.slits_mm.length === 0) return null;
  const limits = limitsOf(s);
  const free = slitsFree(r.survey.phase);
  const turns = turnLimits(r);
  const fresh = free ? freshLimit(s, r) : null;
  const input: RailQuestion = {
    line: {
      radius_mm: mm(r.line.radius_mm),
      bend_rad: rad(r.line.bend_rad),
      straight_mm: mm(r.line.straight_mm ?? 0),
      slits_mm: r.line.slits_mm.map(mm),
    },
    stations_mm: r.stations_mm.map(mm),
    offsets_mm: (onto === undefined ? r.deviations_mm : apartFrom(r, onto)).map(mm),
    read_to_mm: r.survey.read_to_mm,
    depth_mm: mm(r.tube.depth_mm),
    deck_mm: mm(r.deck_mm),
    wall_mm: mm(r.tube.wall_mm),
    twice_mm: r.twice_mm.map(mm),
    gauge: r.gauge.map(g => ({ slit: g.slit, turn_rad: rad(g.turn_rad) })),
    aim_mm: (onto === undefined ? limits.smooth : limits.mismatch) * AIM,
    recut: free
      ? { open_rad: rad(turns.open_rad), close_rad: rad(turns.close_rad), leave: slitsToLeave(s, r) }
      : null,
    fresh: fresh === null ? null : { most_rad: rad(fresh.most_rad), behind: fresh.behind },
  };
  return { topic: 'rail', input };
};

export const railKnown = (s: Situation, ask: Ask): Answer<RailAnswer> => answer<RailAnswer>(s.answers, ask);
