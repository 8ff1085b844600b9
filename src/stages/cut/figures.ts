import { readingKey } from '../../build/fold.ts';
import { READINGS } from '../../build/reading-names.ts';
import type { RailName } from '../../ramp/design.ts';
import { clearWidth } from '../../ramp/members.ts';
import type { Figure } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { foldingOverhang, stopLine } from './hinge.ts';

/** A caliper reading of a rail's tube, or what it waits for. */
const tubeFigure = (
  s: Situation,
  rail: RailName,
  ask: 'depth' | 'width' | 'wall',
  matters: number,
): Figure => {
  const step = READINGS.tube(rail);
  const read = s.build.readings.get(readingKey(step, ask));
  return {
    id: `tube-${ask}@${rail}`,
    kind: 'size',
    as: 'thickness',
    value: read === undefined ? { is: 'unknown', needs: step } : { is: 'exact', v: read.value },
    matters,
  };
};

const railFigures = (s: Situation, rail: RailName): readonly Figure[] => {
  const tube = { ...s.ramp.design.tube, ...s.measured.tubes.get(rail) };
  const base = s.ramp.members.find(m => m.need === `base rail@${rail}`);
  const figures: Figure[] = [
    tubeFigure(s, rail, 'depth', 0.1),
    tubeFigure(s, rail, 'width', 0.1),
    tubeFigure(s, rail, 'wall', 0.1),
    {
      id: `blank-length@${rail}`,
      kind: 'dimension',
      as: 'length',
      line: { face: 'hinge line', rail },
      value: { is: 'exact', v: s.ramp.plans.get(rail)?.cut_mm ?? 0 },
      matters: 0.5,
    },
    {
      id: `base-rail-length@${rail}`,
      kind: 'dimension',
      as: 'length',
      line: { face: 'ground', rail },
      value: { is: 'exact', v: base?.long_mm ?? 0 },
      matters: 0.5,
    },
  ];
  if (s.ramp.design.route === 'rolled') return figures;
  return [
    ...figures,
    {
      id: `stop-line@${rail}`,
      kind: 'dimension',
      as: 'length',
      line: { face: 'rail bottom face', rail },
      value: { is: 'exact', v: stopLine(tube) },
      matters: 0.5,
    },
    {
      id: `overhang@${rail}`,
      kind: 'size',
      as: 'length',
      value: { is: 'exact', v: foldingOverhang(tube) },
      matters: 20,
    },
  ];
};

/** The numbers of the cutting: tubes as measured, stop lines, lengths of blanks and straight pieces. */
export const cutFigures = (s: Situation): readonly Figure[] => [
  {
    id: 'cross-length',
    kind: 'dimension',
    as: 'length',
    line: { face: 'rail top face' },
    value: { is: 'exact', v: clearWidth(s.ramp.design) },
    matters: 0.5,
  },
  ...s.ramp.rails.flatMap(rail => railFigures(s, rail)),
];
