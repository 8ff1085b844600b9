import { faceOffset, spotAtSlope } from '../../ramp/curve.ts';
import type { LineFace } from '../../ramp/design.ts';
import { curveOf } from '../../ramp/rail-plan.ts';
import { deckThickness } from '../../ramp/settle.ts';
import type { Figure } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { MATTERS } from './matters.ts';
import { liftPeople } from './place.ts';
import { pullWays } from './pull-ways.ts';
import { railFigures } from './rail-figures.ts';

const dimension = (id: string, v: number, face: LineFace): Figure => ({
  id,
  kind: 'dimension',
  as: 'length',
  line: { face },
  value: { is: 'exact', v },
  matters: MATTERS.length,
});

/** Radius, arc and lip point of every line, each by its own name: a bare radius is the wrong one three times in four. */
const FACES: readonly (readonly [string, Exclude<LineFace, 'ground'>])[] = [
  ['deck', 'deck top'],
  ['top-face', 'rail top face'],
  ['back-wall', 'hinge line'],
  ['bottom-face', 'rail bottom face'],
];

const lineFigures = (s: Situation): readonly Figure[] => {
  const c = curveOf(s.ramp.design);
  return FACES.flatMap(([name, face]): Figure[] => {
    const offset = faceOffset(c, face);
    const lip = spotAtSlope(c, offset, c.exit_rad, c.straight_mm);
    return [
      dimension(`${name}-radius`, c.radius_mm + offset, face),
      dimension(`${name}-arc`, (c.radius_mm + offset) * c.exit_rad, face),
      dimension(`${name}-lip-run`, lip.x, face),
      dimension(`${name}-lip-height`, lip.y, face),
    ];
  });
};

/** The numbers the plan gives: the curve, its lines, the entry, masses, the outside, and each rail's slits. */
export const planFigures = (s: Situation): readonly Figure[] => {
  const { design: d, entry, lip, masses, envelope } = s.ramp;
  const size = (id: string, as: Figure['as'], v: number, matters: number): Figure =>
    ({ id, kind: 'size', as, value: { is: 'exact', v }, matters }) as Figure;
  return [
    dimension('lip-height', lip.y_mm, 'deck top'),
    dimension('run', lip.x_mm, 'deck top'),
    dimension('radius', d.arc.radius_mm, 'deck top'),
    size('exit', 'angle', d.arc.exit_rad, MATTERS.angle),
    dimension('arc', d.arc.arc_mm, 'deck top'),
    size('straight', 'length', d.straight, MATTERS.length),
    size('deck-thickness', 'thickness', deckThickness(d.deck), 0.5),
    size('rail-count', 'count', s.ramp.rails.length, 0.5),
    ...lineFigures(s),
    dimension('entry-length', entry.length_mm, 'ground'),
    size('entry-share', 'percent', entry.share * 100, MATTERS.share),
    size('mass-frame', 'mass', masses.frame_kg, MATTERS.mass),
    size('mass-all', 'mass', masses.all_kg, MATTERS.mass),
    size('lift-people', 'count', liftPeople(s), 0.5),
    size('frame-length', 'length', envelope.length_mm, 5),
    size('frame-width', 'length', envelope.width_mm, 5),
    size('frame-height', 'length', envelope.height_mm, 5),
    ...s.ramp.rails.flatMap(rail => railFigures(s, rail)),
    ...pullWays(s),
  ];
};
