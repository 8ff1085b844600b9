import type { Outcome } from '../../quantity/outcome.ts';
import type { SpringBackNow } from '../heavy/spring-back-answer.ts';
import { between, largest, type RailReading, stationsOnWall } from '../rail-findings/reading.ts';
import type { Offer } from '../sheet.ts';
import { type Ask, answer, type Situation } from '../situation.ts';
import { type Clamped, clampedRail } from './forced-rail.ts';
import {
  frozenNumber,
  frozenNumbers,
  frozenRows,
  type Injecting,
  length,
  offer,
  type RailCase,
  railOf,
} from './remedy.ts';
import { springBackAsk } from './spring-back.ts';
import { beforeUprights } from './turns.ts';

/** Clamping to the line, holding the base, reading again; the uprights themselves go in anyway (common practice). */
const MINUTES = 95;
/** Less than this is not forced, mm. */
const WORTH = 1;
/** What one 5 × 50 mm screw in 18 mm ply holds, N, and the most a hand clamp against a pair of blocks is asked for, N (common practice). */
const SCREW = 400;
const MOST = 3000;
/** Nearer than this no hand frame is told, mm. */
const TAPE = 0.5;
/** A reckoned spring-back is good to a quarter of itself on a hand-made frame (common practice). */
const MODEL_SHARE = 0.25;

/** All uprights and diagonals of the side welded, base rail let go too. */
const clampedOf = (s: Situation, r: RailReading): Clamped | null =>
  r.fit.worst_mm < WORTH || r.survey.phase === 'braced' || r.survey.phase === 'unclamped'
    ? null
    : clampedRail(
        s,
        r.rail,
        along => between(stationsOnWall(r), r.fit.left_mm, along),
        () => 1,
      );

/** A rail pulled to its line, and the question of what comes back. */
export type Clamping = Readonly<{ clamped: Clamped; ask: Ask }>;

export const clampingOf = (s: Situation, r: RailReading): Clamping | null => {
  const clamped = clampedOf(s, r);
  return clamped === null ? null : { clamped, ask: springBackAsk(clamped) };
};

/** Farther than this past its line by less is not worth telling from to its line, mm. */
const TOLD = 0.5;
/** A rail that is forced is kept elastic: least yield of structural tube, MPa (S235, EN 10219-1 table A.3 [memory]). */
const YIELD_MPa = 235;

/** Pulled to its line, or past it by what will come back; braced while it is held, then let go: what springs back stays. */
export const offerClampAndBrace = (c: RailCase, clamping: Clamping | null): readonly Offer[] => {
  if (clamping === null) return [];
  const { clamped, ask } = clamping;
  const known = answer<Outcome<SpringBackNow>>(c.s.answers, ask);
  if (known.is === 'pending' || !known.value.ok) return [];
  const { now_mm, clamps, over, clamped_MPa } = known.value.value;
  const pullsOf = (times: number) =>
    clamped.clamps.map((at, k) => ({
      ...at,
      forced_mm: times * at.forced_mm,
      force_N: times * (clamps[k]?.force_N ?? 0),
    }));
  const forced = (remedy: string, times: number, back_mm: number): readonly Offer[] => {
    const pulls = pullsOf(times);
    const hardest = largest(pulls.map(p => p.force_N));
    if (hardest > MOST || times * clamped_MPa > YIELD_MPa) return [];
    return [
      offer(
        c,
        remedy,
        MINUTES,
        // What was counted on to come back may not: the model's share is taken of that.
        Math.max(TAPE, back_mm + MODEL_SHARE * now_mm),
        {
          force: { v: hardest, as: 'force' },
          screws: Math.ceil(hardest / SCREW),
          back: length(now_mm),
          past: length((times - 1) * c.r.fit.worst_mm),
          count: pulls.length,
          pull: length(largest(pulls.map(p => p.forced_mm))),
        },
        {
          clamps: pulls,
          back_mm: now_mm,
          forced_mm: c.r.fit.worst_mm,
          stations_mm: c.r.survey.stations_mm,
          past_mm: (times - 1) * c.r.fit.worst_mm,
        },
      ),
    ];
  };
  const worth = now_mm - over.left_mm >= TOLD;
  return [
    ...forced('clamp-and-brace', 1, now_mm),
    ...(worth ? forced('over-correct', over.times, over.left_mm) : []),
  ];
};

type Pull = Readonly<{ name: string; along_mm: number; forced_mm: number; force_N: number }>;

/** Clamp it, then read it as it is held: the uprights are cut to the rail that stands there. Slits not welded yet ask again when cold. */
export const clampSteps: Injecting = (s, chosen) => {
  const on = railOf(s, chosen);
  const clamps = frozenRows<Pull>(chosen, 'clamps', ['along_mm', 'forced_mm', 'force_N']);
  if (on === null || clamps.length === 0 || chosen.plan.phase !== 'cold') return [];
  const key = `brace/clamp-to-line@${chosen.entry}`;
  const count = clamps.length;
  const hardest = largest(clamps.map(p => p.force_N));
  const fills = {
    rail: on.rail,
    count,
    force: { v: hardest, as: 'force' },
    screws: Math.ceil(hardest / SCREW),
    pull: length(largest(clamps.map(p => p.forced_mm))),
  } as const;
  return [
    {
      key,
      stage: 'brace',
      words: chosen.remedy === 'over-correct' ? 'clamp-past-line' : 'clamp-to-line',
      fills: { ...fills, past: length(frozenNumber(chosen, 'past_mm')) },
      turn: beforeUprights(on.index, 0),
      needs: [`weld/cold-survey@${on.rail}`],
      uses: [],
      line: 'finished line',
      items: clamps.map(p => ({
        key: `${key}#${p.name}`,
        name: p.name,
        value: length(p.along_mm),
        second: length(Math.abs(p.forced_mm)),
      })),
      cautions: ['clamp-force'],
      minutes: [count * 5, count * 9],
    },
    {
      key: `brace/clamped-survey@${chosen.entry}`,
      stage: 'brace',
      words: 'clamped-survey',
      fills,
      turn: beforeUprights(on.index, 1),
      needs: [key],
      uses: [],
      line: 'finished line',
      survey: {
        kind: 'curve',
        rail: on.rail,
        phase: 'braced',
        to: 'finished line',
        stations_mm: frozenNumbers(chosen, 'stations_mm'),
      },
      minutes: [10, 25],
    },
  ];
};
