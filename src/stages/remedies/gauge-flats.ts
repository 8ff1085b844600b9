import { bendAcross, GAUGE_ASKS, gaugeStep } from '../rail-findings/gauge.ts';
import {
  angle,
  frozenNumbers,
  frozenText,
  type Injecting,
  listed,
  type Offering,
  offer,
  railOf,
  stageOfPhase,
} from './remedy.ts';
import { beforeSurvey } from './turns.ts';

/** Zeroing the gauge, and one slit read on both its flats (common practice). */
const MINUTES = { once: 3, each: 2 } as const;
/** How far from what its line asks a slit may be read before the field asks once more, and at most, rad. */
const USUAL = 0.01;
const MOST = 0.25;

/**
 * An angle gauge across the slits that the stations cannot tell apart. Better than offsets at this: it sees one slit at a time.
 * Changes no steel.
 */
export const offerGauge: Offering = c => {
  const { r, answer } = c;
  const free = r.survey.phase === 'tacked' || r.survey.phase === 'cold';
  const slits =
    answer?.notes.flatMap(n => (n.is === 'which-slit' ? n.slits : [])).slice(0, GAUGE_ASKS.length) ?? [];
  const read = new Set(r.gauge.map(g => g.slit));
  if (!free || slits.length === 0 || slits.every(slit => read.has(slit))) return [];
  return [
    offer(
      c,
      'gauge-flats',
      MINUTES.once + MINUTES.each * slits.length,
      r.worst_mm,
      { slits: listed(slits), count: slits.length },
      { slits, bends_rad: slits.map(slit => bendAcross(r.line, slit)) },
    ),
  ];
};

/** The step stands until all its slits are read, or the rail has a newer survey. */
export const gaugeSteps: Injecting = (s, chosen) => {
  const on = railOf(s, chosen);
  const survey = s.build.surveys.find(v => v.id === frozenText(chosen, 'survey'));
  const slits = frozenNumbers(chosen, 'slits').slice(0, GAUGE_ASKS.length);
  const bends = frozenNumbers(chosen, 'bends_rad');
  if (on === null || survey === undefined || survey.retired || slits.length === 0) return [];
  if (slits.length !== bends.length) return [];
  const stage = stageOfPhase(survey.phase);
  const name = (k: number): number => slits[k] ?? slits[slits.length - 1] ?? 1;
  return [
    {
      key: gaugeStep(stage, chosen.entry),
      stage,
      words: 'gauge',
      fills: {
        rail: on.rail,
        slits: listed(slits),
        should: angle(bends[0] ?? 0),
        first: name(0),
        second: name(1),
        third: name(2),
        fourth: name(3),
      },
      turn: beforeSurvey(s, on.index, survey.phase),
      needs: [],
      uses: [],
      line: survey.to,
      asks: slits.flatMap((_, k) => {
        const ask = GAUGE_ASKS[k];
        const bend = bends[k] ?? 0;
        if (ask === undefined) return [];
        return [
          {
            ask,
            as: 'angle' as const,
            expected: [bend - USUAL, bend + USUAL] as const,
            possible: [bend - MOST, bend + MOST] as const,
          },
        ];
      }),
      minutes: [3, 4 + 2 * slits.length],
    },
  ];
};
