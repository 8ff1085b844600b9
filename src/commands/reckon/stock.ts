import { planStock } from '../../reckon/stock/plan-stock.ts';
import { STOCK_AIMS, type StockJob } from '../../reckon/stock/stock-job.ts';
import type { Topic } from './topic.ts';

/**
 * The answer is to stand on the screen within two seconds of the command's start. What went before the search tells how busy the machine
 * is: as much again is left for what the engine’s own clock does not see of its start, and for printing.
 */
const ANSWER_BY_MS = 1750;
const LEAST_SEARCH_MS = 250;

export const topic: Topic = {
  name: 'stock',
  summary: 'which pieces to cut from which bars, so that it takes the least',
  fields: {
    pieces: {
      is: 'list',
      least: 1,
      of: {
        is: 'record',
        fields: {
          name: { is: 'text', optional: true },
          length_mm: { is: 'number', above: 0 },
          count: { is: 'number', atLeast: 1, whole: true },
        },
      },
      about: 'up to 2000 pieces of 50 lengths',
    },
    bars: {
      is: 'list',
      least: 1,
      of: {
        is: 'record',
        fields: {
          length_mm: { is: 'number', above: 0 },
          count: {
            is: 'number',
            atLeast: 0,
            whole: true,
            optional: true,
            about: 'as many as it takes when not given',
          },
          price: { is: 'number', atLeast: 0, optional: true, about: 'of one bar' },
        },
      },
      about: 'an offcut is a bar with a count',
    },
    kerf_mm: { is: 'number', atLeast: 0, about: 'what one cut takes' },
    trim_mm: {
      is: 'number',
      atLeast: 0,
      optional: true,
      about: 'taken off one end of each bar; 0 when not given',
    },
    aim: { is: 'choice', of: STOCK_AIMS, about: 'what there is to be least of' },
  },
  example:
    `stock --pieces '[{"name":"upright","length_mm":864,"count":6},{"name":"crossmember","length_mm":1220,"count":5}]'` +
    ` --bars '[{"length_mm":6000,"price":31.5},{"length_mm":2450,"count":1,"price":0}]' --kerf_mm 2.5 --aim price`,
  run: input => {
    const now = () => performance.now();
    const budget_ms = Math.max(LEAST_SEARCH_MS, ANSWER_BY_MS - 2 * now());
    return planStock(input as StockJob, { now, budget_ms });
  },
};
