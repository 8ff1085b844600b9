import type { Survey } from '../../build/fold.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import { tubeSection } from '../../reckon/steel/section.ts';
import { STEEL_E_MPA } from '../../reckon/steel/steel.ts';
import type { Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { frozenNumber, frozenText, type Injecting, length, railOf, stageOfPhase, within } from './remedy.ts';
import { beforeSurvey } from './turns.ts';

/** A rail bowed out of its plane, by its string. */
export type BowCase = Readonly<{
  s: Situation;
  survey: Survey;
  plan: RailPlan;
  /** + toward the middle of the ramp, mm. */
  bow_mm: number;
  /** Slit nearest to a kink; null for a smooth bow. */
  kink: number | null;
  limit_mm: number;
}>;

/**
 * Of what the first side wall of a slit pulls sideways, the other side takes most back: so much stays (common practice, to be
 * tested on the person's own rail; no published figure is known).
 */
const STAYS = 0.3;
/** Of a rail pulled straight and held by what is welded to it, a tenth comes back (common practice). */
const COMES_BACK = 0.1;
/** What a string tells, mm. */
const STRING = 0.5;

const MINUTES = { order: 5, retack: 25, hold: 20, suit: 15, again: 15 } as const;

export const sideOf = (bow_mm: number): 'inner' | 'outer' => (bow_mm > 0 ? 'inner' : 'outer');

const offer = (
  c: BowCase,
  remedy: string,
  minutes: number,
  after_mm: number,
  fills: Offer['fills'],
  plan: Offer['plan'],
): Offer => ({
  remedy,
  minutes,
  fills: { rail: c.plan.rail, side: sideOf(c.bow_mm), ...fills },
  after: { v: after_mm, as: 'length', within: within(after_mm, c.limit_mm) },
  plan: { rail: c.plan.rail, survey: c.survey.id, phase: c.survey.phase, bow_mm: c.bow_mm, ...plan },
});

/** What one slit turns sideways while only one side wall is welded: as much as it pulls in the plane, by depth over width (ring model; derived). */
const sidePull = (c: BowCase): number => {
  const { depth_mm, wall_mm, width_mm } = { ...c.s.ramp.design.tube, ...c.s.measured.tubes.get(c.plan.rail) };
  return (c.plan.pull.rad * (depth_mm - wall_mm / 2)) / width_mm;
};

/** The bulged side wall is the longer one: welded first, it draws the rail straight. Only while slits are still to be welded. */
const otherSideFirst = (c: BowCase): readonly Offer[] => {
  const left =
    c.survey.phase === 'tacked'
      ? c.plan.slits.length
      : c.survey.phase === 'half-welded'
        ? Math.floor(c.plan.slits.length / 2)
        : 0;
  const each = (STAYS * sidePull(c) * c.plan.toLip_mm) / 8;
  if (left === 0 || each <= 0) return [];
  const count = Math.min(left, Math.max(1, Math.round(Math.abs(c.bow_mm) / each)));
  const after = Math.max(STRING, Math.abs(c.bow_mm) - count * each);
  return [offer(c, 'bow-other-side', MINUTES.order, after, { count }, { side: sideOf(c.bow_mm), count })];
};

/** A kink is one slit closed askew: its tacks are opened and it is closed square. */
const retack = (c: BowCase): readonly Offer[] =>
  c.kink === null || c.survey.phase !== 'tacked'
    ? []
    : [offer(c, 'bow-retack', MINUTES.retack, STRING, { slit: c.kink }, { slit: c.kink })];

/** Force in the middle that holds the rail straight, 48EIδ/L³ (beam on two supports), N; sideways the tube bends about its other axis. */
const holdingForce = (c: BowCase): number => {
  const { tube, standard } = c.s.ramp.design;
  const section = tubeSection({
    shape: 'rect',
    depth_mm: tube.width_mm,
    width_mm: tube.depth_mm,
    wall_mm: tube.wall_mm,
    rule: standard === 'AISC' ? 'AISC' : 'EN10219',
  });
  return section.ok
    ? (48 * STEEL_E_MPA * section.value.inertia_mm4 * Math.abs(c.bow_mm)) / c.plan.toLip_mm ** 3
    : 0;
};

const hold = (c: BowCase): Offer =>
  offer(
    c,
    'bow-hold',
    MINUTES.hold,
    Math.max(STRING, COMES_BACK * Math.abs(c.bow_mm)),
    { force: { v: holdingForce(c), as: 'force' } },
    { force_N: holdingForce(c) },
  );

/** What can be done about a sideways bow. No torch, and no straightening over a block: a slit rail is not for that. */
export const bowOffers = (c: BowCase): readonly Offer[] => {
  const size = Math.abs(c.bow_mm);
  return [
    ...otherSideFirst(c),
    ...retack(c),
    ...(c.survey.phase === 'unclamped' ? [] : [hold(c)]),
    offer(c, 'bow-suit', MINUTES.suit, size, { bow: length(size) }, {}),
    offer(
      c,
      'read-again',
      MINUTES.again,
      size,
      { count: c.survey.stations_mm.length, stations: `1–${c.survey.stations_mm.length}` },
      { stations: [] },
    ),
    offer(c, 'leave-bow', 0, size, {}, {}),
  ];
};

/** The order of sides is said where the welding begins; a kinked slit is set before. */
export const bowSteps: Injecting = (s, chosen) => {
  const on = railOf(s, chosen);
  if (on === null) return [];
  const phase = frozenText(chosen, 'phase');
  const fills = {
    rail: on.rail,
    side: sideOf(frozenNumber(chosen, 'bow_mm')),
    count: frozenNumber(chosen, 'count'),
    slit: frozenNumber(chosen, 'slit'),
  };
  const base = { fills, needs: [], uses: [] } as const;
  if (chosen.remedy === 'bow-other-side')
    return [
      {
        ...base,
        key: `weld/bow-order@${chosen.entry}`,
        stage: 'weld',
        words: 'bow-order',
        turn: beforeSurvey(s, on.index, 'half-welded', 0),
        minutes: [2, 5],
      },
    ];
  const stage = stageOfPhase(phase);
  return [
    {
      ...base,
      key: `${stage}/bow-retack@${chosen.entry}`,
      stage,
      words: 'bow-retack',
      turn: beforeSurvey(s, on.index, phase, 5),
      minutes: [15, 30],
    },
  ];
};
