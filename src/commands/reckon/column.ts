import { good, refuse } from '../../quantity/outcome.ts';
import {
  aiscColumn,
  BUCKLING_CURVES,
  type BucklingCurve,
  enColumn,
  type Strut,
} from '../../reckon/statics/column.ts';
import { AISC_E_MPA, STEEL_E_MPA } from '../../reckon/steel/steel.ts';
import type { Topic } from './topic.ts';

type ColumnInput = Omit<Strut, 'k' | 'E_MPa'> &
  Readonly<{ k?: number; E_MPa?: number; rule: 'AISC360' | 'EN1993'; curve?: BucklingCurve }>;

/** AISC 360 E2 advises effective length over radius of gyration to 200 [memory]. */
const noteFor = (ratio: number): string =>
  ratio > 200
    ? 'Stop, ask an engineer: the strut is longer than 200 times its radius of gyration.'
    : 'A guide to plain compression of a straight strut, no approval. Local codes and licensed engineers decide.';

export const topic: Topic = {
  name: 'column',
  summary: 'what a strut bears before it buckles, by AISC 360 or EN 1993-1-1',
  fields: {
    yield_MPa: { is: 'number', above: 0 },
    E_MPa: {
      is: 'number',
      above: 0,
      optional: true,
      about: `${STEEL_E_MPA} when not given; AISC tables have ${AISC_E_MPA}`,
    },
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
  example: 'column --yield_MPa 235 --area_mm2 421 --gyration_mm 14.9 --length_mm 1200 --rule EN1993',
  run: input => {
    const { rule, curve, k = 1, E_MPa = STEEL_E_MPA, ...rest } = input as ColumnInput;
    const { yield_MPa, area_mm2, gyration_mm, length_mm } = rest;
    const strut: Strut = { yield_MPa, E_MPa, area_mm2, gyration_mm, length_mm, k };
    const note = noteFor((k * length_mm) / gyration_mm);
    if (rule === 'EN1993') {
      const column = enColumn(strut, curve);
      return column.ok ? good({ ...column.value, note }) : column;
    }
    if (curve !== undefined) {
      return refuse('contradiction', 'curve', 'AISC 360 has one buckling curve.', 'no curve, or rule EN1993');
    }
    const column = aiscColumn(strut);
    if (!column.ok) return column;
    const { ratio, elastic_MPa, critical_MPa, nominal_N, allowable_N, design_N } = column.value;
    return good({
      critical_MPa,
      nominal_N,
      allowable_N,
      design_N,
      elastic_MPa,
      slenderness_ratio: ratio,
      note,
    });
  },
};
