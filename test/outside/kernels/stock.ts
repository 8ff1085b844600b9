import { planStock } from '../../../src/reckon/stock/plan-stock.ts';
import { type KernelCase, kept } from '../kernel-case.ts';

/** Bars of a plan that is proven the least; of one that is not, no number. */
const bars = (bar: number, rows: readonly (readonly [length: number, count: number])[]): number => {
  const plan = kept(
    planStock({
      pieces: rows.map(([length_mm, count]) => ({ length_mm, count })),
      bars: [{ length_mm: bar }],
      kerf_mm: 0,
      aim: 'bars',
    }),
  );
  return plan.proven ? plan.bar_count : Number.NaN;
};

/** Cutting stock. The sources in full stand in stock.test.ts; 40 jobs are held against a general solver in stock-solver.test.ts. */
export const STOCK: readonly KernelCase[] = [
  {
    kernel: 'stock/plan-stock',
    source: 'paper-roll example of OR courses [memory]',
    about: '13 widths from masters of 5600: 73',
    unit: 'bars',
    tolerance: 0,
    compared: () => [
      [
        bars(5600, [
          [1380, 22],
          [1520, 25],
          [1560, 12],
          [1710, 14],
          [1820, 18],
          [1880, 18],
          [1930, 20],
          [2000, 10],
          [2050, 12],
          [2100, 14],
          [2140, 16],
          [2150, 18],
          [2200, 20],
        ]),
        73,
      ],
    ],
  },
  {
    kernel: 'stock/plan-stock',
    source: 'Chvátal, Linear Programming, ch. 13 [memory]',
    about: 'four finals from rolls of 100 in: 453',
    unit: 'bars',
    tolerance: 0,
    compared: () => [
      [
        bars(100, [
          [45, 97],
          [36, 610],
          [31, 395],
          [14, 211],
        ]),
        453,
      ],
    ],
  },
  {
    kernel: 'stock/plan-stock',
    source: 'Fieldhouse, duality gap, 1990 [memory]',
    about: 'more than the relaxation rounded up: 3',
    unit: 'bars',
    tolerance: 0,
    compared: () => [
      [
        bars(132, [
          [44, 2],
          [33, 3],
          [12, 6],
        ]),
        3,
      ],
    ],
  },
];
