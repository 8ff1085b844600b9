import { good, type Outcome, refuse } from '../../quantity/outcome.ts';

/** A strut under plain compression, buckling in one plane. */
export type Strut = Readonly<{
  yield_MPa: number;
  E_MPa: number;
  area_mm2: number;
  /** Radius of gyration in the plane it buckles in. */
  gyration_mm: number;
  length_mm: number;
  /** Effective length over length: 1 pinned both ends, 2.1 free at one. */
  k: number;
}>;

/** AISC 360 B3.2 and E1 [memory]. */
const OMEGA = 1.67;
const PHI = 0.9;
/** EN 1993-1-1 6.1, the value recommended [memory]. */
const GAMMA_M1 = 1;

/** EN 1993-1-1 table 6.1, imperfection of each buckling curve [found]. Cold-formed tube is c, hot-finished a. */
export const BUCKLING_CURVES = { a0: 0.13, a: 0.21, b: 0.34, c: 0.49, d: 0.76 } as const;
export type BucklingCurve = keyof typeof BUCKLING_CURVES;

export type AiscColumn = Readonly<{
  /** Effective length over radius of gyration; AISC advises no more than 200. */
  ratio: number;
  elastic_MPa: number;
  critical_MPa: number;
  nominal_N: number;
  allowable_N: number;
  design_N: number;
}>;

/**
 * Compression strength without slender walls: AISC 360 E3, equations E3-2 and E3-3 [found]. Refuses figures not above 0.
 */
export const aiscColumn = (strut: Strut): Outcome<AiscColumn> => {
  const checked = checkStrut(strut);
  if (!checked.ok) return checked;
  const { yield_MPa, E_MPa, area_mm2 } = strut;
  const ratio = (strut.k * strut.length_mm) / strut.gyration_mm;
  const elastic = (Math.PI ** 2 * E_MPa) / ratio ** 2;
  const squat = yield_MPa / elastic <= 2.25;
  const critical = squat ? 0.658 ** (yield_MPa / elastic) * yield_MPa : 0.877 * elastic;
  const nominal = critical * area_mm2;
  return finite({
    ratio,
    elastic_MPa: elastic,
    critical_MPa: critical,
    nominal_N: nominal,
    allowable_N: nominal / OMEGA,
    design_N: PHI * nominal,
  });
};

export type EnColumn = Readonly<{
  /** Relative slenderness λ̄. */
  slenderness: number;
  /** Reduction factor χ. */
  reduction: number;
  elastic_N: number;
  design_N: number;
}>;

/**
 * Buckling resistance of a class 1 to 3 section: EN 1993-1-1 6.3.1.2, equations 6.47 to 6.49 [found]. Refuses figures not above 0.
 */
export const enColumn = (strut: Strut, curve: BucklingCurve = 'c'): Outcome<EnColumn> => {
  const checked = checkStrut(strut);
  if (!checked.ok) return checked;
  const { yield_MPa, E_MPa, area_mm2 } = strut;
  const ratio = (strut.k * strut.length_mm) / strut.gyration_mm;
  const slenderness = (ratio / Math.PI) * Math.sqrt(yield_MPa / E_MPa);
  const half = 0.5 * (1 + BUCKLING_CURVES[curve] * (slenderness - 0.2) + slenderness ** 2);
  const reduction = slenderness <= 0.2 ? 1 : 1 / (half + Math.sqrt(half ** 2 - slenderness ** 2));
  return finite({
    slenderness,
    reduction,
    elastic_N: (Math.PI ** 2 * E_MPa * area_mm2) / ratio ** 2,
    design_N: (reduction * area_mm2 * yield_MPa) / GAMMA_M1,
  });
};

const checkStrut = (strut: Strut): Outcome<true> => {
  for (const [field, value] of Object.entries(strut)) {
    if (!Number.isFinite(value))
      return refuse('not-a-number', field, `${field} is no number.`, 'a number above 0');
    if (value <= 0) return refuse('out-of-range', field, `${field} is ${value}.`, 'a number above 0');
  }
  return good(true);
};

const finite = <T extends Readonly<Record<string, number>>>(answer: T): Outcome<T> =>
  Object.values(answer).every(Number.isFinite)
    ? good(answer)
    : refuse(
        'out-of-range',
        null,
        'The strut is too far from any real one to be reckoned.',
        'figures of an ordinary size',
      );
