import { jigScene } from '../jig.ts';
import type { StageSheet } from '../situation.ts';
import { slitStrip } from '../slit-strip.ts';
import { chosenSteps } from './chosen-steps.ts';
import { weldFigures } from './figures.ts';
import { halfFindings } from './half-findings.ts';
import { jointSteps } from './joint-steps.ts';
import { coldSteps, compareSteps, slitRailSteps } from './rail-steps.ts';
import { setUpSteps } from './set-up-steps.ts';
import { topsFindings } from './tops-findings.ts';

/** Word keys of the steps of welding. */
export const STEPS = [
  'machine',
  'first-evening',
  'settings',
  'settings-gas',
  'settings-cored',
  'settings-rods',
  'test-piece',
  'coupons',
  'coupons-rolled',
  'sides-first',
  'sides-first-lying',
  'half-survey',
  'sides-rest',
  'sides-rest-lying',
  'tops-odd',
  'tops-odd-in-step',
  'read-tops',
  'tops-even',
  'tops-even-narrow',
  'tops-even-full',
  'tops-even-half',
  'cool',
  'read-bend',
  'cold-survey',
  'cold-survey-rolled',
  'cold-sideways',
  'compare',
  'joint-settings',
  'joint-settings-gap',
  'half-open-gaps',
  'half-check-tacks',
  'half-narrow-beads',
] as const;

/** The page of welding: the machine, the tests on spare steel, each rail slit by slit in skip order, and the rails cold. */
export const weldSheet: StageSheet = s => {
  const rail = s.ramp.rails[0] ?? 'A';
  return {
    stage: 'weld',
    figures: weldFigures(s),
    steps: [
      ...setUpSteps(s),
      ...[...s.ramp.plans.values()].flatMap((plan, i) => [
        ...(plan.slits.length === 0 ? [] : slitRailSteps(s, plan, i)),
        ...coldSteps(s, plan, i),
      ]),
      ...compareSteps(s),
      ...jointSteps(s),
      ...chosenSteps(s),
    ],
    findings: [...halfFindings(s), ...topsFindings(s)],
    scene:
      s.ramp.design.route === 'rolled' ? jigScene(s, rail, { railOn: 'finished line' }) : slitStrip(s, rail),
  };
};
