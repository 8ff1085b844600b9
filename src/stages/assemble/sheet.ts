import { frameFindings } from '../frame-findings.ts';
import { remedySteps } from '../remedies/steps.ts';
import { sideView } from '../side-view.ts';
import type { StageSheet } from '../situation.ts';
import { entryFigures, entrySteps } from './entry.ts';
import { helpSteps } from './help.ts';
import { movingFigures, movingSteps } from './moving.ts';
import { setUpFigures, setUpSteps } from './set-up.ts';
import { squareUpFigures, squareUpSteps } from './square-up.ts';
import { standUpFigures, standUpSteps } from './stand-up.ts';

/** Keys of the words of this stage's steps. */
export const STEPS = [
  'help',
  'help-enough',
  'help-few',
  'trim-rails',
  'pads',
  'pack-base',
  'props',
  'props-alone',
  'crossmembers',
  'width',
  'diagonals',
  'twist',
  'weld-joints',
  'weld',
  'stand-up',
  'stand-up-few',
  'feet',
  'lugs',
  'way',
  'move-out',
  'move-out-slide',
  'move-out-trolley',
  'move-out-rope',
  'bearers',
  'entry-plate',
] as const;

/** Side frames become a frame: level, parallel, square and free of twist before it is welded, then onto its feet. */
export const assembleSheet: StageSheet = s => ({
  stage: 'assemble',
  figures: [
    ...setUpFigures(s),
    ...squareUpFigures(s),
    ...standUpFigures(s),
    ...movingFigures(s),
    ...entryFigures(s),
  ],
  steps: [
    ...helpSteps(s),
    ...setUpSteps(s),
    ...squareUpSteps(s),
    ...standUpSteps(s),
    ...movingSteps(s),
    ...entrySteps(s),
    ...remedySteps(s, 'assemble'),
  ],
  findings: frameFindings(s),
  scene: sideView(s),
});
