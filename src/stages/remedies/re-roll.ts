import { CAREFUL_RAIL } from '../rail-findings/limits.ts';
import { type Injecting, type Offering, offer, railOf, stageOfPhase } from './remedy.ts';
import { beforeSurvey } from './turns.ts';

/** The way there and back, the person's own time (common practice). */
const MINUTES = 90;

/** A rail rolled by a fabricator goes back to the rolls. */
export const offerReRoll: Offering = c =>
  c.r.plan.slits.length > 0 || (c.r.survey.phase !== 'tacked' && c.r.survey.phase !== 'cold')
    ? []
    : [offer(c, 're-roll', MINUTES, CAREFUL_RAIL, {}, {})];

export const reRollSteps: Injecting = (s, chosen) => {
  const on = railOf(s, chosen);
  if (on === null) return [];
  const stage = stageOfPhase(chosen.plan.phase);
  return [
    {
      key: `${stage}/re-roll@${chosen.entry}`,
      stage,
      words: 're-roll',
      fills: { rail: on.rail },
      turn: beforeSurvey(s, on.index, chosen.plan.phase),
      needs: [],
      uses: [],
      minutes: [60, 120],
    },
  ];
};
