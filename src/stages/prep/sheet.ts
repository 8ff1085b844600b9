import { sideView } from '../side-view.ts';
import type { StageSheet } from '../situation.ts';
import { prepFigures } from './figures.ts';
import { fitSteps } from './fit-steps.ts';
import { openFaces } from './open-faces.ts';
import { placeSteps } from './place-steps.ts';
import { weatherFindings } from './weather-findings.ts';

/** Word keys of the steps of preparing. */
export const STEPS = [
  'place',
  'lead',
  'power',
  'power-thick',
  'power-far',
  'body',
  'weather',
  'dry-steel',
  'open-faces',
  'vents',
  'edges',
  'clean-back',
  'fit',
] as const;

/** The page of preparing: place, power, weather and person before the first arc; slit faces, holes and joints before each meets it. */
export const prepSheet: StageSheet = s => ({
  stage: 'prep',
  figures: prepFigures(s),
  steps: [...placeSteps(s), ...s.ramp.rails.flatMap((rail, i) => openFaces(s, rail, i)), ...fitSteps(s)],
  findings: weatherFindings(s),
  scene: sideView(s),
});
