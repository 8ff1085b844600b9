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
  fit: 200_000,
  brace: 210_000,
  assemble: 220_000,
  finish: 230_000,
} as const;

export type RailPart =
  | Readonly<{ third: number; part: 'mark' | 'saw' | 'deburr' | 'close' | 'read' }>
  | Readonly<{ after: 'survey' | 'weld' | 'cold'; at?: number }>;

/** Turns that one rail has to itself: more than its last step takes; twelve rails end before the fit. */
const RAIL_ROOM = 10_000;
const THIRD_ROOM = 1000;
/** Between two rails in step: within a third, and within a round of what comes after. Twelve rails stay clear of what follows. */
const STAGGER = { third: 60, round: 1 } as const;
const ROUND_ROOM = 20;

const PARTS = { mark: 0, saw: 10, deburr: 20, close: 30, read: 40 } as const;
const AFTER = { survey: 5000, weld: 6000, cold: 8000 } as const;

/** The turn of a step of the slit route for rail number `index` (0 = A, at most 11): both rails in step, or one after the other. */
export const railTurn = (d: Design, index: number, part: RailPart): number => {
  const inStep = d.sequence === 'in step';
  const start = TURN.rails + (inStep ? 0 : index * RAIL_ROOM);
  const stagger = inStep ? index : 0;
  if ('third' in part) return start + part.third * THIRD_ROOM + stagger * STAGGER.third + PARTS[part.part];
  // At `at` both rails' rounds alternate: round 1 of A, round 1 of B, round 2 of A …
  return start + AFTER[part.after] + (part.at ?? 0) * ROUND_ROOM + stagger * STAGGER.round;
};
