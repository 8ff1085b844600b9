import type { Design } from '../ramp/settle.ts';

/**
 * Places in the walk over the whole build. Stages are headings, not walls: the jig and the hot-work gates come before the first
 * slit is closed, and each third of a rail is closed and tacked before its next third is sawn.
 */
export const TURN = {
  plan: 0,
  receive: 1000,
  place: 1200,
  jig: 1300,
  testWeld: 1400,
  rails: 2000,
  fit: 20_000,
  brace: 21_000,
  assemble: 22_000,
  finish: 23_000,
} as const;

export type RailPart =
  | Readonly<{ third: number; part: 'mark' | 'saw' | 'deburr' | 'close' | 'read' }>
  | Readonly<{ after: 'survey' | 'weld' | 'cold'; at?: number }>;

const PARTS = { mark: 0, saw: 10, deburr: 20, close: 30, read: 40 } as const;
const AFTER = { survey: 1000, weld: 1200, cold: 1800 } as const;

/** The turn of a step of the slit route for rail number `index` (0 = A): both rails in step, or one after the other. */
export const railTurn = (d: Design, index: number, part: RailPart): number => {
  const inStep = d.sequence === 'in step';
  const start = TURN.rails + (inStep ? 0 : index * 2000);
  const stagger = inStep ? index : 0;
  if ('third' in part) return start + part.third * 300 + stagger * 60 + PARTS[part.part];
  // At `at` both rails' rounds alternate: round 1 of A, round 1 of B, round 2 of A …
  return start + AFTER[part.after] + (part.at ?? 0) * 10 + stagger;
};
