import type { StepKey } from '../../build/fold.ts';
import { offsetScene } from '../offset-scene.ts';
import { clampingOf } from '../remedies/clamp-and-brace.ts';
import { matchingOf } from '../remedies/match-rail.ts';
import { railAsk, railKnown } from '../remedies/rail-ask.ts';
import { railOffers, type Ways } from '../remedies/rail-offers.ts';
import { length, type RailCase, signed } from '../remedies/remedy.ts';
import type { Finding, HeavyAsk, Stage } from '../sheet.ts';
import { askKey, type Situation } from '../situation.ts';
import { type CauseWords, causeWords } from './cause-words.ts';
import { limitsOf, STEP, WATCH } from './limits.ts';
import { farthest, offKey, type RailReading } from './reading.ts';
import { wrongEdge } from './wrong-edge.ts';

export type Said = Readonly<{ findings: readonly Finding[]; asked: readonly HeavyAsk[] }>;

export const NOTHING_SAID: Said = { findings: [], asked: [] };

/** Steps that wait until it is decided what to do with a rail of this phase. */
export const blockedBy = (r: RailReading): readonly StepKey[] => {
  switch (r.survey.phase) {
    case 'tacked':
      return [`weld/sides-first@${r.rail}`];
    case 'half-welded':
      return [`weld/sides-rest@${r.rail}`];
    case 'cold':
      return [`brace/uprights@${r.rail}`];
    default:
      return [];
  }
};

/** The number that counts while nothing is known of the cause, and for a rail without slits. */
const plainWords = (c: RailCase): CauseWords => ({
  words: c.r.plan.slits.length === 0 ? 'rail-rolled-off' : 'rail-off',
  fills: {},
  tall: { v: c.best_mm, as: 'length' },
});

const findingOf = (c: RailCase, words: CauseWords, ways: Ways, stage: Stage, pending: boolean): Finding => {
  const { r } = c;
  const fix = c.best_mm > c.limit_mm || r.worst_mm > c.limit_mm;
  const at = farthest(r.fit.left_mm);
  return {
    key: offKey(r),
    stage,
    severity: fix ? 'fix' : 'watch',
    words: words.words,
    fills: {
      rail: r.rail,
      best: length(c.best_mm),
      lies: length(r.worst_mm),
      station: r.numbers[at] ?? at + 1,
      'lies-at': r.numbers[farthest(r.lies_mm)] ?? 1,
      lip: signed(r.lies_mm.at(-1) ?? 0),
      step: length(r.step_mm),
      limit: length(c.limit_mm),
      depth: length(r.tube.depth_mm),
      line: r.survey.to,
      ...words.fills,
    },
    tall: words.tall,
    worst_mm: Math.max(c.best_mm, r.worst_mm),
    limit: { v: c.limit_mm, as: 'length' },
    offers: railOffers(c, ways),
    ...(fix ? { blocks: blockedBy(r) } : {}),
    ...(pending ? { pending: true as const } : {}),
    scene: offsetScene(
      r.plan,
      r.survey.to,
      r.stations_mm.map((station_mm, j) => ({ station_mm, offset_mm: r.offsets_mm[j] ?? null })),
      farthest(r.lies_mm),
    ),
  };
};

/**
 * A rail off its line: what happened to it, how sure that is, and what can be done. While the cause is being worked out the
 * raw numbers stand.
 * @param other the one other rail that could be made to match this one
 */
export const offLine = (s: Situation, r: RailReading, other: RailReading | null, stage: Stage): Said => {
  const limit_mm = limitsOf(s).smooth;
  const kinked = r.step_mm > STEP + r.survey.read_to_mm;
  if (r.worst_mm <= WATCH * limit_mm && !kinked) return NOTHING_SAID;
  const fix = r.worst_mm > limit_mm;
  const bent = r.fit.worst_mm > limit_mm;
  const ways: Ways = {
    clamping: bent ? clampingOf(s, r) : null,
    matching: bent && other !== null ? matchingOf(s, other, r) : null,
  };
  const own = railAsk(s, r);
  const asked = [own, ways.clamping?.ask, ways.matching?.ask]
    .filter(ask => ask !== null && ask !== undefined)
    .filter(ask => !s.answers.has(askKey(ask)));
  const told = own === null ? null : railKnown(s, own);
  if (told?.is !== 'known') {
    const c: RailCase = { s, r, answer: null, limit_mm, best_mm: r.fit.worst_mm };
    return { findings: [findingOf(c, plainWords(c), ways, stage, asked.length > 0)], asked };
  }
  const a = told.value;
  const c: RailCase = { s, r, answer: a, limit_mm, best_mm: a.worst_mm };
  if (a.cause === 'wrong edge') {
    const plain: RailCase = { ...c, answer: null };
    return { findings: [wrongEdge(plain, a.edge_mm, stage, blockedBy(r))], asked: [] };
  }
  const words = causeWords(r, a, limit_mm);
  if (words === null && !fix) return NOTHING_SAID;
  return { findings: [findingOf(c, words ?? plainWords(c), ways, stage, asked.length > 0)], asked };
};
