import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import type { Settings, SettingsCaution } from './setting.ts';
import { held, type StartBand } from './start-band.ts';
import { suitedTravel } from './travel.ts';

export type ShieldGas = 'CO2' | '75/25';

export type SolidWireInput = Readonly<{
  wall_mm: number;
  gas: ShieldGas;
  /** Of the wire; what suits the wall when left out. */
  filler_mm?: number | undefined;
  /** How fast this hand was seen to travel; a slow one burns through where a fast one lies cold. */
  hand_mm_s?: number | undefined;
}>;

type Wire = Readonly<{
  mm: number;
  least_A: number;
  most_A: number;
  feed_ipm_A: number;
  stick_out_mm: number;
}>;

/**
 * Solid wires under short arc, ER70S-6, by diameter (0.6 stands for 0.023 in, 0.8 for 0.030, 0.9 for 0.035, 1.1 for
 * 0.045). Currents, feed per ampere and stick-out: power-source makers' owner manuals, "typical control settings"
 * [found]; 1.0 mm lies between its neighbours [derived], its feed by 0.00195/d² [derived]. Stick-out of 1.0 and 1.1: 10
 * to 15 mm in a maker's CO2 table [found], the middle of it [derived].
 */
export const SOLID_WIRES: readonly Wire[] = [
  { mm: 0.6, least_A: 30, most_A: 90, feed_ipm_A: 3.5, stick_out_mm: 6.4 },
  { mm: 0.8, least_A: 40, most_A: 145, feed_ipm_A: 2, stick_out_mm: 7.9 },
  { mm: 0.9, least_A: 50, most_A: 180, feed_ipm_A: 1.6, stick_out_mm: 9.5 },
  { mm: 1, least_A: 62, most_A: 215, feed_ipm_A: 1.26, stick_out_mm: 12.5 },
  { mm: 1.1, least_A: 75, most_A: 250, feed_ipm_A: 1, stick_out_mm: 12.5 },
];

/** Inches a minute in metres a minute. */
const IPM_m_min = 0.0254;

/** Current a solid wire draws at a feed, A, by the makers' feed per ampere; null for a wire that is not made. */
export const solidWireAmps = (filler_mm: number, feed_m_min: number): number | null => {
  const wire = SOLID_WIRES.find(one => one.mm === filler_mm);
  return wire === undefined ? null : feed_m_min / IPM_m_min / wire.feed_ipm_A;
};

/**
 * Current for a wall and a slow hand, A: one for each thousandth of an inch; three makers' texts agree [found], 0.6 to
 * 6.35 mm.
 */
export const slowHandAmps = (wall_mm: number): number => wall_mm / 0.0254;

/**
 * Current for a wall and a quick hand (450 to 600 mm/min), A: 55 + 28·t, fitted to makers' tables of CO2 and 80/20 mix
 * within ±11 % from 1.6 to 4.5 mm [derived].
 */
export const quickHandAmps = (wall_mm: number): number => 55 + 28 * wall_mm;

/** The slow rule's own scatter, as a share [practice]. */
const SLOW_SCATTER = 0.15;

/** Hands: slower than this never above the slow rule; faster than the next a step up, all of it at the last [practice]. */
const SLOW_mm_s = 200 / 60;
const QUICKENING_mm_s = 400 / 60;
const QUICK_mm_s = 450 / 60;

/** From this wall a one-sided joint is bevelled and filled in two passes of this current [derived from makers' tables]. */
const BEVEL_mm = 5;
const PASS_A = { start: 165, low: 150, high: 180 } as const;
/** Travel of those passes, 10 to 12 in a minute [derived]. */
const PASS_TRAVEL: StartBand = {
  start: 280 / 60,
  low: 254 / 60,
  high: 305 / 60,
  mark: 'derived',
  source: 'two passes in a bevel at 150 to 180 A, reckoned from makers’ tables',
};

/** Load line 14 + 0.05·I of IEC 60974-1 [memory], moved to makers' tables [derived], and the currents it was fitted to. */
const VOLTS = {
  CO2: { start: -0.7, low: -1.3, high: -0.1, from_A: 60, to_A: 250 },
  '75/25': { start: -1.5, low: -3, high: -0.3, from_A: 60, to_A: 160 },
} as const;

/**
 * Volts of a short arc at a current.
 * @param amps best between 60 and 250 under CO2, 60 and 160 under 75/25: what the line was fitted to
 */
export const shortArcVolts = (
  gas: ShieldGas,
  amps: number,
): Readonly<{ start: number; low: number; high: number }> => {
  const line = 14 + 0.05 * amps;
  const { start, low, high } = VOLTS[gas];
  return { start: line + start, low: line + low, high: line + high };
};

/** Stick-out may be off by this, mm: 1/16 in [found]. */
const STICK_OUT_OFF_mm = 1.6;

/** Under this wall a mix is kinder than CO2, mm [practice]. */
const MIX_UNDER_mm = 2;

