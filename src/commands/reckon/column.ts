import { good, refuse } from '../../quantity/outcome.ts';
import {
  aiscColumn,
  BUCKLING_CURVES,
  type BucklingCurve,
  enColumn,
  type Strut,
} from '../../reckon/statics/column.ts';
import type { Topic } from './topic.ts';

type ColumnInput = Omit<Strut, 'k'> &
  Readonly<{ k?: number; rule: 'AISC360' | 'EN1993'; curve?: BucklingCurve }>;

export const topic: Topic = {
  name: 'column',
  summary: 'what a strut bears before it buckles, by AISC 360 or EN 1993-1-1',
  fields: {
    yield_MPa: { is: 'number', above: 0 },
    E_MPa: { is: 'number', above: 0, about: 'modulus of elasticity; steel 210 000, AISC 199 948' },
    area_mm2: { is: 'number', above: 0 },
    gyration_mm: { is: 'number', above: 0, about: 'radius of gyration in the plane it buckles in' },
    length_mm: { is: 'number', above: 0 },
    k: { is: 'number', above: 0, optional: true, about: 'effective length over length, 1 when not given' },
    rule: { is: 'choice', of: ['AISC360', 'EN1993'] },
    curve: {
      is: 'choice',
      of: Object.keys(BUCKLING_CURVES),
      optional: true,
      about: 'buckling curve of EN 1993-1-1; c, cold-formed tube, when not given',
    },
  },
  example:
    'column --yield_MPa 235 --E_MPa 210000 --area_mm2 421 --gyration_mm 14.9 --length_mm 1200 --rule EN1993',
  run: input => {
    const { rule, curve, k = 1, ...rest } = input as ColumnInput;
    const { yield_MPa, E_MPa, area_mm2, gyration_mm, length_mm } = rest;
    const strut: Strut = { yield_MPa, E_MPa, area_mm2, gyration_mm, length_mm, k };
    if (rule === 'EN1993') return enColumn(strut, curve);
    if (curve !== undefined) {
      return refuse('contradiction', 'curve', 'AISC 360 has one buckling curve.', 'no curve, or rule EN1993');
    }
    const column = aiscColumn(strut);
    if (!column.ok) return column;
    const { ratio, elastic_MPa, critical_MPa, nominal_N, allowable_N, design_N } = column.value;
    return good({ critical_MPa, nominal_N, allowable_N, design_N, elastic_MPa, slenderness_ratio: ratio });
  },
};
