import { edgeCorrection } from '../../build/facts.ts';
import { flatSag } from '../../reckon/rail/forward.ts';
import { fitRigid, rigidColumns } from '../../reckon/rail/rigid.ts';
import { type Offering, offer, signed } from './remedy.ts';

/** Nothing is touched and nothing is read: the numbers are taken for what they are. */
const MINUTES = 1;

/** What a survey would say with so much taken off each reading: worst as it then lies, the rail laid at its best, mm. */
export const worstWithout = (c: Parameters<Offering>[0], edge_mm: number): number => {
  const { deviations_mm, stations_mm, line } = c.r;
  const lies = deviations_mm.map((o, j) => o - edge_mm - flatSag(line, stations_mm[j] ?? 0));
  return fitRigid(rigidColumns(line, stations_mm), lies).worst_mm;
};

/** Count the readings less the size of the edge they were read to. */
export const offerOtherEdge = (c: Parameters<Offering>[0], edge_mm: number): ReturnType<Offering> => [
  offer(
    c,
    'other-edge',
    MINUTES,
    worstWithout(c, edge_mm),
    { subtract: signed(edge_mm) },
    // Frozen as the whole that is to come off the readings, whatever was taken off before.
    { subtract_mm: edge_mm + edgeCorrection(c.s.build, c.r.survey.id) },
  ),
];
