import { readingKey } from '../../build/fold.ts';
import type { RailName } from '../../ramp/design.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import type { Fills, Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { worstLaid } from '../slit-errors.ts';
import { sortOffers } from '../sort-offers.ts';
import { BEND_LIMIT } from './limits.ts';
import { bendForeseen, KEYS, topsOf } from './rail-pull.ts';

/** What a narrow bead saves, and a full one adds, of the pull still to come, as a share (common practice). */
const BEAD = 0.15;
/** Minutes more for beads laid so, and to stop half way, cool and read (common practice). */
const BEAD_MINUTES = 15;
const STOP_MINUTES = 45;

/** The even tops are laid as was chosen for them. */
export type TopsWords = 'tops-even' | 'tops-even-narrow' | 'tops-even-full' | 'tops-even-half';

const WORDS: Readonly<Record<string, TopsWords>> = {
  'tops-narrow': 'tops-even-narrow',
  'tops-full': 'tops-even-full',
  'tops-stop-half': 'tops-even-half',
};

export const topsWords = (s: Situation, rail: RailName): TopsWords => {
  const chosen = s.build.chosen.filter(c => c.finding.startsWith(`tops-off@${rail}:`)).at(-1);
  return (chosen === undefined ? undefined : WORDS[chosen.remedy]) ?? 'tops-even';
};

const findingFor = (s: Situation, plan: RailPlan): Finding | null => {
  const read = s.build.readings.get(readingKey(KEYS.readTops(plan.rail), 'bent'));
  // A rail that is read cold has its own reading and its own findings.
  if (read === undefined || s.build.readings.has(readingKey(KEYS.bend(plan.rail), 'bent'))) return null;
  const limit = BEND_LIMIT[s.ramp.design.tolerance];
  const foreseen = bendForeseen(s, plan).likely;
  const off = foreseen - plan.turn_rad;
  if (Math.abs(off) <= limit) return null;
  const toCome = foreseen - read.value;
  const after = (v: number): NonNullable<Offer['after']> => ({
    v: Math.abs(v),
    as: 'angle',
    within: Math.abs(v) <= limit,
  });
  const { even } = topsOf(plan);
  const fills: Fills = {
    rail: plan.rail,
    left: even.length,
    off: { v: Math.abs(off), as: 'angle' },
    read: { v: read.value, as: 'angle' },
    foreseen: { v: foreseen, as: 'angle' },
    wanted: { v: plan.turn_rad, as: 'angle' },
    'to-come': { v: toCome, as: 'angle' },
  };
  const frozen = { rail: plan.rail, off_rad: off, to_come_rad: toCome };
  const over = off > 0;
  const offers: readonly Offer[] = [
    {
      remedy: over ? 'tops-narrow' : 'tops-full',
      fills,
      minutes: BEAD_MINUTES,
      plan: frozen,
      after: after(over ? off - BEAD * toCome : off + BEAD * toCome),
    },
    { remedy: 'tops-stop-half', fills, minutes: STOP_MINUTES, plan: frozen },
    { remedy: 'leave-tops', fills, minutes: 0, plan: frozen, after: after(off) },
  ];
  return {
    key: `tops-off@${plan.rail}:${read.entry}`,
    stage: 'weld',
    severity: 'fix',
    words: over ? 'tops-over' : 'tops-under',
    fills,
    tall: { v: off, as: 'angle', sign: true },
    worst_mm: worstLaid(
      plan,
      plan.slits.map(() => off / plan.slits.length),
    ),
    limit: { v: limit, as: 'angle' },
    offers: sortOffers(offers),
  };
};

/** Rails whose bend with the odd tops in foretells that they come out bent too much or too little. */
export const topsFindings = (s: Situation): readonly Finding[] =>
  [...s.ramp.plans.values()].map(plan => findingFor(s, plan)).filter(f => f !== null);
