import { HAND_QUICKEST_mm_s, HAND_SLOWEST_mm_s } from '../../reckon/welding/hand.ts';
import { heatVerdict, SUITED_kJ_mm2 } from '../../reckon/welding/heat.ts';
import type { Fills, Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';
import { changedSince } from '../test-pieces.ts';
import { machineOf } from './machine.ts';
import { type Place, placesOf, WALL_FIGURE } from './places.ts';
import { heatKey, type Worked, workedAt } from './worked.ts';

/** A knob is turned by so much at once and tried again, as a share (common practice: 10 to 15 %). */
const TURN_MOST = 0.15;
/** Another bead, sawn through and looked at, minutes (common practice). */
const BEAD_MINUTES = 15;

const percent = (share: number) => ({ v: 100 * share, as: 'percent' }) as const;

/** Steps that wait until a bead that does not suit its wall is decided on. */
const waiting = (s: Situation, place: Place): readonly string[] =>
  place === 'slits' ? s.ramp.rails.map(rail => `weld/sides-first@${rail}`) : ['weld/joint-settings'];

const findingFor = (s: Situation, w: Worked, most_A: number): Finding | null => {
  const { heat, amps, travel_mm_s, wall_mm, process } = w;
  if (heat === null || amps === null) return null;
  const hot = heat.verdict === 'blows holes';
  if (!hot && heat.verdict !== 'does not fuse') return null;
  const { share } = heat;
  const after = (v: number): NonNullable<Offer['after']> => {
    const verdict = heatVerdict(v * SUITED_kJ_mm2 * wall_mm, wall_mm, process);
    return { ...percent(v), within: verdict !== 'blows holes' && verdict !== 'does not fuse' };
  };
  const turn = hot
    ? Math.max(1 / share, 1 - TURN_MOST)
    : Math.max(1, Math.min(1 / share, 1 + TURN_MOST, most_A / amps));
  // No quicker and no slower than a hand goes; one that is already past it stays.
  const travel = hot
    ? Math.max(travel_mm_s, Math.min(travel_mm_s * share, HAND_QUICKEST_mm_s))
    : Math.min(travel_mm_s, Math.max(travel_mm_s * share, HAND_SLOWEST_mm_s));
  const turned = {
    amps: amps * turn,
    ...(w.feed_m_min === null ? {} : { feed_m_min: w.feed_m_min * turn }),
    travel_mm_s,
  };
  const moved = {
    amps,
    ...(w.feed_m_min === null ? {} : { feed_m_min: w.feed_m_min }),
    travel_mm_s: travel,
  };
  const fills: Fills = {
    heat: percent(share),
    wall: { v: wall_mm, as: 'thickness' },
    volts: { v: w.volts, as: 'tension' },
    amps: { v: amps, as: 'current' },
    travel: { v: travel_mm_s, as: 'travel' },
    set: w.feed_m_min === null ? { v: turned.amps, as: 'current' } : { v: w.feed_m_min * turn, as: 'feed' },
    speed: { v: travel, as: 'travel' },
  };
  const frozen = { place: w.place, share };
  const offers: readonly Offer[] = [
    {
      remedy: hot ? 'heat-less' : 'heat-more',
      fills,
      minutes: BEAD_MINUTES,
      plan: { ...frozen, ...turned },
      after: after(share * turn),
    },
    {
      remedy: hot ? 'heat-quicker' : 'heat-slower',
      fills,
      minutes: BEAD_MINUTES,
      plan: { ...frozen, ...moved },
      after: after((share * travel_mm_s) / travel),
    },
    ...(hot ? [{ remedy: 'heat-stitches', fills, minutes: 2 * BEAD_MINUTES, plan: frozen }] : []),
    { remedy: 'leave-heat', fills, minutes: 0, plan: frozen, after: after(share) },
  ];
  return {
    key: heatKey(w),
    stage: 'weld',
    severity: 'fix',
    words: hot ? 'bead-hot' : 'bead-cold',
    fills,
    tall: percent(share),
    offers: sortOffers(offers),
    blocks: waiting(s, w.place),
  };
};

/** Beads of one's own that put so much heat into their wall that it blows through, or so little that they only lie on it. */
export const heatFindings = (s: Situation): readonly Finding[] =>
  placesOf(s).flatMap(place => {
    const last = workedAt(s, place).at(-1);
    const stands =
      last !== undefined &&
      changedSince(s, last.with, { figure: WALL_FIGURE[place], now_mm: last.wall_mm }) === null;
    const found = stands ? findingFor(s, last, machineOf(s)?.most_A ?? Infinity) : null;
    return found === null ? [] : [found];
  });
