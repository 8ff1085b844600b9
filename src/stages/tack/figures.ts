import type { RailName } from '../../ramp/design.ts';
import { jigSheets } from '../jig.ts';
import { thirdsOf } from '../rail-thirds.ts';
import type { Figure } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { tackLip } from './jig-steps.ts';
import { MATTERS } from './limits.ts';
import { bendAfter } from './thirds.ts';

const railFigures = (s: Situation, rail: RailName): readonly Figure[] => {
  const plan = s.ramp.plans.get(rail);
  if (plan === undefined || plan.slits.length === 0) return [];
  const angle = (id: string, v: number): Figure => ({
    id,
    kind: 'size',
    as: 'angle',
    value: { is: 'exact', v },
    matters: MATTERS.angle,
  });
  return [
    {
      id: `tack-lip@${rail}`,
      kind: 'dimension',
      as: 'length',
      line: 'finished line',
      value: { is: 'exact', v: tackLip(plan) },
      matters: 1,
    },
    ...thirdsOf(s, rail).flatMap(t => [
      angle(`close-each@${rail}:${t.third}`, t.slits[0]?.close_rad ?? 0),
      angle(`bend-after@${rail}:${t.third}`, bendAfter(s, rail, t.third)),
    ]),
  ];
};

/** The numbers of tacking: sheets of the jig, how far the tack line lies out, how far each slit closes, the bend so far. */
export const tackFigures = (s: Situation): readonly Figure[] => [
  { id: 'jig-sheets', kind: 'size', as: 'count', value: { is: 'exact', v: jigSheets(s) }, matters: 0.5 },
  ...s.ramp.rails.flatMap(rail => railFigures(s, rail)),
];
