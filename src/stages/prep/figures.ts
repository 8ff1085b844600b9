import { WEATHER } from '../arc-steps.ts';
import type { Figure, Value } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { leadOf } from './lead.ts';
import { lensFigures } from './lens.ts';
import { roomFigures } from './room.ts';
import { suppliesFigures } from './supplies-steps.ts';
import { weatherOf } from './weather.ts';

const exactOr = (v: number | null, needs: string): Value =>
  v === null ? { is: 'unknown', needs } : { is: 'exact', v };

/** The numbers of preparing: lead, dew point, how warm the steel must be, holes, room, lens, what each part uses up. */
export const prepFigures = (s: Situation): readonly Figure[] => {
  const lead = leadOf(s);
  const weather = weatherOf(s);
  const count = (pick: 'vents' | 'drains'): number => s.ramp.members.reduce((sum, m) => sum + m[pick], 0);
  return [
    { id: 'lead', kind: 'size', as: 'distance', value: exactOr(lead.m, lead.step), matters: 0.5 },
    {
      id: 'dew-point',
      kind: 'size',
      as: 'temperature',
      value: exactOr(weather?.dew_C ?? null, WEATHER),
      matters: 1,
    },
    {
      id: 'steel-least',
      kind: 'size',
      as: 'temperature',
      value: exactOr(weather?.least_C ?? null, WEATHER),
      matters: 1,
    },
    { id: 'vent-count', kind: 'size', as: 'count', value: { is: 'exact', v: count('vents') }, matters: 0.5 },
    {
      id: 'drain-count',
      kind: 'size',
      as: 'count',
      value: { is: 'exact', v: count('drains') },
      matters: 0.5,
    },
    ...roomFigures(s),
    ...lensFigures(s),
    ...suppliesFigures(s),
  ];
};
