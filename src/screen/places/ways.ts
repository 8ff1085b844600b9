import { cautionPlace } from './caution-place.ts';
import { designPlace } from './design-place.ts';
import type { Ways } from './desk.ts';
import { findingPlace, findingsPlace } from './finding-places.ts';
import { heldPlace } from './held-place.ts';
import { journalPlace } from './journal-place.ts';
import { drawingPlace, glossaryPlace, helpPlace, hurtPlace, largePlace, whyPlace } from './look-places.ts';
import { type OpeningOptions, openingPlace } from './opening-place.ts';
import { orderPlace } from './order-place.ts';
import { stagePlace } from './stage-place.ts';
import { surveyPlace } from './survey-place.ts';

/** All ways between the pages of the bench. */
export const waysBetween = (opening: () => OpeningOptions): Ways => ({
  stage: stagePlace,
  findings: stage => findingsPlace(stage, 0),
  finding: findingPlace,
  journal: journalPlace,
  why: whyPlace,
  drawing: drawingPlace,
  large: largePlace,
  order: orderPlace,
  hurt: hurtPlace,
  help: helpPlace,
  glossary: glossaryPlace,
  caution: cautionPlace,
  survey: surveyPlace,
  design: designPlace,
  opening: () => openingPlace(opening()),
  held: heldPlace,
});
