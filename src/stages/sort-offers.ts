import type { Offer } from './sheet.ts';

/** Whether a remedy brings the thing within its limit; one that predicts nothing does, unless it only leaves it. */
const mends = (offer: Offer): boolean => offer.after?.within ?? !offer.remedy.startsWith('leave');

/** Remedies best first: within the limit before over it, then least minutes. */
export const sortOffers = (offers: readonly Offer[]): readonly Offer[] =>
  [...offers].sort((a, b) => Number(mends(b)) - Number(mends(a)) || a.minutes - b.minutes);
