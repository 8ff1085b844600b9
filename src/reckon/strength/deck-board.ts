import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { wholeUp } from '../numeric/whole-up.ts';
import type { BoardStrength } from './timber.ts';
import { LOAD_FACTORS, type Standard } from './tube-strength.ts';

/** A foot or wheel on one board, standing still, N: 1.5 kN, or 300 lb; and how much more as it lands [both practice]. */
export const STILL_WHEEL_N: Readonly<Record<Standard, number>> = { EN: 1500, AISC: 300 * 4.448_221_615 };
const LANDING = 2;

/** Boards sag to this share of their span at most, under a rider standing still [practice]. */
const SAG_SHARE = 1 / 240;

/** What a deck is checked against, N: twice a standing rider, or the wheel of the ride when that is more. */
export const deckWheel = (standard: Standard, wheel_N: number): number =>
  Math.max(LANDING * STILL_WHEEL_N[standard], wheel_N);

export type BoardInput = Readonly<{
  standard: Standard;
  strength: BoardStrength;
  thickness_mm: number;
  board_mm: number;
  /** Between the middles of the rails it lies on. */
  span_mm: number;
  /** All on one board; see `deckWheel`. */
  wheel_N: number;
}>;

export type BoardCheck = Readonly<{
  stress_MPa: number;
  utilisation: number;
  /** Under a rider standing still; over what is allowed in `sag_utilisation`. */
  sag_mm: number;
  sag_utilisation: number;
  /** Largest span by strength and by sag, whichever is less. */
  largest_mm: number;
}>;

/**
 * One board across two rails, a wheel alone on its middle: M = PL/4, PL³/48EI [textbook], load factored by EN and not by NDS.
 * Continuity over more rails is not counted. Refuses sizes and loads not above 0.
 */
export const boardCheck = (input: BoardInput): Outcome<BoardCheck> => {
  const { standard, strength, thickness_mm, board_mm, span_mm, wheel_N } = input;
  for (const [field, value] of Object.entries({ thickness_mm, board_mm, span_mm, wheel_N }))
    if (!(value > 0 && value <= 1e6))
      return refuse('out-of-range', field, `${value} will not do here.`, 'more than 0');
  const load = LOAD_FACTORS[standard].live * wheel_N;
  const modulus = (board_mm * thickness_mm ** 2) / 6;
  const inertia = (modulus * thickness_mm) / 2;
  const still = STILL_WHEEL_N[standard];
  const stress_MPa = (load * span_mm) / 4 / modulus;
  const sag_mm = (still * span_mm ** 3) / (48 * strength.E_MPa * inertia);
  const bySag = Math.sqrt((SAG_SHARE * 48 * strength.E_MPa * inertia) / still);
  return good({
    stress_MPa,
    utilisation: stress_MPa / strength.bending_MPa,
    sag_mm,
    sag_utilisation: sag_mm / (span_mm * SAG_SHARE),
    largest_mm: Math.min((4 * modulus * strength.bending_MPa) / load, bySag),
  });
};

/**
 * Rails that boards across a ramp need: as many as leave no span over the largest. Two at least.
 * @param width_mm of the ramp, outside to outside of its outer rails
 * @param rail_mm width of one rail
 * @param largest_mm largest span between middles
 */
export const railsNeeded = (width_mm: number, rail_mm: number, largest_mm: number): number =>
  Math.max(2, wholeUp(Math.max(0, width_mm - rail_mm) / largest_mm) + 1);
