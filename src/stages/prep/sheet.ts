import { sideView } from '../side-view.ts';
import type { StageSheet } from '../situation.ts';
import { aloneFindings } from './alone.ts';
import { discFindings, discSteps } from './disc-speed.ts';
import { prepFigures } from './figures.ts';
import { fitSteps } from './fit-steps.ts';
import { openFaces } from './open-faces.ts';
import { placeSteps } from './place-steps.ts';
import { steelStep } from './steel-and-cleaner.ts';
import { suppliesFindings } from './supplies-findings.ts';
import { suppliesSteps } from './supplies-steps.ts';
import { discsFindings, discsLeftSteps } from './thin-discs.ts';

/** Word keys of the steps of preparing. */
export const STEPS = [
  'steel',
  'discs',
  'disc-fits',
  'discs-left',
  'room',
  'place',
  'lead',
  'power',
  'power-thick',
  'power-far',
  'lens',
  'body',
  'weather',
  'weather-again',
  'dry-steel',
  'other-place',
  'place-again',
  'other-tube',
  'other-cleaner',
  'darker-lens',
  'other-day',
  'shelter',
  'move-air',
  'watch',
  'watch-late',
  'supplies-gas',
  'supplies-co2',
  'supplies-wire',
  'supplies-rods',
  'open-faces',
  'vents',
  'edges',
  'clean-back',
  'fit',
] as const;

/** The page of preparing: steel and discs, place, power, person and weather before the first arc; what each part uses up; slit faces, holes and joints. */
export const prepSheet: StageSheet = s => ({
  stage: 'prep',
  figures: prepFigures(s),
  steps: [
    steelStep(s),
    ...discSteps(s),
    ...discsLeftSteps(s),
    ...placeSteps(s),
    ...suppliesSteps(s),
    ...s.ramp.rails.flatMap((rail, i) => openFaces(s, rail, i)),
    ...fitSteps(s),
  ],
  findings: [...discFindings(s), ...suppliesFindings(s), ...discsFindings(s), ...aloneFindings(s)],
  scene: sideView(s),
});
