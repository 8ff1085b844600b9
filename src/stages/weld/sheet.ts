import type { RailName } from '../../ramp/design.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import { jigScene } from '../jig.ts';
import { railFindings } from '../rail-findings.ts';
import { remedySteps } from '../remedies/steps.ts';
import type { StepDraft } from '../sheet.ts';
import type { Situation, StageSheet } from '../situation.ts';
import { slitStrip } from '../slit-strip.ts';
import { chosenSteps } from './chosen-steps.ts';
import { coldSteps, compareSteps } from './cold-steps.ts';
import { couponFindings } from './coupon-findings.ts';
import { weldFigures } from './figures.ts';
import { halfFindings, toldByPull } from './half-findings.ts';
import { heatFindings } from './heat-findings.ts';
import { jointSteps } from './joint-steps.ts';
import { railJob } from './rail-job.ts';
import { setUpSteps } from './set-up-steps.ts';
import { sideSteps } from './side-steps.ts';
import { testSteps } from './test-steps.ts';
import { topSteps } from './top-steps.ts';
import { topsFindings } from './tops-findings.ts';
import { workedSteps } from './worked-steps.ts';

/** Word keys of the steps of welding. */
export const STEPS = [
  'machine',
  'first-evening',
  'settings',
  'settings-gas',
  'settings-cored',
  'settings-cored-chart',
  'settings-rods',
  'test-piece',
  'coupons',
  'coupons-rolled',
  'coupons-again',
  'coupons-pause',
  'coupons-changed',
  'worked-slits',
  'worked-slits-rod',
  'worked-slits-shown',
  'worked-joints',
  'worked-joints-rod',
  'worked-joints-shown',
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
  'joint-settings-wire',
  'joint-settings-gap',
  'half-open-gaps',
  'half-check-tacks',
  'half-narrow-beads',
  'half-narrow-set',
  'half-narrow-rod',
] as const;

/** Everything done to one rail on this page, in order. */
const railSteps = (s: Situation, plan: RailPlan, index: number): readonly StepDraft[] => {
  if (plan.slits.length === 0) return coldSteps(s, plan, index);
  const job = railJob(s, plan, index);
  return [...sideSteps(job), ...topSteps(job), ...coldSteps(s, plan, index)];
};

/** The page of welding: the machine, the tests on spare steel, each rail slit by slit in skip order, and the rails cold. */
export const weldSheet: StageSheet = s => {
  const railScene = (rail: RailName) =>
    s.ramp.design.route === 'rolled' ? jigScene(s, rail, { railOn: 'finished line' }) : slitStrip(s, rail);
  const rails = railFindings(s, 'weld');
  return {
    stage: 'weld',
    figures: weldFigures(s),
    steps: [
      ...setUpSteps(s),
      ...testSteps(s),
      ...workedSteps(s),
      ...[...s.ramp.plans.values()].flatMap((plan, i) => railSteps(s, plan, i)),
      ...compareSteps(s),
      ...jointSteps(s),
      ...chosenSteps(s),
      ...remedySteps(s, 'weld'),
    ],
    findings: [
      ...couponFindings(s),
      ...heatFindings(s),
      ...halfFindings(s),
      ...topsFindings(s),
      ...rails.findings.filter(finding => !toldByPull(s, finding)),
    ],
    asked: rails.asked,
    scene: railScene(s.ramp.rails[0] ?? 'A'),
    railScene,
  };
};
