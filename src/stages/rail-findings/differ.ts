import type { Survey } from '../../build/fold.ts';
import { mismatch } from '../../reckon/rail/mismatch.ts';
import { fitRigid, rigidColumns } from '../../reckon/rail/rigid.ts';
import { type Matching, matchingOf, offerMatchRail } from '../remedies/match-rail.ts';
import { offerPairPackers } from '../remedies/pair-packers.ts';
import { offerReadAgain } from '../remedies/read-again.ts';
import { angle, length, offer, type RailCase, signed } from '../remedies/remedy.ts';
import type { Fills, Finding, Offer, Stage } from '../sheet.ts';
import { askKey, type Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';
import { limitsOf, STEP } from './limits.ts';
import { NOTHING_SAID, type Said } from './off-line.ts';
import { between, largest, onBackWall, type RailReading, stationsOnWall } from './reading.ts';

/** One base rail packed up, or one rail shifted, so that the two stand alike (common practice). */
const LEVEL_MINUTES = 12;
/** Stations that two rails share are within this of each other; where they are not, the other rail is read between its stations. */
const FEWEST = 3;

const LATER: readonly Survey['phase'][] = ['cold', 'braced', 'unclamped'];

/** The two can be compared: both tacked, or both welded and cold. */
const comparable = (a: RailReading, b: RailReading): boolean =>
  (a.survey.phase === 'tacked' && b.survey.phase === 'tacked') ||
  (LATER.includes(a.survey.phase) && LATER.includes(b.survey.phase));

/** Middle of one rail to middle of the other, mm. */
const apartOf = (s: Situation, a: RailReading, b: RailReading): number => {
  const { width, tube } = s.ramp.design;
  const bays = Math.max(1, s.ramp.rails.length - 1);
  return ((width - tube.width_mm) / bays) * Math.max(1, Math.abs(a.index - b.index));
};

type Pair = Readonly<{
  /** First rail less second at the first's stations, as they lie; and with one moved to the other as well as it goes. */
  lies_mm: readonly number[];
  left_mm: readonly number[];
  stations_mm: readonly number[];
  numbers: readonly number[];
}>;

const pairOf = (a: RailReading, b: RailReading): Pair | null => {
  const onB = stationsOnWall(b);
  const [from, to] = [(onB[0] ?? 0) - 1, (onB.at(-1) ?? 0) + 1];
  const shared = a.stations_mm.flatMap((station, j) => {
    const at = onBackWall(a.plan, a.line, station);
    if (at < from || at > to) return [];
    return [
      { station, number: a.numbers[j] ?? j + 1, apart: (a.lies_mm[j] ?? 0) - between(onB, b.lies_mm, at) },
    ];
  });
  if (shared.length < FEWEST) return null;
  const stations_mm = shared.map(x => x.station);
  const lies_mm = shared.map(x => x.apart);
  const { left_mm } = fitRigid(rigidColumns(a.line, stations_mm), lies_mm);
  return { lies_mm, left_mm, stations_mm, numbers: shared.map(x => x.number) };
};

const offers = (
  c: RailCase,
  other: RailReading,
  matching: Matching | null,
  pair: Pair,
  worst: { lies: number; left: number; step: number },
): readonly Offer[] => {
  // The rail farther from its line is the one to turn slits in: `c.r` is the other, that stays.
  const leftAfter = Math.max(worst.left, 0);
  const level = worst.lies - worst.left;
  const shift = -(pair.lies_mm.reduce((a, v) => a + v, 0) / pair.lies_mm.length);
  return sortOffers([
    ...offerMatchRail(c, matching, pair_mm => pair_mm),
    ...offerPairPackers(c, other, worst.lies, worst.step),
    ...(level < STEP / 2
      ? []
      : [
          offer(
            c,
            'level-pair',
            LEVEL_MINUTES,
            leftAfter,
            { other: other.rail, by: signed(shift) },
            { pair: `${c.r.rail}-${other.rail}`, by_mm: shift },
          ),
        ]),
    ...offerReadAgain({ ...c, answer: null }).map(o => ({
      ...o,
      after: { v: worst.lies, as: 'length' as const, within: worst.lies <= c.limit_mm },
    })),
    offer(c, 'leave-differ', 0, worst.lies, { other: other.rail }, { pair: `${c.r.rail}-${other.rail}` }),
  ]);
};

/**
 * Two rails held against each other: what a deck feels is where they differ, and most where the difference changes from one flat
 * to the next. A difference that stays the same all along is a matter of level.
 */
export const railsDiffer = (s: Situation, a: RailReading, b: RailReading, stage: Stage): Said => {
  const pair = comparable(a, b) ? pairOf(a, b) : null;
  if (pair === null) return NOTHING_SAID;
  const { mismatch: limit } = limitsOf(s);
  const seen = mismatch(
    pair.stations_mm.map((station_mm, j) => ({ station_mm, offset_mm: pair.left_mm[j] ?? 0 })),
    pair.stations_mm.map(station_mm => ({ station_mm, offset_mm: 0 })),
    apartOf(s, a, b),
  );
  if (seen === null) return NOTHING_SAID;
  const step = stepPerFlat(a, pair);
  const worst = { lies: largest(pair.lies_mm), left: Math.abs(seen.worst_mm), step: Math.abs(step.mm) };
  const rough = worst.step > STEP + a.survey.read_to_mm + b.survey.read_to_mm;
  if (worst.lies <= limit && !rough) return NOTHING_SAID;

  const [kept, turned] = a.fit.worst_mm <= b.fit.worst_mm ? [a, b] : [b, a];
  const c: RailCase = { s, r: kept, answer: null, limit_mm: limit, best_mm: kept.fit.worst_mm };
  const matching = worst.left > limit ? matchingOf(s, turned, kept) : null;
  const asked = matching !== null && !s.answers.has(askKey(matching.ask)) ? [matching.ask] : [];
  const at = pair.stations_mm.indexOf(seen.worst_at_mm);
  const fills: Fills = {
    rail: a.rail,
    other: b.rail,
    turned: turned.rail,
    worst: length(worst.left),
    lies: length(worst.lies),
    station: pair.numbers[at] ?? at + 1,
    step: length(worst.step),
    'step-at': step.number,
    roll: angle(Math.abs(seen.stations[at]?.roll_rad ?? 0)),
    limit: length(limit),
  };
  const words = worst.left > limit ? 'rails-differ' : worst.lies > limit ? 'rails-level' : 'rails-step';
  const finding: Finding = {
    key: `rails-differ@${a.rail}-${b.rail}#${a.survey.id}.${b.survey.id}`,
    stage,
    severity: words === 'rails-step' ? 'watch' : 'fix',
    words,
    fills,
    tall: {
      v: words === 'rails-step' ? worst.step : words === 'rails-level' ? worst.lies : worst.left,
      as: 'length',
    },
    worst_mm: worst.lies,
    limit: { v: words === 'rails-step' ? STEP : limit, as: 'length' },
    offers: offers(c, turned, matching, pair, worst),
    ...(asked.length > 0 ? { pending: true as const } : {}),
  };
  return { findings: [finding], asked };
};

/** Greatest change of the difference from one flat to the next, and the station it leads to. */
const stepPerFlat = (a: RailReading, pair: Pair): { mm: number; number: number } => {
  let most = { mm: 0, number: pair.numbers[0] ?? 1 };
  for (let j = 1; j < pair.left_mm.length; j++) {
    const apart = (pair.stations_mm[j] ?? 0) - (pair.stations_mm[j - 1] ?? 0);
    const mm =
      ((pair.left_mm[j] ?? 0) - (pair.left_mm[j - 1] ?? 0)) *
      Math.min(1, a.plan.pitch_mm / Math.max(apart, 1e-9));
    if (Math.abs(mm) > Math.abs(most.mm)) most = { mm, number: pair.numbers[j] ?? j + 1 };
  }
  return most;
};
