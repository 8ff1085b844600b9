import type { RailName } from '../../ramp/design.ts';
import type { MemberKind } from '../../ramp/members.ts';
import { pieceFindings } from '../piece-findings.ts';
import { sideView } from '../side-view.ts';
import type { StageSheet } from '../situation.ts';
import { slitStrip } from '../slit-strip.ts';
import { cutFigures } from './figures.ts';
import { kerfFindings } from './kerf-findings.ts';
import { BETWEEN_RAILS, laterSteps } from './later-steps.ts';
import { otherPlanFindings } from './other-plan.ts';
import { receiveSteps } from './receive-steps.ts';
import { slitNoteFindings } from './slit-notes.ts';
import { thirdSteps } from './third-steps.ts';
import { tubeFindings } from './tube-findings.ts';

/** Word keys of the steps of cutting. */
export const STEPS = [
  'check-steel',
  'measure-tube',
  'pair-rails',
  'pair-rails-rolled',
  'saw',
  'saw-fits',
  'rail',
  'rail-rolled',
  'clean-rail',
  'clean-rail-rolled',
  'mark-blank',
  'mark-blank-rolled',
  'test-piece',
  'base-rail',
  'plates',
  'mark-third',
  'mark-third-one',
  'saw-third',
  'saw-third-band',
  'saw-third-blade',
  'saw-third-chop',
  'deburr-third',
  'crossmembers',
  'entry',
] as const;

/** Members whose length this stage answers for; uprights and diagonals are cut, and judged, where they are fitted. */
const KINDS: readonly MemberKind[] = [
  'curved rail',
  'base rail',
  ...BETWEEN_RAILS,
  'side plate',
  'foot plate',
  'bearer',
  'entry plate',
];

/** The page of cutting: steel received and measured, blanks, the test piece, slits by thirds, and the straight pieces. */
export const cutSheet: StageSheet = s => {
  const railScene = (rail: RailName) => (s.ramp.design.route === 'rolled' ? sideView(s) : slitStrip(s, rail));
  return {
    stage: 'cut',
    figures: cutFigures(s),
    steps: [...receiveSteps(s), ...thirdSteps(s), ...laterSteps(s)],
    findings: [
      ...tubeFindings(s),
      ...otherPlanFindings(s),
      ...kerfFindings(s),
      ...slitNoteFindings(s),
      ...pieceFindings(s, KINDS, 'cut'),
    ],
    scene: railScene(s.ramp.rails[0] ?? 'A'),
    railScene,
  };
};
