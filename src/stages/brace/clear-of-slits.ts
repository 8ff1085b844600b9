import type { RailName } from '../../ramp/design.ts';
import { CLEAR_OF_SLIT, type Member } from '../../ramp/members.ts';
import type { Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { standName, uprightsOf } from './side.ts';

/** Clear distance from an upright's edges to the nearest slit of its rail, along the back wall, mm; null where there are no slits. */
export const clearOf = (s: Situation, m: Member): number | null => {
  const slits = s.ramp.plans.get(m.rail ?? '')?.slits ?? [];
  if (slits.length === 0 || m.along_mm === undefined) return null;
  const half = m.tube.depth_mm / 2 / Math.cos(m.ends.second_rad);
  return Math.min(...slits.map(slit => Math.abs(slit.at_mm - (m.along_mm ?? 0)))) - half;
};

const leastClear = (s: Situation, rail: RailName): { m: Member; clear_mm: number } | null =>
  uprightsOf(s, rail)
    .flatMap(m => {
      const clear_mm = clearOf(s, m);
      return clear_mm === null ? [] : [{ m, clear_mm }];
    })
    .sort((a, b) => a.clear_mm - b.clear_mm)[0] ?? null;

/** Marked slits stand where they stand; an upright that comes too near one is said before it is cut. */
export const nearSlitFindings = (s: Situation): readonly Finding[] =>
  s.ramp.rails.flatMap((rail): Finding[] => {
    const least = leastClear(s, rail);
    if (least === null || least.clear_mm >= CLEAR_OF_SLIT) return [];
    const { m, clear_mm } = least;
    const fills = {
      rail,
      name: standName(m),
      clear: { v: Math.max(0, clear_mm), as: 'length' },
      wanted: { v: CLEAR_OF_SLIT, as: 'length' },
      short: { v: CLEAR_OF_SLIT - clear_mm, as: 'length' },
    } as const;
    const plan = { rail, need: m.need, clear_mm };
    const offers: readonly Offer[] = [
      { remedy: 'weld-away-from-slit', fills, minutes: 5, plan },
      { remedy: 'saddle-plate', fills, minutes: 25, plan },
      { remedy: 'leave-near-slit', fills, minutes: 0, plan },
    ];
    return [
      {
        key: `near-slit@${rail}`,
        stage: 'brace',
        severity: 'watch',
        words: 'near-slit',
        fills,
        tall: { v: Math.max(0, clear_mm), as: 'length' },
        worst_mm: CLEAR_OF_SLIT - clear_mm,
        limit: { v: CLEAR_OF_SLIT, as: 'length' },
        offers,
      },
    ];
  });
