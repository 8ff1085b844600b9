import { readingKey } from '../../build/fold.ts';
import type { RailName } from '../../ramp/design.ts';
import type { Fills, Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';
import { TWIST_LIMIT } from './limits.ts';

/** Minutes to break and set the tacks of a few slits again, and to clamp a rail flat (common practice). */
const AGAIN_MINUTES = 30;
const HELD_MINUTES = 15;
/** Share of a twist that comes back when a rail is welded held flat and let go (common practice: half of it, to be measured). */
const COMES_BACK = 0.5;
/** What setting tacks again brings a twist to, rad: a gauge's step at each end (exact). */
const GAUGE = (0.2 * Math.PI) / 180;

/** Twist of a tacked rail, rad: what the gauge read at the lip less what it read at the entry; null until both are read. */
export const twistOf = (s: Situation, rail: RailName): { rad: number; entry: string } | null => {
  const step = `tack/twist@${rail}`;
  const entry = s.build.readings.get(readingKey(step, 'entry'));
  const lip = s.build.readings.get(readingKey(step, 'lip'));
  if (entry === undefined || lip === undefined) return null;
  return { rad: lip.value - entry.value, entry: `${entry.entry}:${lip.entry}` };
};

/** A rail twisted from end to end before it is welded. */
export const twistFindings = (s: Situation): readonly Finding[] =>
  s.ramp.rails.flatMap((rail): Finding[] => {
    const twist = twistOf(s, rail);
    const limit = TWIST_LIMIT[s.ramp.design.tolerance];
    if (twist === null || Math.abs(twist.rad) <= limit) return [];
    const size = Math.abs(twist.rad);
    const after = (v: number): NonNullable<Offer['after']> => ({ v, as: 'angle', within: v <= limit });
    const rise = s.ramp.design.tube.width_mm * Math.sin(size);
    const fills: Fills = {
      rail,
      twist: { v: size, as: 'angle' },
      limit: { v: limit, as: 'angle' },
      rise: { v: rise, as: 'length' },
      half: { v: size * COMES_BACK, as: 'angle' },
    };
    const plan = { rail, twist_rad: twist.rad };
    const slit = s.ramp.design.route === 'slit';
    const offers: Offer[] = slit
      ? [
          {
            remedy: 'twist-tack-again',
            fills,
            minutes: AGAIN_MINUTES,
            plan,
            after: after(Math.min(size, GAUGE)),
          },
          { remedy: 'twist-weld-held', fills, minutes: HELD_MINUTES, plan, after: after(size * COMES_BACK) },
        ]
      : [
          { remedy: 'twist-send-back', fills, minutes: 60, plan, after: after(Math.min(size, limit)) },
          { remedy: 'twist-packers', fills, minutes: HELD_MINUTES, plan, after: after(size) },
        ];
    offers.push({ remedy: 'leave-rail-twist', fills, minutes: 0, plan, after: after(size) });
    return [
      {
        key: `twist@${rail}:${twist.entry}`,
        stage: 'tack',
        severity: 'fix',
        words: 'twist',
        fills,
        tall: { v: twist.rad, as: 'angle', sign: true },
        worst_mm: rise,
        limit: { v: limit, as: 'angle' },
        offers: sortOffers(offers),
      },
    ];
  });
