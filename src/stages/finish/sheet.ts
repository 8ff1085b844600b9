import { remedySteps } from '../remedies/steps.ts';
import { sideView } from '../side-view.ts';
import type { StageSheet } from '../situation.ts';
import { anchorFigures, anchorSteps } from './anchors.ts';
import { deckFigures, deckSteps } from './deck.ts';
import { deckPieceFindings } from './deck-piece-findings.ts';
import { drainSteps } from './drains.ts';
import { edgeSteps } from './edges.ts';
import { inspectSteps, lookAgainSteps } from './looks.ts';
import { mendSteps } from './mend.ts';
import { packerFigures, packerSteps } from './packers.ts';
import { paintFigures, paintSteps } from './paint.ts';
import { proofFigures, proofFindings, proofSteps } from './proof.ts';
import { rideFigures, rideSteps } from './ride.ts';
import { stickerSteps } from './stickers.ts';
import { weldFindings } from './weld-findings.ts';
import { weldLimitFigures } from './weld-limits.ts';

/** Keys of the words of this stage's steps. */
export const STEPS = [
  'keep-safe',
  'mend',
  'mend-crack',
  'mend-upright',
  'inspect-joints',
  'inspect-across',
  'inspect',
  'inspect-rolled',
  'proof',
  'packers',
  'trial-boards',
  'trial-sheets',
  'drill-boards',
  'drill-sheets',
  'edges',
  'drains',
  'tins',
  'clean',
  'paint-weather',
  'prime',
  'top',
  'paint',
  'deck',
  'deck-bolts',
  'deck-check',
  'stickers',
  'anchors',
  'speeds',
  'first-use',
  'landings',
  'look-again',
] as const;

/** Bare steel is looked at, loaded, drilled and rounded first; paint, deck, anchors and the first ride come after, in that order. */
export const finishSheet: StageSheet = s => ({
  stage: 'finish',
  figures: [
    ...weldLimitFigures(s),
    ...proofFigures(s),
    ...packerFigures(s),
    ...deckFigures(s),
    ...paintFigures(s),
    ...anchorFigures(s),
    ...rideFigures(s),
  ],
  steps: [
    ...mendSteps(s),
    ...inspectSteps(s),
    ...proofSteps(s),
    ...packerSteps(s),
    ...deckSteps(s),
    ...edgeSteps(s),
    ...drainSteps(s),
    ...paintSteps(s),
    ...stickerSteps(s),
    ...anchorSteps(s),
    ...rideSteps(s),
    ...lookAgainSteps(s),
    ...remedySteps(s, 'finish'),
  ],
  findings: [...deckPieceFindings(s), ...weldFindings(s), ...proofFindings(s)],
  scene: sideView(s),
});
