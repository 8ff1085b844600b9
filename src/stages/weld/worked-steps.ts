import { TURN } from '../order.ts';
import type { Ask, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { couponsKey } from './coupon-steps.ts';
import { machineOf } from './machine.ts';
import { once } from './once.ts';
import { type Place, placesOf, WALL_FIGURE, wallAt } from './places.ts';
import { settingNow } from './setting-now.ts';
import {
  currentUnknown,
  insteadOf,
  ROD_ASKS,
  SHOWN_ASKS,
  WIRE_ASKS,
  workedAt,
  workedFor,
  workedKey,
} from './worked.ts';

/** A bead that is worth timing, mm, and how far a hand's time may lie from the suited one before the field asks again, as a share. */
const BEAD_mm = [40, 120] as const;
const OFF = [0.75, 1.25] as const;

/**
 * The bead to be written down for a place now: none where one in such a wall is remembered, a further one where another setting was
 * chosen after it, or with another wire, gas or wall.
 */
const roundWanted = once((s: Situation, place: Place): number | null => {
  const fits = workedFor(s, place);
  const next = workedAt(s, place).length + 1;
  if (fits === null) return next;
  if (fits.place !== place) return null;
  return insteadOf(s, fits) === null ? fits.round : next;
});

/** Keys of what is to be written down before a place is welded. */
export const workedNeeds = (s: Situation, place: Place): readonly string[] => {
  const round = machineOf(s) === null ? null : roundWanted(s, place);
  return round === null ? [] : [workedKey(place, round)];
};

const stepAt = (s: Situation, place: Place): StepDraft | null => {
  const machine = machineOf(s);
  const now = settingNow(s, place);
  const round = roundWanted(s, place);
  if (machine === null || now === null || round === null) return null;
  const key = workedKey(place, round);
  const { set } = now;
  const long = s.build.readings.get(`${key}#long`)?.value ?? (BEAD_mm[0] + BEAD_mm[1]) / 2;
  const took = long / set.travel_mm_s.start;
  const rods = machine.process === 'smaw';
  const read = (ask: string): boolean => s.build.readings.has(`${key}#${ask}`);
  // A bead that an older build timed without it is not opened anew.
  const shown =
    currentUnknown(machine.process, machine.filler_mm) && (read('shown') || !read('took') || !read('long'));
  const about = (v: number): readonly [number, number] => [v * OFF[0], v * OFF[1]];
  const asks: Readonly<Record<string, Ask>> = {
    feed: {
      ask: 'feed',
      as: 'feed',
      ...(set.feed_m_min === null ? {} : { expected: about(set.feed_m_min.start) }),
      possible: [0.5, 25],
    },
    volts: {
      ask: 'volts',
      as: 'tension',
      expected: [set.volts.start - 2, set.volts.start + 2],
      possible: [8, 45],
    },
    // Nought, where the machine shows none, is no surprise.
    shown: { ask: 'shown', as: 'current', expected: [0, 2 * set.amps.start], possible: [0, 500] },
    amps: { ask: 'amps', as: 'current', expected: about(set.amps.start), possible: [10, 500] },
    long: { ask: 'long', as: 'length', expected: BEAD_mm, possible: [5, 1000] },
    took: { ask: 'took', as: 'count', expected: about(took), possible: [1, 600] },
  };
  const joints = place === 'joints';
  return {
    key,
    stage: 'weld',
    words: rods ? `worked-${place}-rod` : shown ? `worked-${place}-shown` : `worked-${place}`,
    fills: {
      wall: { v: wallAt(s, place), as: 'thickness' },
      long: { v: long, as: 'length' },
      took: Math.max(1, Math.round(took)),
      wire: { v: machine.set.ok ? machine.set.value.filler_mm : set.filler_mm, as: 'thickness' },
    },
    turn: TURN.testWeld + (joints ? 44 : 42),
    needs: [couponsKey(s)],
    uses: [
      ...(joints ? ['joint-amps', 'joint-travel'] : ['weld-amps', 'weld-travel']),
      'weld-kind',
      'weld-wire',
      WALL_FIGURE[place],
    ],
    asks: (rods ? ROD_ASKS : shown ? SHOWN_ASKS : WIRE_ASKS).flatMap(name => asks[name] ?? []),
    minutes: [5, 10],
  };
};

/** What held is written down once for each wall: the setting as the machine stood, and a bead timed. */
export const workedSteps = (s: Situation): readonly StepDraft[] =>
  placesOf(s)
    .map(place => stepAt(s, place))
    .filter(step => step !== null);
