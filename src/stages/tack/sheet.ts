import type { RailName } from '../../ramp/design.ts';
import { jigScene } from '../jig.ts';
import { railFindings } from '../rail-findings.ts';
import { remedySteps } from '../remedies/steps.ts';
import type { StageSheet } from '../situation.ts';
import { chosenSteps } from './chosen-steps.ts';
import { tackFigures } from './figures.ts';
import { hotFigures, hotFindings, hotSteps } from './hot-supports.ts';
import { jigSteps, ownLineSteps } from './jig-steps.ts';
import { lipFindings } from './lip-findings.ts';
import { surveySteps } from './survey-steps.ts';
import { thirdFindings } from './third-findings.ts';
import { thirdSteps } from './third-steps.ts';
import { twistFindings } from './twist-findings.ts';

/** Word keys of the steps of tacking. */
export const STEPS = [
  'jig-sheet',
  'lines',
  'lines-own',
  'lines-rolled',
  'edges',
  'edges-rolled',
  'template',
  'blocks',
  'blocks-few-clamps',
  'blocks-rolled',
  'close-third',
  'close-third-gap',
  'look-third',
  'tack-rest',
  'tack-rest-shim',
  'tack-rest-press',
  'read-third',
  'survey',
  'survey-rolled',
  'sideways',
  'twist',
  'supports',
  'carry',
  'hot-plank',
  'hot-more',
  'hot-move',
  'third-open',
  'third-close',
  'twist-tack-again',
  'twist-weld-held',
  'twist-packers',
  'twist-send-back',
  'lip-mark-anew',
] as const;

/** The page of tacking: the jig, each third closed and read, and the tacked rail measured before anything is welded. */
export const tackSheet: StageSheet = s => {
  const rails = railFindings(s, 'tack');
  const railScene = (rail: RailName) =>
    jigScene(s, rail, {
      railOn: s.ramp.design.route === 'rolled' ? 'finished line' : 'tack line',
      blocks: true,
    });
  return {
    stage: 'tack',
    figures: [...tackFigures(s), ...hotFigures(s)],
    steps: [
      ...jigSteps(s),
      ...s.ramp.rails.flatMap((rail, i) => [
        ...ownLineSteps(s, rail, i),
        ...thirdSteps(s, rail, i),
        ...surveySteps(s, rail, i),
      ]),
      ...hotSteps(s),
      ...chosenSteps(s),
      ...remedySteps(s, 'tack'),
    ],
    findings: [
      ...thirdFindings(s),
      ...twistFindings(s),
      ...lipFindings(s),
      ...hotFindings(s),
      ...rails.findings,
    ],
    asked: rails.asked,
    scene: railScene(s.ramp.rails[0] ?? 'A'),
    railScene,
  };
};
