import { AIM } from '../rail-findings/limits.ts';
import type { RailReading } from '../rail-findings/reading.ts';
import type { Offer } from '../sheet.ts';
import { sortOffers } from '../sort-offers.ts';
import { offerAddSlit } from './add-slit.ts';
import { offerClampAndBrace } from './clamp-and-brace.ts';
import { offerCloseSlit } from './close-slit.ts';
import { offerLeave } from './leave.ts';
import { offerMatchRail } from './match-rail.ts';
import { offerPackers } from './packers.ts';
import { offerReCut } from './re-cut.ts';
import { offerReLay } from './re-lay.ts';
import { offerReRoll } from './re-roll.ts';
import { offerReadAgain } from './read-again.ts';
import { type RailCase, within } from './remedy.ts';
import { offerStartAgain } from './start-again.ts';

/**
 * What can be done about a rail that lies off its line, in the limit first, then least minutes. While it is still being
 * worked out: what needs no working out.
 * @param other the one other rail that could be made to match, where there is one
 */
export const railOffers = (c: RailCase, other: RailReading | null): readonly Offer[] => {
  const doubted = c.answer?.measure_again === true;
  const always = [
    ...offerReadAgain(c),
    ...offerPackers(c),
    ...offerLeave(c),
    ...(doubted ? [] : offerReLay(c)),
  ];
  if (c.answer === null && c.r.plan.slits.length > 0) return sortOffers(always);
  const slit = doubted ? [] : slitOffers(c);
  // A rail that is good when laid well is not forced, matched or begun again.
  const shape =
    doubted || within(c.best_mm, c.limit_mm)
      ? []
      : [
          ...offerClampAndBrace(c),
          ...(other === null ? [] : offerMatchRail(c, other, () => c.best_mm)),
          ...offerStartAgain(c),
          ...offerReRoll(c),
        ];
  return sortOffers([...always, ...slit, ...shape]);
};

/** Slits turned, closed or added. Nothing is cut by readings that are to be taken again, nor in a rail that is good already. */
const slitOffers = (c: RailCase): readonly Offer[] => {
  const missed = offerCloseSlit(c);
  if (missed.length > 0) return missed;
  return within(c.best_mm, AIM * c.limit_mm) ? [] : [...offerReCut(c), ...offerAddSlit(c)];
};
