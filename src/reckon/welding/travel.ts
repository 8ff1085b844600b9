import { ARC_EFFICIENCY, SUITED_kJ_mm2 } from './heat.ts';
import type { Process } from './process.ts';
import type { StartBand } from './start-band.ts';

/** How far the speeds of the tables it was fitted to lie from the rule, as a share. */
const SCATTER = 0.25;

/**
 * The travel that puts the suited heat into a wall: 0.48·U·I/t mm/min, from 0.10·t kJ/mm at an efficiency of 0.8.
 * Fitted to a power-source maker's CO2 butt table, ±25 % [derived].
 * @param wall_mm of the tube, or of one pass's share of it
 */
export const suitedTravel = (process: Process, volts: number, amps: number, wall_mm: number): StartBand => {
  const start = (ARC_EFFICIENCY[process] * volts * amps) / (1000 * SUITED_kJ_mm2 * wall_mm);
  return {
    start,
    low: start * (1 - SCATTER),
    high: start * (1 + SCATTER),
    mark: 'derived',
    source: 'heat of 0.10 kJ/mm for each mm of wall, fitted to a power-source maker’s CO2 butt table, ±25 %',
  };
};
