import type { Outcome } from '../../quantity/outcome.ts';
import { fitCircle } from '../../reckon/rail/circle.ts';
import type { Topic, TopicAnswer, TopicInput } from './topic.ts';

/** A kilometre and far beyond; squares of squares still fit a number. */
const COORDINATE = { is: 'number', atLeast: -1e9, atMost: 1e9 } as const;

const run = (input: TopicInput): Outcome<TopicAnswer> =>
  fitCircle((input as { points_mm: [number, number][] }).points_mm);

export const topic: Topic = {
  name: 'circle',
  summary: 'The circle nearest to measured points, and how well they know its radius.',
  fields: {
    points_mm: {
      is: 'list',
      of: { is: 'tuple', of: [COORDINATE, COORDINATE] },
      least: 3,
      most: 2000,
      about: 'x and y of each point',
    },
  },
  example: "circle --points_mm '[[0, 0], [574, 55.5], [1148, 228], [1722, 543.5]]'",
  run,
};
