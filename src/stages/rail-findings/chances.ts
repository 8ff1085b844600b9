import type { Cause } from '../../reckon/rail/diagnosis.ts';

/** Odds as people say them, never more than the reckoning has: "19 in 20". */
const ODDS = [
  [99, 100],
  [19, 20],
  [9, 10],
  [4, 5],
  [3, 4],
  [2, 3],
  [1, 2],
  [1, 3],
  [1, 5],
  [1, 10],
] as const;

export const odds = (sure: number): readonly [number, number] =>
  ODDS.find(([of, all]) => sure >= of / all) ?? [1, 20];

/** A cause as a name on the page. */
const NAMES: Readonly<Record<Cause, string>> = {
  'on the line': 'good as it is',
  'laid askew': 'laid crooked',
  'wrong edge': 'read to another edge',
  'over-curl': 'too much bend all along',
  'under-curl': 'too little bend all along',
  'one slit': 'one slit alone',
  'over-curl and one slit': 'too much bend and one slit',
  'under-curl and one slit': 'too little bend and one slit',
  'two slits': 'two slits',
  unclear: 'something else',
};

export const causeName = (cause: Cause): string => NAMES[cause];
