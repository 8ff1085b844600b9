import type { Chosen } from '../../build/fold.ts';
import { offerLeave } from '../remedies/leave.ts';
import { offerPackers } from '../remedies/packers.ts';
import { offerCheck, offerReadAgain } from '../remedies/read-again.ts';
import { length, type RailCase } from '../remedies/remedy.ts';
import type { Finding, Stage } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';
import { limitsOf } from './limits.ts';
import type { RailReading } from './reading.ts';

/** Remedies whose outcome the next survey of the rail tells. A matched pair is told by its mismatch instead. */
const TOLD = new Set([
  're-cut',
  're-lay',
  'close-slit',
  'add-slit',
  'start-again',
  're-roll',
  'clamp-and-brace',
  'over-correct',
]);

/** The remedy that this survey is the first to tell of, or null. */
const toldBy = (s: Situation, r: RailReading): Chosen | null => {
  const last = s.build.chosen
    .filter(c => c.n < r.survey.n && TOLD.has(c.remedy) && c.plan.rail === r.rail)
    .at(-1);
  if (last === undefined || last.predicted_mm === undefined) return null;
  const between = s.build.surveys.some(
    v => v.closed && v.kind === 'curve' && v.rail === r.rail && v.n > last.n && v.n < r.survey.n,
  );
  return between ? null : last;
};

/** Predicted and come out, side by side, once the rail was read after a remedy. */
export const cameOut = (s: Situation, r: RailReading, stage: Stage): Finding | null => {
  const chosen = toldBy(s, r);
  if (chosen === null) return null;
  const limit_mm = limitsOf(s).smooth;
  const c: RailCase = { s, r, answer: null, limit_mm, best_mm: r.fit.worst_mm };
  const came = r.fit.worst_mm;
  const ends = [r.numbers[0], r.numbers[Math.floor(r.numbers.length / 2)], r.numbers.at(-1)].map(n => n ?? 1);
  return {
    key: `rail-came-out@${r.rail}#${r.survey.id}`,
    stage,
    severity: 'watch',
    words: 'rail-came-out',
    fills: {
      rail: r.rail,
      predicted: length(chosen.predicted_mm ?? 0),
      came: length(came),
      lies: length(r.worst_mm),
      limit: length(limit_mm),
    },
    tall: { v: came, as: 'length' },
    worst_mm: came,
    limit: { v: limit_mm, as: 'length' },
    offers: sortOffers([...offerLeave(c), ...offerCheck(c, ends), ...offerReadAgain(c), ...offerPackers(c)]),
  };
};
