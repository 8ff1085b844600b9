import { good } from '../../quantity/outcome.ts';
import { linesOf } from '../../reckon/curve/lines.ts';
import { radians } from '../../reckon/numeric/angle.ts';
import { underFields } from './fault-field.ts';
import type { Topic } from './topic.ts';

export const topic: Topic = {
  name: 'lines',
  summary: 'the lines of a curved rail under its deck, with radius, length and lip of each',
  fields: {
    radius_mm: { is: 'number', above: 0, about: 'of the deck top' },
    exit_deg: { is: 'number', above: 0, atMost: 120, about: 'slope at the lip' },
    deck_mm: { is: 'number', atLeast: 0, about: 'thickness of the deck' },
    depth_mm: { is: 'number', above: 0, about: 'of the tube, deck side to underside' },
    wall_mm: { is: 'number', above: 0, about: 'of the tube' },
  },
  example: 'lines --radius_mm 3000 --exit_deg 45 --deck_mm 18 --depth_mm 40 --wall_mm 3',
  run: input => {
    const { exit_deg, ...sizes } = input as Readonly<Record<string, number>>;
    const { radius_mm, deck_mm, depth_mm, wall_mm } = sizes as Sizes;
    const outcome = linesOf({ radius_mm, exit_rad: radians(exit_deg as number), deck_mm, depth_mm, wall_mm });
    return outcome.ok ? good({ lines: outcome.value }) : underFields(outcome, { exit_rad: 'exit_deg' });
  },
};

type Sizes = Readonly<{ radius_mm: number; deck_mm: number; depth_mm: number; wall_mm: number }>;
