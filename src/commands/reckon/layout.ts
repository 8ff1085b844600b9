import { good } from '../../quantity/outcome.ts';
import { layoutOf } from '../../reckon/curve/layout.ts';
import { radians } from '../../reckon/numeric/angle.ts';
import { underFields } from './fault-field.ts';
import type { Topic } from './topic.ts';

type Input = Readonly<{
  radius_mm: number;
  exit_deg: number;
  from: 'chord' | 'tangent';
  at_mm: readonly number[];
}>;

export const topic: Topic = {
  name: 'layout',
  summary: 'ordinates to mark an arc on the floor, from its chord or its tangent',
  fields: {
    radius_mm: { is: 'number', above: 0, about: 'of the line being marked' },
    exit_deg: { is: 'number', above: 0, atMost: 120, about: 'turn of the arc from end to end' },
    from: { is: 'choice', of: ['chord', 'tangent'], about: 'the straight line measured from' },
    at_mm: {
      is: 'list',
      of: { is: 'number' },
      least: 1,
      most: 10_000,
      about: 'marks along that line, from mid-chord or from the tangent point',
    },
  },
  example: 'layout --radius_mm 3000 --exit_deg 45 --from tangent --at_mm 300,600,900',
  run: input => {
    const { radius_mm, exit_deg, from, at_mm } = input as Input;
    const outcome = layoutOf({ radius_mm, exit_rad: radians(exit_deg), from, at_mm });
    return outcome.ok ? good({ points: outcome.value }) : underFields(outcome, { exit_rad: 'exit_deg' });
  },
};
