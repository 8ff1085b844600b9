import { type Offering, offer } from './remedy.ts';

/** As it lies. Always offered. */
export const offerLeave: Offering = c => [offer(c, 'leave', 0, c.r.worst_mm, {}, {})];