/**
 * Settings of solid wire under gas. The wall is checked by the caller.
 * Refuses out-of-range for a wire that is not made, or a hand that does not move, and contradiction for a wire whose
 * least current is more than the wall stands.
 */
export const solidWireSettings = (input: SolidWireInput): Outcome<Settings> => {
  const { wall_mm, gas, hand_mm_s } = input;
  const wire_mm = input.filler_mm ?? (wall_mm < 2.5 ? 0.8 : 0.9);
  const wire = SOLID_WIRES.find(one => one.mm === wire_mm);
  const sizes = (of: readonly Wire[]): string => of.map(one => `${one.mm}`).join(', ');
  if (wire === undefined)
    return refuse(
      'out-of-range',
      'filler_mm',
      `${wire_mm} mm is no solid wire of a garage.`,
      `${sizes(SOLID_WIRES)} mm`,
    );
  if (hand_mm_s !== undefined && !(hand_mm_s > 0 && hand_mm_s <= 50))
    return refuse(
      'out-of-range',
      'hand_mm_s',
      `No hand travels at ${hand_mm_s} mm/s.`,
      'above 0, at most 50 mm/s',
    );
  const slow = slowHandAmps(wall_mm);
  if (slow < wire.least_A)
    return refuse(
      'contradiction',
      'filler_mm',
      `${wire_mm} mm wire wants at least ${wire.least_A} A, this wall stands ${Math.round(slow)} A.`,
      `${sizes(SOLID_WIRES.filter(one => one.least_A <= slow))} mm`,
    );

  const bevelled = wall_mm >= BEVEL_mm;
  const wanted = bevelled ? PASS_A : handAmps(wall_mm, hand_mm_s);
  const inWire = (amps: number): number => held(amps, wire.least_A, wire.most_A);
  const amps: StartBand = {
    start: inWire(wanted.start),
    low: inWire(wanted.low),
    high: inWire(wanted.high),
    mark: bevelled ? 'derived' : 'found',
    source: '1 A for each 0.001 in of wall, three makers’ texts; up to 55 + 28 for each mm for a quick hand',
  };
  const fit = VOLTS[gas];
  const volts = shortArcVolts(gas, amps.start);
  const feed = (current: number): number => current * wire.feed_ipm_A * IPM_m_min;

  const cautions: SettingsCaution[] = [];
  if (bevelled) cautions.push('bevel, two passes');
  if (wanted.start > wire.most_A) cautions.push('wire at its limit');
  if (amps.start < fit.from_A || amps.start > fit.to_A) cautions.push('volts reckoned past their fit');
  if (gas === 'CO2' && wall_mm < MIX_UNDER_mm) cautions.push('mix kinder than CO2');

  return good({
    filler_mm: wire_mm,
    polarity: 'electrode positive',
    amps,
    volts: {
      ...volts,
      mark: 'derived',
      source: '14 + 0.05 for each A (IEC 60974-1 [memory]), moved to makers’ tables',
    },
    feed_m_min: {
      start: feed(amps.start),
      low: feed(amps.low),
      high: feed(amps.high),
      mark: wire_mm === 1 ? 'derived' : 'found',
      source: `${wire.feed_ipm_A} in a minute for each A, makers’ owner manuals`,
    },
    stick_out_mm: {
      start: wire.stick_out_mm,
      low: wire.stick_out_mm - STICK_OUT_OFF_mm,
      high: wire.stick_out_mm + STICK_OUT_OFF_mm,
      mark: 'found',
      source: 'makers’ owner manuals',
    },
    travel_mm_s: bevelled ? PASS_TRAVEL : suitedTravel('gmaw', volts.start, amps.start, wall_mm),
    gas_l_min: gasFlow(wall_mm),
    passes: bevelled ? 2 : 1,
    cautions,
  });
};

/** Currents for a wall by the hand that welds it; a hand not seen yet starts slow. */
const handAmps = (
  wall_mm: number,
  hand_mm_s: number | undefined,
): Readonly<{ start: number; low: number; high: number }> => {
  const slow = slowHandAmps(wall_mm);
  const quick = Math.max(slow, quickHandAmps(wall_mm));
  const low = slow * (1 - SLOW_SCATTER);
  if (hand_mm_s !== undefined && hand_mm_s < SLOW_mm_s) return { start: slow, low, high: slow };
  const quickness = held(((hand_mm_s ?? 0) - QUICKENING_mm_s) / (QUICK_mm_s - QUICKENING_mm_s), 0, 1);
  return {
    start: slow + (quick - slow) * quickness,
    low,
    high: Math.max(quick, slow * (1 + SLOW_SCATTER)),
  };
};

/** Two makers' tables: 10 to 15 l/min to 3.2 mm, 15 to 20 from 4.5 [found]; between them the lower [practice]. */
const gasFlow = (wall_mm: number): StartBand => ({
  ...(wall_mm < 4.5 ? { start: 12, low: 10, high: 15 } : { start: 16, low: 15, high: 20 }),
  mark: 'found',
  source: 'two makers’ tables; start at 12 (25 CFH) and no more than the band: too much draws air in',
});
