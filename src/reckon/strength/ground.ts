import type { Mark } from '../steel/steel.ts';

/** kPa of one lb/ft². */
const PSF = 0.047_880_259;

/** Ground a ramp may stand on: what it bears, N/mm², and the friction of a frame's feet on it. */
export type GroundFigures = Readonly<{
  /** Presumptive, under a foot that stays put; null where none is presumed: boards, then measure. */
  bears_MPa: number | null;
  friction: number;
  bearsSource: string;
  bearsMark: Mark;
  frictionSource: string;
}>;

const IBC = 'IBC table 1806.2, presumptive';
const RANGE = 'low end of the ranges of the trade [practice]; a pull measured on the spot replaces it';

const ibc = (psf: number, friction: number): GroundFigures => ({
  bears_MPa: (psf * PSF) / 1000,
  friction,
  bearsSource: IBC,
  bearsMark: 'found',
  frictionSource: RANGE,
});

/** Frictions are for steel or boards on the ground, wet where grass may be wet. */
export const GROUNDS = {
  concrete: { ...ibc(12_000, 0.4), bearsSource: 'IBC table 1806.2, taken as rock' },
  gravel: ibc(3000, 0.5),
  sand: ibc(2000, 0.4),
  clay: ibc(1500, 0.25),
  'dry lawn': {
    bears_MPa: 0.05,
    friction: 0.3,
    bearsSource: '500 to 1000 lb/ft² for temporary feet',
    bearsMark: 'practice',
    frictionSource: RANGE,
  },
  'wet lawn': {
    bears_MPa: 0.025,
    friction: 0.2,
    bearsSource: '500 lb/ft² for temporary feet, the lower end',
    bearsMark: 'practice',
    frictionSource: RANGE,
  },
  'soft or filled ground': {
    bears_MPa: null,
    friction: 0.2,
    bearsSource: 'IBC table 1806.2: none is presumed of mud, peat or fill',
    bearsMark: 'found',
    frictionSource: RANGE,
  },
} as const satisfies Record<string, GroundFigures>;

export type FootPressure = Readonly<{
  pressure_MPa: number;
  utilisation: number;
  /** Side of a square board or paver that would do, mm, rounded up to 50. */
  side_mm: number;
}>;

const SIDE_STEP_MM = 50;

/**
 * Pressure under one foot: q = R/A against what the ground is presumed to bear. Null where nothing is presumed.
 * @param down_N on the foot, unfactored
 * @param length_mm one side of the foot
 * @param width_mm the other
 */
export const footPressure = (
  down_N: number,
  length_mm: number,
  width_mm: number,
  ground: GroundFigures,
): FootPressure | null => {
  if (ground.bears_MPa === null || !(length_mm > 0 && width_mm > 0)) return null;
  const pressure_MPa = Math.max(0, down_N) / (length_mm * width_mm);
  const side = Math.sqrt(Math.max(0, down_N) / ground.bears_MPa);
  return {
    pressure_MPa,
    utilisation: pressure_MPa / ground.bears_MPa,
    side_mm: Math.ceil(side / SIDE_STEP_MM - 1e-9) * SIDE_STEP_MM,
  };
};
