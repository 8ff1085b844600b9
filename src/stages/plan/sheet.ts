import { sideView } from '../side-view.ts';
import type { StageSheet } from '../situation.ts';
import { planFigures } from './figures.ts';
import { placeFindings } from './place-findings.ts';
import { warningFindings } from './problem-findings.ts';
import { refusedFindings } from './refused-findings.ts';
import { slitWays } from './slit-ways.ts';
import { planSteps } from './steps.ts';

export { STEPS } from './steps.ts';

/** The page of the plan: the curve and its lines, the ways to slit it, what it asks of place, power, people and purse. */
export const planSheet: StageSheet = s => ({
  stage: 'plan',
  figures: planFigures(s),
  steps: planSteps(s),
  findings: [...refusedFindings(s), ...placeFindings(s), ...warningFindings(s), ...slitWays(s)],
  scene: sideView(s),
});
