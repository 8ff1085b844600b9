import { readingKey } from '../../build/fold.ts';
import { feedCurrent } from '../../reckon/welding/feed-current.ts';
import { type HeatVerdict, heatInput, heatVerdict, SUITED_kJ_mm2 } from '../../reckon/welding/heat.ts';
import type { Process } from '../../reckon/welding/process.ts';
import { rodVolts } from '../../reckon/welding/rod-settings.ts';
import type { Situation } from '../situation.ts';
import { changedSince } from '../test-pieces.ts';
import { sameWall } from '../weld-walls.ts';
import { KINDS, machineOf, processOf } from './machine.ts';
import { once, onceAlone } from './once.ts';
import { PLACES, type Place, WALL_FIGURE, wallAt } from './places.ts';

/** Where a bead that was timed is written down; a later one has a key of its own. */
export const workedKey = (place: Place, round: number): string =>
  round === 1 ? `weld/worked-${place}` : `weld/worked-${place}:${round}`;

export const WIRE_ASKS = ['feed', 'volts', 'long', 'took'] as const;
export const ROD_ASKS = ['amps', 'long', 'took'] as const;
/** A wire whose feed no source ties to a current: what the machine shows of it is asked too. */
export const SHOWN_ASKS = ['feed', 'volts', 'shown', 'long', 'took'] as const;

/** A feed of any garage wire, m/min: whether a rule is known does not hang on it. */
const SOME_FEED = 3;

/** Whether the current of this wire is in no source: neither a feed nor its heat can be said before the machine shows it. */
export const currentUnknown = (process: Process, filler_mm: number | null): boolean =>
  process !== 'smaw' && filler_mm !== null && feedCurrent(process, filler_mm, SOME_FEED) === null;

/** A bead that was welded with a setting and timed. */
export type Worked = Readonly<{
  place: Place;
  round: number;
  key: string;
  /** The last of its readings, and when it was written down, ms. */
  entry: string;
  at_ms: number;
  process: Process;
  wall_mm: number;
  with: Readonly<Record<string, number>>;
  volts: number;
  /** null with a rod. */
  feed_m_min: number | null;
  /** null where no rule ties this wire's feed to a current and the machine shows none. */
  amps: number | null;
  travel_mm_s: number;
  /** Heat in the bead as a share of what suits the wall, and what it does to it; null where the current is not known. */
  heat: Readonly<{ share: number; verdict: HeatVerdict }> | null;
}>;

const workedIn = (s: Situation, place: Place, round: number): Worked | null => {
  const key = workedKey(place, round);
  const read = (ask: string) => s.build.readings.get(readingKey(key, ask));
  const took = read('took');
  const long = read('long');
  if (took === undefined || long === undefined || took.value <= 0) return null;
  const kind = KINDS.find(k => k === took.basis['weld-kind']);
  if (kind === undefined) return null;
  const process = processOf(kind);
  const feed = read('feed');
  const told = process === 'smaw' ? read('amps') : feed;
  const filler_mm = machineOf(s)?.filler_mm ?? null;
  if (told === undefined) return null;
  const shown = read('shown')?.value ?? 0;
  const ruled = filler_mm === null ? null : feedCurrent(process, filler_mm, told.value);
  const amps = process === 'smaw' ? told.value : (ruled ?? (shown > 0 ? shown : null));
  const volts = process === 'smaw' ? rodVolts(told.value) : read('volts')?.value;
  if (volts === undefined) return null;
  const travel_mm_s = long.value / took.value;
  const wall_mm = took.basis[WALL_FIGURE[place]] ?? wallAt(s, place);
  const put = amps === null ? null : heatInput({ volts, amps, travel_mm_s, process });
  const last = [took, long, told].reduce((a, b) => (b.at > a.at ? b : a));
  return {
    place,
    round,
    key,
    entry: last.entry,
    at_ms: Date.parse(last.at),
    process,
    wall_mm,
    with: took.basis,
    volts,
    feed_m_min: process === 'smaw' ? null : (feed?.value ?? null),
    amps,
    travel_mm_s,
    heat:
      put?.ok === true
        ? {
            share: put.value.kJ_mm / (SUITED_kJ_mm2 * wall_mm),
            verdict: heatVerdict(put.value.kJ_mm, wall_mm, process),
          }
        : null,
  };
};

/** Beads written down at a place, the last one last. */
export const workedAt = once((s: Situation, place: Place): readonly Worked[] => {
  const list: Worked[] = [];
  for (let round = 1; ; round++) {
    const found = workedIn(s, place, round);
    if (found === null) return list;
    list.push(found);
  }
});

/** A setting chosen about a bead that was too hot or too cold: what to set instead; null where it was left or none was. */
export type Instead = Readonly<{ feed_m_min: number | null; amps: number; travel_mm_s: number }>;

export const heatKey = (w: Worked): string => `bead-heat@${w.key}:${w.entry}`;

const numberOr = (v: unknown): number | null => (typeof v === 'number' && v > 0 ? v : null);

export const insteadOf = (s: Situation, w: Worked): Instead | null => {
  const plan = s.build.chosen.filter(c => c.finding === heatKey(w)).at(-1)?.plan;
  const amps = numberOr(plan?.amps);
  const travel_mm_s = numberOr(plan?.travel_mm_s);
  return plan === undefined || amps === null || travel_mm_s === null
    ? null
    : { feed_m_min: numberOr(plan.feed_m_min), amps, travel_mm_s };
};

/** The last bead that was welded with this wire and gas in a wall like the one of a place: what worked there, remembered. */
export const workedFor = once((s: Situation, place: Place): Worked | null => {
  const wall_mm = wallAt(s, place);
  return PLACES.flatMap(from => workedAt(s, from))
    .filter(
      w =>
        sameWall(w.wall_mm, wall_mm) &&
        changedSince(s, w.with, { figure: WALL_FIGURE[w.place], now_mm: w.wall_mm }) === null,
    )
    .reduce<Worked | null>((best, w) => (best === null || w.at_ms >= best.at_ms ? w : best), null);
});

/** How fast this hand was last seen to travel with this machine, mm/s, whatever the wall. */
export const handSeen = onceAlone(
  (s: Situation): number | undefined =>
    PLACES.flatMap(from => workedAt(s, from))
      .filter(w => changedSince(s, w.with, { figure: WALL_FIGURE[w.place], now_mm: w.wall_mm }) === null)
      .reduce<Worked | undefined>(
        (best, w) => (best === undefined || w.at_ms >= best.at_ms ? w : best),
        undefined,
      )?.travel_mm_s,
);
