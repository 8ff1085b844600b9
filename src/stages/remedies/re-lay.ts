import { arcLength } from '../../reckon/rail/rail-plan.ts';
import type { StepDraft } from '../sheet.ts';
import {
  angle,
  BENCH,
  frozenNumber,
  frozenText,
  type Injecting,
  length,
  type Offering,
  offer,
  railOf,
  signed,
  stageOfPhase,
} from './remedy.ts';
import { beforeSurvey } from './turns.ts';

/** Loosening, shifting, holding again (common practice). */
const MINUTES = 7;
/** Less gained than this is not worth loosening a clamp for, mm. */
const WORTH = 0.5;

/** The rail is good and lies crooked: it is moved across its line and turned, never slid along it. */
export const offerReLay: Offering = c => {
  const { fit, line, worst_mm } = c.r;
  if (worst_mm - fit.worst_mm < WORTH) return [];
  const shift = -fit.rigid.y_mm;
  const turn = -fit.rigid.turn_rad;
  const end = line.bend_rad;
  const beyond = line.straight_mm ?? 0;
  const lip = shift * Math.cos(end) + turn * (line.radius_mm * Math.sin(end) + beyond);
  return [
    offer(
      c,
      're-lay',
      MINUTES,
      c.best_mm,
      { shift: signed(shift), turn: { v: turn, as: 'angle', sign: true }, lip: signed(lip) },
      { shift_mm: shift, turn_rad: turn, lip_mm: lip, lip_at_mm: arcLength(line) + beyond },
    ),
  ];
};

export const reLaySteps: Injecting = (s, chosen) => {
  const on = railOf(s, chosen);
  if (on === null) return [];
  const phase = frozenText(chosen, 'phase');
  const stage = stageOfPhase(phase);
  const key = `${stage}/re-lay@${chosen.entry}`;
  const shift = frozenNumber(chosen, 'shift_mm');
  const lip = frozenNumber(chosen, 'lip_mm');
  const step: StepDraft = {
    key,
    stage,
    words: 're-lay',
    fills: {
      ...BENCH,
      rail: on.rail,
      shift: signed(shift),
      lip: signed(lip),
      turn: angle(frozenNumber(chosen, 'turn_rad')),
    },
    turn: beforeSurvey(s, on.index, phase),
    needs: [],
    uses: [],
    line: phase === 'tacked' ? 'tack line' : 'finished line',
    items: [
      { key: `${key}#entry`, name: 'entry', value: length(shift) },
      { key: `${key}#lip`, name: 'lip', value: length(lip) },
    ],
    minutes: [5, 10],
  };
  return [step];
};
