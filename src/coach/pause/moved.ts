import { readStations } from '../../build/facts.ts';
import { readingKey } from '../../build/fold.ts';
import { offsetScene } from '../../stages/offset-scene.ts';
import { limitsOf } from '../../stages/rail-findings/limits.ts';
import type { Fill, Finding, Offer } from '../../stages/sheet.ts';
import type { Situation } from '../../stages/situation.ts';
import { type Check, movedKey, OLD_COUNTS } from './checks.ts';
import { halfMoved } from './half-moved.ts';
import type { Again } from './open.ts';

/** Two readings of one thing by one hand agree to this: more has moved (common practice). mm, rad, share of a force. */
const ALIKE = { length: 1.5, thickness: 0.1, angle: (0.5 * Math.PI) / 180, force: 0.05 } as const;

type Change = Readonly<{ ask: Again; now: number; by: number; entry: string; alike: number }>;

const alikeOf = (ask: Again): number => {
  switch (ask.as) {
    case 'force':
      return ALIKE.force * ask.was;
    case 'angle':
    case 'thickness':
      return ALIKE[ask.as];
    default:
      return ALIKE.length;
  }
};

/** What was read again, each number against the one before the pause; null while one is missing. */
const changesOf = (s: Situation, check: Check): readonly Change[] | null => {
  const changes: Change[] = [];
  for (const ask of check.asks) {
    const reading = s.build.readings.get(readingKey(check.key, ask.ask));
    if (reading === undefined) return null;
    const alike = alikeOf(ask);
    changes.push({ ask, now: reading.value, by: reading.value - ask.was, entry: reading.entry, alike });
  }
  return changes;
};

/** The change that is largest for what it is. */
const most = (changes: readonly Change[]): Change | null =>
  changes.reduce<Change | null>(
    (best, c) => (best === null || Math.abs(c.by) / c.alike > Math.abs(best.by) / best.alike ? c : best),
    null,
  );

const signed = (v: number): Fill => ({ v, as: 'length', sign: true });
const length = (v: number): Fill => ({ v, as: 'length' });

/** A new choice for each new reading: what was decided on an older one says nothing of this one. */
const keyFor = (check: Check, changes: readonly Change[]): string =>
  `${movedKey(check.key)}:${changes.at(-1)?.entry ?? ''}`;

/**
 * A rail that does not read as it did. Three stations tell a rail that lies elsewhere, a shift and a turn, from one that is bent:
 * what the middle moved beside the two ends is bend [derived].
 */
const railMoved = (s: Situation, check: Check, changes: readonly Change[]): Finding => {
  const { survey } = check;
  const { stations_mm } = survey === undefined ? { stations_mm: [] } : readStations(survey);
  const at = [0, Math.round((stations_mm.length - 1) / 2), stations_mm.length - 1].map(
    k => stations_mm[k] ?? 0,
  );
  const [a = 0, m = 0, z = 1] = at;
  const by = changes.map(c => c.by);
  const [entry = 0, middle = 0, lip = 0] = by;
  const share = z > a ? (m - a) / (z - a) : 0.5;
  const bent_mm = middle - (entry + (lip - entry) * share);
  const worst = most(changes);
  const worst_mm = Math.abs(worst?.by ?? 0);
  const limit_mm = limitsOf(s).smooth;
  const bent = Math.abs(bent_mm) > ALIKE.length;
  const rail = check.rail ?? '';
  const last = survey?.readings.length ?? 1;
  const fills = {
    rail,
    days: check.pause.days,
    entry: signed(entry),
    middle: signed(middle),
    lip: signed(lip),
    bent: length(Math.abs(bent_mm)),
    line: survey?.to ?? '',
    alike: length(ALIKE.length),
    stations: `1–${last}`,
  } as const;
  const plan = { rail, survey: survey?.id ?? '', phase: survey?.phase ?? '' };
  const after = (v: number) => ({ v, as: 'length', within: v <= limit_mm }) as const;
  const offers: readonly Offer[] = [
    { remedy: 'read-again', fills, minutes: Math.round(5 + last / 2), plan: { ...plan, stations: [] } },
    {
      remedy: 'pause-lay-again',
      fills,
      minutes: 10,
      after: after(Math.abs(bent_mm)),
      // These three readings make room for the next ones.
      plan: { ...plan, replaces: changes.map(c => c.entry) },
    },
    { remedy: 'pause-leave', fills, minutes: 0, after: after(worst_mm), plan },
  ];
  const railPlan = s.ramp.plans.get(rail);
  return {
    key: keyFor(check, changes),
    stage: check.stage,
    severity: worst_mm > limit_mm ? 'fix' : 'watch',
    words: bent ? 'pause-rail-bent' : 'pause-rail-lies',
    fills,
    tall: { v: bent ? Math.abs(bent_mm) : worst_mm, as: 'length' },
    worst_mm,
    limit: { v: limit_mm, as: 'length' },
    offers: bent ? offers : [offers[1], offers[0], offers[2]].flatMap(o => o ?? []),
    ...(railPlan === undefined || survey === undefined
      ? {}
      : {
          scene: offsetScene(
            railPlan,
            survey.to,
            changes.map((c, k) => ({ station_mm: at[k] ?? 0, offset_mm: c.now })),
            null,
          ),
        }),
  };
};

/** Any other number that does not read as it did: it counts from here on, unless the person says otherwise. */
const numberMoved = (check: Check, changes: readonly Change[], worst: Change): Finding => {
  const as = worst.ask.as;
  const value = (v: number): Fill => ({ v, as });
  const fills = {
    rail: check.rail ?? '',
    days: check.pause.days,
    what: WHAT[check.name] ?? check.name,
    was: value(worst.ask.was),
    now: value(worst.now),
    by: value(Math.abs(worst.by)),
    alike: value(worst.alike),
  };
  const plan = check.rail === undefined ? {} : { rail: check.rail };
  const replaces = changes.map(c => c.entry);
  return {
    key: keyFor(check, changes),
    stage: check.stage,
    severity: 'watch',
    words: check.name === 'clamps' ? 'pause-slipped' : 'pause-moved',
    fills,
    tall: { v: Math.abs(worst.by), as },
    offers: [
      { remedy: 'pause-read-again', fills, minutes: 5, plan: { ...plan, replaces } },
      { remedy: 'pause-new-counts', fills, minutes: 0, plan },
      { remedy: OLD_COUNTS, fills, minutes: 0, plan: { ...plan, replaces } },
    ],
  };
};

/** What was measured, in words of the trade. */
const WHAT: Readonly<Record<string, string>> = {
  bend: 'the bend so far',
  kerf: 'the narrowest kerf',
  clamps: 'a clamp',
  diagonals: 'a diagonal',
  anchors: 'an anchor',
};

/** What moved over a pause, by what was read again; null where all reads as it did, or not all is read yet. */
export const movedFinding = (s: Situation, check: Check): Finding | null => {
  const changes = changesOf(s, check);
  const worst = changes === null ? null : most(changes);
  if (changes === null || worst === null || Math.abs(worst.by) <= worst.alike) return null;
  if (check.name === 'offsets') return railMoved(s, check, changes);
  const entries = changes.map(c => c.entry);
  return check.name === 'half-read'
    ? halfMoved(s, check, keyFor(check, changes), worst, entries)
    : numberMoved(check, changes, worst);
};
