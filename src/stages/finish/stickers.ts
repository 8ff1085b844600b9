import { TURN } from '../order.ts';
import type { StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';

/** What stands on the ramp for whoever finds it: what it carries, how fast, for whom, and when nobody rides. */
export const stickerSteps = (s: Situation): readonly StepDraft[] => [
  {
    key: 'finish/stickers',
    stage: 'finish',
    words: 'stickers',
    fills: {
      use: s.ramp.design.use,
      rider: { v: s.ramp.design.rider, as: 'mass' },
      high: { v: s.ramp.lip.y_mm, as: 'length' },
    },
    turn: TURN.finish + 135,
    needs: ['finish/deck', 'finish/proof'],
    uses: ['fastest'],
    tall: ['fastest'],
    minutes: [10, 25],
  },
];
