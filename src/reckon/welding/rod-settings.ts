import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import type { Polarity, Settings, SettingsCaution } from './setting.ts';
import { held } from './start-band.ts';
import { suitedTravel } from './travel.ts';

export type Rod = 'E6013' | 'E6011' | 'E7018';

export type RodInput = Readonly<{
  wall_mm: number;
  /** What suits the wall when left out. */
  rod?: Rod | undefined;
  /** Core of the rod; what suits the wall when left out. */
  filler_mm?: number | undefined;
}>;

type Range = Readonly<{ mm: number; least_A: number; most_A: number }>;

const range = (mm: number, least_A: number, most_A: number): Range => ({ mm, least_A, most_A });

/** Currents by core, A: Machinery's Handbook, 31st ed., p. 1593–1594, Tables 13 and 14 [found]. */
export const RODS: Readonly<Record<Rod, readonly Range[]>> = {
  E6013: [range(1.6, 20, 40), range(2.5, 50, 100), range(3.2, 75, 135), range(4, 110, 185)],
  E6011: [range(2.5, 40, 75), range(3.2, 75, 130), range(4, 90, 170)],
  E7018: [range(2.5, 70, 105), range(3.2, 110, 160), range(4, 150, 215)],
};

/** An electrode chart [found] for E6013; data sheets [found] for the others. */
const POLARITY: Readonly<Record<Rod, Polarity>> = {
  E6013: 'AC or either',
  E6011: 'AC or electrode positive',
  E7018: 'AC or electrode positive',
};

/** Up to this wall (10 gauge sheet) the low end of a rod's range, from there its middle: the same, p. 1593 [found]. */
const SHEET_mm = 3.4;

/** A beginner's rods: 2.5 mm wants 1.9 mm of wall, E7018 4 mm [practice]. */
const SMALL_ROD_BELOW_mm = 1.9;
const HEAVY_FROM_mm = 4;

/** Thinner than this a beginner does better with wire, mm [practice]. */
const WIRE_BELOW_mm = 2.5;

/** From this wall a one-sided joint is bevelled, mm [derived from makers' tables of solid wire]. */
const BEVEL_mm = 5;

/** Volts of a rod's arc at a current: load line of IEC 60974-1 for rods [memory]. */
export const rodVolts = (amps: number): number => 20 + 0.04 * amps;

/** Rods by wall, largest core, mm: makers' owner manuals [found]. */
const mostCore = (wall_mm: number): number => (wall_mm < 2 ? 2.5 : wall_mm < 5 ? 3.2 : 4);

/**
 * Settings of covered rods. The wall is checked by the caller.
 * Refuses out-of-range for a core that the rod is not made in, contradiction for one too thick for the wall.
 */
export const rodSettings = (input: RodInput): Outcome<Settings> => {
  const { wall_mm } = input;
  const rod = input.rod ?? (wall_mm < HEAVY_FROM_mm ? 'E6013' : 'E7018');
  const cores = RODS[rod];
  const suited =
    input.rod === undefined && wall_mm < SMALL_ROD_BELOW_mm ? 1.6 : wall_mm < HEAVY_FROM_mm ? 2.5 : 3.2;
  const core_mm = input.filler_mm ?? suited;
  const core = cores.find(one => one.mm === core_mm);
  if (core === undefined)
    return refuse(
      'out-of-range',
      'filler_mm',
      `${rod} is not reckoned with a core of ${core_mm} mm.`,
      `${cores.map(one => one.mm).join(', ')} mm`,
    );
  if (core_mm > mostCore(wall_mm))
    return refuse(
      'contradiction',
      'filler_mm',
      `A rod of ${core_mm} mm is too thick for a wall of ${wall_mm} mm.`,
      `at most ${mostCore(wall_mm)} mm`,
    );

  const { least_A, most_A } = core;
  const middle = (least_A + most_A) / 2;
  const sheet = wall_mm <= SHEET_mm;
  // E7018: 1 A for each 0.001 in of core, a maker's owner manual [found].
  const start = sheet
    ? (least_A + middle) / 2
    : rod === 'E7018'
      ? held(core_mm / 0.0254, least_A, most_A)
      : middle;
  const volts = rodVolts(start);
  const bevelled = wall_mm >= BEVEL_mm;

  const cautions: SettingsCaution[] = [];
  if (wall_mm < WIRE_BELOW_mm) cautions.push('thin for a rod');
  if (bevelled) cautions.push('bevel, two passes');

  return good({
    filler_mm: core_mm,
    polarity: POLARITY[rod],
    amps: {
      start,
      low: least_A,
      high: sheet ? middle : most_A,
      mark: 'found',
      source:
        'Machinery’s Handbook, 31st ed., p. 1593–1594: low end of the range on sheet, its middle from 3.4 mm',
    },
    volts: { start: volts, low: 21, high: 26, mark: 'memory', source: '20 + 0.04 for each A, IEC 60974-1' },
    feed_m_min: null,
    stick_out_mm: null,
    travel_mm_s: suitedTravel('smaw', volts, start, bevelled ? wall_mm / 2 : wall_mm),
    gas_l_min: null,
    passes: bevelled ? 2 : 1,
    cautions,
  });
};
