import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import type { Process } from './process.ts';

/**
 * Share of the arc's power that reaches the steel. EN 1011-1 gives 0.8 for covered rods, solid wire and self-shielded
 * cored wire alike [memory; the first two found on a steel maker's page].
 */
export const ARC_EFFICIENCY: Readonly<Record<Process, number>> = { gmaw: 0.8, 'fcaw-s': 0.8, smaw: 0.8 };

/** What is taken; past these no hand-held machine goes. Judgement. */
export const HEAT_LIMITS = {
  volts: { above: 0, atMost: 200 },
  amps: { above: 0, atMost: 2000 },
  travel_mm_s: { atLeast: 0.01, atMost: 1000 },
} as const;

export type HeatInput = Readonly<{ volts: number; amps: number; travel_mm_s: number; process: Process }>;

export type Heat = Readonly<{ kJ_mm: number; efficiency: number }>;

/**
 * Heat put into a millimetre of weld: efficiency × volts × amps ÷ travel; EN 1011-1 [memory].
 * Refuses out-of-range for each value past its limit.
 */
export const heatInput = ({ volts, amps, travel_mm_s, process }: HeatInput): Outcome<Heat> => {
  if (!(volts > HEAT_LIMITS.volts.above && volts <= HEAT_LIMITS.volts.atMost))
    return refuse(
      'out-of-range',
      'volts',
      `No arc has ${volts} V.`,
      `above 0, at most ${HEAT_LIMITS.volts.atMost} V`,
    );
  if (!(amps > HEAT_LIMITS.amps.above && amps <= HEAT_LIMITS.amps.atMost))
    return refuse(
      'out-of-range',
      'amps',
      `No arc has ${amps} A.`,
      `above 0, at most ${HEAT_LIMITS.amps.atMost} A`,
    );
  const { atLeast, atMost } = HEAT_LIMITS.travel_mm_s;
  if (!(travel_mm_s >= atLeast && travel_mm_s <= atMost))
    return refuse(
      'out-of-range',
      'travel_mm_s',
      `No hand travels at ${travel_mm_s} mm/s.`,
      `at least ${atLeast}, at most ${atMost} mm/s`,
    );
  const efficiency = ARC_EFFICIENCY[process];
  return good({ kJ_mm: (efficiency * volts * amps) / travel_mm_s / 1000, efficiency });
};

/** Heat that suits a wall, kJ/mm for each mm of it, ±20 %: fitted to a power-source maker's CO2 butt table [derived]. */
export const SUITED_kJ_mm2 = 0.1;
const SUITED_SHARE = 0.2;

/** Below this the bead lies on the steel and does not join it; above it holes are blown. kJ/mm for each mm [practice]. */
const COLD_kJ_mm2 = 0.07;
const HOLES_kJ_mm2: Readonly<Record<Process, number>> = { gmaw: 0.14, 'fcaw-s': 0.14, smaw: 0.18 };

export type HeatVerdict = 'does not fuse' | 'on the cold side' | 'suits' | 'on the hot side' | 'blows holes';

/**
 * What a heat input does to a wall.
 * @param kJ_mm heat put into a millimetre of weld
 * @param wall_mm the thinner wall, more than 0
 */
export const heatVerdict = (kJ_mm: number, wall_mm: number, process: Process): HeatVerdict => {
  const perWall = kJ_mm / wall_mm;
  if (perWall < COLD_kJ_mm2) return 'does not fuse';
  if (perWall > HOLES_kJ_mm2[process]) return 'blows holes';
  if (perWall < SUITED_kJ_mm2 * (1 - SUITED_SHARE)) return 'on the cold side';
  return perWall > SUITED_kJ_mm2 * (1 + SUITED_SHARE) ? 'on the hot side' : 'suits';
};
