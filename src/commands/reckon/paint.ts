import { PAINT_LIMITS, type PaintInput, paint } from '../../reckon/coating/paint.ts';
import type { Topic } from './topic.ts';

export const topic: Topic = {
  name: 'paint',
  summary: 'litres of paint for a surface',
  fields: {
    area_m2: { is: 'number', ...PAINT_LIMITS.area_m2 },
    solids_pct: {
      is: 'number',
      ...PAINT_LIMITS.solids_pct,
      about: 'of the paint’s volume, what stays as film',
    },
    film_um: { is: 'number', ...PAINT_LIMITS.film_um, about: 'of one coat, dry' },
    coats: { is: 'number', ...PAINT_LIMITS.coats },
    loss_pct: {
      is: 'number',
      ...PAINT_LIMITS.loss_pct,
      about: 'what does not end on the steel: brush 5 to 10, spray can on tube 50 to 65',
    },
  },
  example: 'paint --area_m2 3.4 --solids_pct 48 --film_um 50 --coats 2 --loss_pct 8',
  run: input => paint(input as PaintInput),
};
