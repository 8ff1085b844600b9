import { openFindings } from '../../coach/view.ts';
import type { Step } from '../../coach/walk.ts';
import { write } from '../../quantity/write.ts';
import { limitsOf } from '../../stages/rail-findings/limits.ts';
import { railReading } from '../../stages/rail-findings/reading.ts';
import { goNow } from './common.ts';
import type { Desk } from './desk.ts';

/** What a reading of a rail that leaves nothing to decide says: how far off it lies at worst, and how far it may. */
const lies = (desk: Desk, step: Step): string | null => {
  if (step.survey === undefined || step.survey.kind === 'sideways') return null;
  const { situation } = desk.view;
  const r = railReading(situation, step.survey.rail, [step.survey.phase]);
  const limit_mm = limitsOf(situation).smooth;
  if (r === null || r.worst_mm > limit_mm) return null;
  const mm = (v: number): string => write(v, 'length', desk.system);
  return `Rail ${r.rail} is true: ${mm(r.worst_mm)} off at worst, up to ${mm(limit_mm)} rides fine.`;
};

/** After a reading is ended: to what it found of its rail, with the next step behind it; else to the next step, and what it found in a line. */
export const afterSurvey = (desk: Desk, step: Step): void => {
  const rail = step.survey?.rail;
  const found = openFindings(desk.view).find(f => f.key.startsWith('rail') && f.key.includes(`@${rail}`));
  goNow(desk);
  if (found !== undefined) desk.push(desk.around.ways.finding(found.key));
  else {
    const said = lies(desk, step);
    if (said !== null) desk.say(said);
  }
};
