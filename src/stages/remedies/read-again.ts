import type { Offer } from '../sheet.ts';
import {
  BENCH,
  frozenNumbers,
  frozenText,
  type Injecting,
  listed,
  type Offering,
  offer,
  type RailCase,
  railOf,
  stageOfPhase,
} from './remedy.ts';
import { beforeSurvey } from './turns.ts';

/** One station read again, and laying out for it (common practice). */
const MINUTES = { once: 5, each: 0.5, check: 5 } as const;

/** All stations, as a range of their numbers. */
export const everyStation = (numbers: readonly number[]): string =>
  `${numbers[0] ?? 1}–${numbers.at(-1) ?? 1}`;

/** Stations that tell the most: the one that is not believed, those that tell two causes apart, else all. */
const wanted: (c: Parameters<Offering>[0]) => readonly number[] = ({ r, answer }) => {
  const numberAt = (at_mm: number): number => {
    const near = r.stations_mm.reduce(
      (best, s, k) => (Math.abs(s - at_mm) < Math.abs((r.stations_mm[best] ?? 0) - at_mm) ? k : best),
      0,
    );
    return r.numbers[near] ?? near + 1;
  };
  const doubted = answer?.doubted_station ?? null;
  if (doubted !== null) return [r.numbers[doubted - 1] ?? doubted];
  const telling = answer?.notes.flatMap(n => (n.is === 'measure' ? n.at_mm.map(numberAt) : [])) ?? [];
  return [...new Set(telling)].sort((a, b) => a - b);
};

/** Reading again changes no steel: what was read stays, unless one reading is what is off. */
export const offerReadAgain: Offering = c => {
  const stations = wanted(c);
  const doubted = (c.answer?.doubted_station ?? null) !== null;
  const count = stations.length === 0 ? c.r.stations_mm.length : stations.length;
  return [
    offer(
      c,
      'read-again',
      Math.round(MINUTES.once + MINUTES.each * c.r.stations_mm.length),
      doubted ? (c.answer?.believed_mm ?? c.r.worst_mm) : c.r.worst_mm,
      { count, stations: stations.length === 0 ? everyStation(c.r.numbers) : listed(stations) },
      { stations },
    ),
  ];
};

/** A few stations read once more, to see whether the survey stands. */
export const offerCheck = (c: RailCase, stations: readonly number[]): readonly Offer[] => [
  offer(
    c,
    'check-three',
    MINUTES.check,
    c.r.worst_mm,
    { ...BENCH, stations: listed(stations) },
    { stations },
  ),
];

/** The step stands until the rail has a newer survey. */
export const readAgainSteps: Injecting = (s, chosen) => {
  const on = railOf(s, chosen);
  const survey = s.build.surveys.find(v => v.id === frozenText(chosen, 'survey'));
  if (on === null || survey === undefined || survey.retired) return [];
  const newer = s.build.surveys.some(
    v => v.n > survey.n && v.closed && v.rail === survey.rail && v.kind === survey.kind,
  );
  if (newer) return [];
  const stage = stageOfPhase(survey.phase);
  const stations = frozenNumbers(chosen, 'stations');
  return [
    {
      key: `${stage}/read-again@${chosen.entry}`,
      stage,
      words:
        survey.kind === 'sideways'
          ? 'read-again-sideways'
          : stations.length > 0
            ? 'read-again-at'
            : 'read-again',
      fills: { rail: on.rail, stations: listed(stations), edge: survey.edge, line: survey.to },
      turn: beforeSurvey(s, on.index, survey.phase),
      needs: [],
      uses: [],
      line: survey.to,
      // Opened anew at this step: the survey asked for is one newer than the one that is doubted.
      survey: {
        kind: survey.kind,
        rail: survey.rail,
        phase: survey.phase,
        to: survey.to,
        stations_mm: survey.stations_mm,
        after: survey.n,
      },
      minutes: [10, 25],
    },
  ];
};
