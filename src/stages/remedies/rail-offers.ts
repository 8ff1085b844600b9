import { AIM } from '../rail-findings/limits.ts';
import type { Offer } from '../sheet.ts';
import { sortOffers } from '../sort-offers.ts';
import { offerAddSlit } from './add-slit.ts';
import { type Clamping, offerClampAndBrace } from './clamp-and-brace.ts';
import { offerCloseSlit } from './close-slit.ts';
import { offerGauge } from './gauge-flats.ts';
import { offerLeave } from './leave.ts';
import { type Matching, offerMatchRail } from './match-rail.ts';
import { offerPackers } from './packers.ts';
import { offerReCut } from './re-cut.ts';
import { offerReLay } from './re-lay.ts';
import { offerReRoll } from './re-roll.ts';
import { offerCheck, offerReadAgain } from './read-again.ts';
import { type RailCase, within } from './remedy.ts';
import { offerStartAgain } from './start-again.ts';

export type Ways = Readonly<{ clamping: Clamping | null; matching: Matching | null }>;

/**
 * What can be done about a rail that lies off its line, in the limit first, then least minutes. While it is still being
 * worked out: what needs no working out.
 * @param ways what pulling it to its line, and making the one other rail match it, have been asked
 */
export const railOffers = (c: RailCase, ways: Ways): readonly Offer[] => {
  const doubted = c.answer?.measure_again === true;
  const always = [
    ...offerReadAgain(c),
    ...offerGauge(c),
    ...offerPackers(c),
    ...offerLeave(c),
    ...(doubted ? offerCheck(c, around(c)) : offerReLay(c)),
  ];
  if (c.answer === null && c.r.plan.slits.length > 0) return sortOffers(always);
  const slit = doubted ? [] : slitOffers(c);
  // A rail that is good when laid well is not forced, matched or begun again.
  const shape =
    doubted || within(c.best_mm, c.limit_mm)
      ? []
      : [
          ...offerClampAndBrace(c, ways.clamping),
          ...offerMatchRail(c, ways.matching, () => c.best_mm),
          ...offerStartAgain(c),
          ...offerReRoll(c),
        ];
  return sortOffers([...always, ...slit, ...shape]);
};

/** The station that is not believed, and those beside it; the ends and the middle where the doubt is not about one. */
const around = ({ r, answer }: RailCase): readonly number[] => {
  const last = r.numbers.length - 1;
  const at = answer?.doubted_station ?? null;
  const picked = at === null ? [0, Math.floor(last / 2), last] : [at - 2, at - 1, at];
  return picked.filter(k => k >= 0 && k <= last).map(k => r.numbers[k] ?? k + 1);
};

/** Slits turned, closed or added. Nothing is cut by readings that are to be taken again, nor in a rail that is good already. */
const slitOffers = (c: RailCase): readonly Offer[] => {
  const missed = offerCloseSlit(c);
  if (missed.length > 0) return missed;
  return within(c.best_mm, AIM * c.limit_mm) ? [] : [...offerReCut(c), ...offerAddSlit(c)];
};
