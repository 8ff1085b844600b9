import { DEW_LIMITS, type DewInput, dew } from '../../reckon/coating/dew.ts';
import type { Topic } from './topic.ts';

export const topic: Topic = {
  name: 'dew',
  summary: 'the dew point, and whether steel may be painted',
  fields: {
    air_C: { is: 'number', ...DEW_LIMITS.air_C },
    humidity_pct: { is: 'number', ...DEW_LIMITS.humidity_pct, about: 'relative' },
    steel_C: {
      is: 'number',
      ...DEW_LIMITS.steel_C,
      optional: true,
      about: 'without it there is no word on paint',
    },
  },
  example: 'dew --air_C 16 --humidity_pct 70 --steel_C 14',
  run: input => dew(input as DewInput),
};
