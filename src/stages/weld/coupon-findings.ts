import type { Fills, Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';
import { type Look, lastBroken, PIECES, type TestPiece } from '../test-pieces.ts';
import { PIECE_FINDING } from './chosen-piece.ts';
import { machineOf, told } from './machine.ts';
import { type Place, WALL_FIGURE, wallAt } from './places.ts';
import { type SettingNow, settingNow } from './setting-now.ts';

/** A knob is turned by a tenth, or a volt, and tried again (common practice: +10 % or +1 V, −10 to −15 %). */
const TENTH = 1.1;
const VOLT = 1;
/** Minutes to weld a piece again, let it cool and break it (common practice). */
const AGAIN_MINUTES = 40;
/** Bright metal each side of a joint, mm (common practice: an inch). */
const BRIGHT = 25;

const NAMES: Readonly<Record<TestPiece, string>> = { tee: 'T', slit: 'slit piece', sawn: 'sawn piece' };

const placeOf = (s: Situation, piece: TestPiece): Place =>
  piece === 'tee' || s.ramp.design.route === 'rolled' ? 'joints' : 'slits';

type Knobs = Readonly<{ amps: number; feed_m_min: number | null; volts: number; travel_mm_s: number }>;

const knobsOf = ({ set }: SettingNow): Knobs => ({
  amps: set.amps.start,
  feed_m_min: set.feed_m_min?.start ?? null,
  volts: set.volts.start,
  travel_mm_s: set.travel_mm_s.start,
});

/** Current and feed by a factor. */
const fed = (k: Knobs, by: number): Knobs => ({
  ...k,
  amps: k.amps * by,
  feed_m_min: k.feed_m_min === null ? null : k.feed_m_min * by,
});

type Way = Readonly<{ remedy: string; knobs?: Knobs }>;

/** Which way to turn the knob, by what was seen on the break. */
const waysFor = (look: Exclude<Look, 'held'>, k: Knobs, gas: boolean, rods: boolean): readonly Way[] => {
  switch (look) {
    case 'cold':
      return [
        { remedy: rods ? 'piece-more-amps' : 'piece-more-feed', knobs: fed(k, TENTH) },
        { remedy: 'piece-slower', knobs: { ...k, travel_mm_s: k.travel_mm_s / TENTH } },
      ];
    case 'hot':
      return [
        { remedy: rods ? 'piece-less-amps' : 'piece-less-feed', knobs: fed(k, 1 / TENTH) },
        { remedy: 'piece-quicker', knobs: { ...k, travel_mm_s: k.travel_mm_s * TENTH } },
      ];
    case 'pores':
      return [{ remedy: gas ? 'piece-gas' : 'piece-dry' }, { remedy: 'piece-bright' }];
    case 'edge':
      return [
        rods
          ? { remedy: 'piece-short-arc' }
          : { remedy: 'piece-less-volts', knobs: { ...k, volts: k.volts - VOLT } },
        { remedy: 'piece-pause' },
      ];
  }
};

const findingFor = (s: Situation, piece: TestPiece): Finding | null => {
  const broken = lastBroken(s, piece);
  if (broken === null || broken.look === 'held') return null;
  const place = placeOf(s, piece);
  const machine = machineOf(s);
  const now = settingNow(s, place);
  if (machine === null || now === null) return null;
  const k = knobsOf(now);
  const gas = now.set.gas_l_min;
  const rods = machine.process === 'smaw';
  const frozen = {
    place,
    piece,
    'weld-kind': machine.kind,
    'weld-wire': told(s, 'wire') ?? 0,
    [WALL_FIGURE[place]]: wallAt(s, place),
  };
  const fillsFor = (to: Knobs): Fills => ({
    piece: NAMES[piece],
    wall: { v: wallAt(s, place), as: 'thickness' },
    was: rods || k.feed_m_min === null ? { v: k.amps, as: 'current' } : { v: k.feed_m_min, as: 'feed' },
    set: rods || to.feed_m_min === null ? { v: to.amps, as: 'current' } : { v: to.feed_m_min, as: 'feed' },
    volts: { v: to.volts, as: 'tension' },
    travel: { v: to.travel_mm_s, as: 'travel' },
    flow: { v: gas?.start ?? 0, as: 'flow' },
    core: { v: now.set.filler_mm, as: 'thickness' },
    bright: { v: BRIGHT, as: 'length' },
  });
  const offers = waysFor(broken.look, k, gas !== null, rods).map(
    ({ remedy, knobs }): Offer => ({
      remedy,
      fills: fillsFor(knobs ?? k),
      minutes: AGAIN_MINUTES,
      plan: { ...frozen, ...(knobs === undefined ? {} : withoutNull(knobs)) },
    }),
  );
  return {
    key: `${PIECE_FINDING}${piece}:${broken.entry}`,
    stage: 'weld',
    severity: 'fix',
    words: `piece-${broken.look}`,
    fills: fillsFor(k),
    offers: sortOffers([
      ...offers,
      { remedy: 'leave-broken', fills: fillsFor(k), minutes: 0, plan: { place, piece } },
    ]),
  };
};

const withoutNull = (k: Knobs): Record<string, number> =>
  Object.fromEntries(Object.entries(k).filter((pair): pair is [string, number] => pair[1] !== null));

/** Test pieces that did not hold: what the break says, and which knob to turn which way before they are welded again. */
export const couponFindings = (s: Situation): readonly Finding[] =>
  PIECES.map(piece => findingFor(s, piece)).filter(found => found !== null);
