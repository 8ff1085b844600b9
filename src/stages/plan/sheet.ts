import type { Finding, Offer } from '../sheet.ts';
import { sideView } from '../side-view.ts';
import type { StageSheet } from '../situation.ts';
import { planFigures } from './figures.ts';
import { placeFindings } from './place-findings.ts';
import { warningFindings } from './problem-findings.ts';
import { refusedFindings } from './refused-findings.ts';
import { rideOf } from './ride-facts.ts';
import { rideFigures } from './ride-figures.ts';
import { rideFindings } from './ride-findings.ts';
import { slitWays } from './slit-ways.ts';
import { planSteps } from './steps.ts';
import { strengthOf } from './strength-asks.ts';

export { STEPS } from './steps.ts';

/** Where no more single changes mend it, two changed together may: the design page is always one of the ways. */
const otherSizes: Offer = { remedy: 'design-by-hand', minutes: 10, plan: { field: 'shape' } };

const withThreeWays = (f: Finding): Finding =>
  f.offers.length >= 3 || f.offers.some(o => o.remedy === otherSizes.remedy)
    ? f
    : { ...f, offers: [...f.offers.slice(0, -1), otherSizes, ...f.offers.slice(-1)] };

/** The page of the plan: the curve and its lines, the ride and whether the frame bears it, the ways to slit it, what it asks of place, power, people and purse. */
export const planSheet: StageSheet = s => {
  const ride = rideOf(s);
  const strength = strengthOf(s);
  const found = rideFindings(s, ride, strength);
  return {
    stage: 'plan',
    figures: [...planFigures(s), ...rideFigures(s, ride, strength)],
    steps: planSteps(s, ride, strength),
    findings: [
      ...refusedFindings(s),
      ...found.findings.map(withThreeWays),
      ...placeFindings(s),
      ...warningFindings(s),
      ...slitWays(s),
    ],
    scene: sideView(s),
    asked: found.asked,
  };
};
