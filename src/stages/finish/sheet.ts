import { remedySteps } from '../remedies/steps.ts';
import { sideView } from '../side-view.ts';
import type { StageSheet } from '../situation.ts';
import { anchorFigures, anchorSteps } from './anchors.ts';
import { deckFigures, deckSteps } from './deck.ts';
import { edgeAndDrainSteps } from './drains.ts';
import { crackFindings, inspectSteps, lookAgainSteps } from './looks.ts';
import { packerFigures, packerSteps } from './packers.ts';
import { paintFigures, paintSteps } from './paint.ts';
import { proofFigures, proofFindings, proofSteps } from './proof.ts';
import { rideFigures, rideSteps } from './ride.ts';

/** Keys of the words of this stage's steps. */
export const STEPS = [
  'keep-safe',
  'inspect-joints',
  'inspect',
  'inspect-rolled',
  'cracks',
  'proof',
  'packers',
  'trial-boards',
  'trial-sheets',
  'drill-boards',
  'drill-sheets',
  'edges',
  'drains',
  'paint-weather',
  'paint',
  'deck',
  'deck-bolts',
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
    ...proofFigures(s),
    ...packerFigures(s),
    ...deckFigures(s),
    ...paintFigures(s),
    ...anchorFigures(s),
    ...rideFigures(s),
  ],
  steps: [
    ...inspectSteps(s),
    ...proofSteps(s),
    ...packerSteps(s),
    ...deckSteps(s),
    ...edgeAndDrainSteps(s),
    ...paintSteps(s),
    ...anchorSteps(s),
    ...rideSteps(s),
    ...lookAgainSteps(),
    ...remedySteps(s, 'finish'),
  ],
  findings: [...crackFindings(s), ...proofFindings(s)],
  scene: sideView(s),
});
