import { feedCurrent } from './feed-current.ts';
import type { Process } from './process.ts';
import { rodVolts } from './rod-settings.ts';
import type { Settings } from './setting.ts';
import type { StartBand } from './start-band.ts';
import { suitedTravel } from './travel.ts';

/** A step of such a machine either way: half a volt, a tenth of feed or current [practice]. */
const STEP_V = 0.5;
const STEP_SHARE = 0.1;

/** Settings as a text or a hand has them: a wire's volts and feed, a rod's current. */
export type Told = Readonly<{ volts: number; feed_m_min: number }> | Readonly<{ amps: number }>;

const about = (start: number, by: number, source: string): StartBand => ({
  start,
  low: start - by,
  high: start + by,
  mark: 'found',
  source,
});

/**
 * Settings with those that were told in place of the ruled ones: a wire's current follows from its feed where a rule is known, else
 * stays as ruled; a rod's volts follow its current; travel is the one that puts the suited heat in.
 * @param ruled settings by rule, for the same wire and wall
 * @param told volts, feed m/min and current A, each more than 0
 * @param source what they were read from
 */
export const toldSettings = (
  ruled: Settings,
  process: Process,
  wall_mm: number,
  told: Told,
  source: string,
): Settings => {
  const amps = 'amps' in told ? told.amps : feedCurrent(process, ruled.filler_mm, told.feed_m_min);
  const volts = 'amps' in told ? rodVolts(told.amps) : told.volts;
  return {
    ...ruled,
    amps: amps === null ? ruled.amps : about(amps, amps * STEP_SHARE, source),
    volts: 'amps' in told ? { ...ruled.volts, start: volts } : about(volts, STEP_V, source),
    feed_m_min: 'amps' in told ? null : about(told.feed_m_min, told.feed_m_min * STEP_SHARE, source),
    travel_mm_s: suitedTravel(process, volts, amps ?? ruled.amps.start, wall_mm / ruled.passes),
  };
};

/**
 * Settings that a machine can give: none above its highest current. Feed and travel follow the current; the volts stay.
 * @param most_A highest current of the machine, more than 0
 */
export const withinMachine = (
  ruled: Settings,
  process: Process,
  wall_mm: number,
  most_A: number,
): Settings => {
  if (most_A >= ruled.amps.high) return ruled;
  const held = (band: StartBand, most: number): StartBand => ({
    ...band,
    start: Math.min(band.start, most),
    low: Math.min(band.low, most),
    high: Math.min(band.high, most),
  });
  const start = Math.min(ruled.amps.start, most_A);
  // Feed in step with current: what the wire is fed at its start, for each ampere of it.
  const feedMost = ruled.feed_m_min === null ? 0 : (ruled.feed_m_min.start / ruled.amps.start) * most_A;
  return {
    ...ruled,
    amps: held(ruled.amps, most_A),
    feed_m_min: ruled.feed_m_min === null ? null : held(ruled.feed_m_min, feedMost),
    travel_mm_s:
      start === ruled.amps.start
        ? ruled.travel_mm_s
        : suitedTravel(process, ruled.volts.start, start, wall_mm / ruled.passes),
  };
};
