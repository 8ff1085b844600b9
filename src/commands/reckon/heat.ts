import { HEAT_LIMITS, type HeatInput, heatInput } from '../../reckon/welding/heat.ts';
import { PROCESSES } from '../../reckon/welding/process.ts';
import type { Topic } from './topic.ts';

export const topic: Topic = {
  name: 'heat',
  summary: 'heat that an arc puts into a millimetre of weld',
  fields: {
    volts: { is: 'number', ...HEAT_LIMITS.volts },
    amps: { is: 'number', ...HEAT_LIMITS.amps },
    travel_mm_s: { is: 'number', ...HEAT_LIMITS.travel_mm_s, about: 'along the seam' },
    process: {
      is: 'choice',
      of: PROCESSES,
      about: 'solid wire under gas, self-shielded cored wire, or covered rods',
    },
  },
  example: 'heat --volts 18 --amps 110 --travel_mm_s 6 --process gmaw',
  run: input => heatInput(input as HeatInput),
};
