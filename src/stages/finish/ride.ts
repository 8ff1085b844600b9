import { TURN } from '../order.ts';
import type { Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { anchorGate } from './anchors.ts';
import { crackGate } from './looks.ts';
import { engineerGate, proofGate } from './proof.ts';

/** Free ground behind the landing and beside it, m (found in reports of EN 14974: 5 m behind a jump ramp, 2 m all round). */
const BEHIND_m = 5;
const BESIDE_m = 2;
/** Speed is read so many times at the foot before anybody leaves the lip (common practice). */
const SPEED_READS = 5;

/** What is done before and at the first rides, in this order. */
const FIRST: readonly string[] = [
  'ground',
  'people',
  'kit',
  'up-and-back',
  'speed',
  'roll-off',
  'look-1',
  'look-5',
];

/** Who rides when, on what ground, and how the unfinished ramp is kept from those who should not. */
export const rideSteps = (s: Situation): readonly StepDraft[] => [
  {
    key: 'finish/keep-safe',
    stage: 'finish',
    words: 'keep-safe',
    fills: {},
    // From the evening it stands on its feet: anyone who finds it will try it.
    turn: TURN.finish - 10,
    needs: ['assemble/feet'],
    uses: [],
    minutes: [5, 10],
  },
  {
    key: 'finish/first-use',
    stage: 'finish',
    words: 'first-use',
    fills: {
      behind: { v: BEHIND_m, as: 'distance', step: 1 },
      beside: { v: BESIDE_m, as: 'distance', step: 1 },
      reads: SPEED_READS,
      rider: { v: s.ramp.design.rider, as: 'mass' },
    },
    turn: TURN.finish + 150,
    needs: [
      'finish/cracks',
      'finish/proof',
      'finish/edges',
      'finish/drains',
      'finish/deck',
      'finish/anchors',
    ],
    uses: ['fastest'],
    tall: ['fastest'],
    items: FIRST.map(
      (what, k): Item => ({
        key: `finish/first-use#${what}`,
        name: String(k + 1),
        note: { words: `says.finish-first-${what}` },
      }),
    ),
    gates: [crackGate(s), anchorGate(s), proofGate(s), engineerGate(s)],
    cautions: ['first-ride'],
    minutes: [60, 120],
  },
];
