import { buildSaid, type MendsQuestion } from '../plan/mends-asked.ts';
import { mendsFor } from '../plan/ride-offers.ts';
import { strengthMends } from '../plan/strength-ways.ts';
import type { Offer } from '../sheet.ts';

/** The single changes that mend a broken limit, each tried on the build that was told. */
export const mendsAnswer = async (q: MendsQuestion): Promise<readonly Offer[]> => {
  const s = buildSaid(q.mends);
  if (s === null) return [];
  return q.frame === undefined ? mendsFor(s, q.code) : strengthMends(s, q.mends.proven, q.frame);
};
