import { railTurn, TURN } from '../order.ts';
import type { Situation } from '../situation.ts';

/** Turns that one side frame takes in the walk of bracing. */
const SIDE = 100;

/** Place of a remedy's steps in the walk: right before the survey that tells what came of it, in the order given by `at`. */
export const beforeSurvey = (s: Situation, index: number, phase: unknown, at = 0): number => {
  const after = phase === 'tacked' ? 'survey' : phase === 'half-welded' ? 'weld' : 'cold';
  if (phase === 'braced' || phase === 'unclamped') return TURN.brace + index * SIDE + 60 + at / 10;
  return railTurn(s.ramp.design, index, { after }) - 1 + at / 10;
};

/** Place before the base rail is held and the uprights are cut, and place after the side frame was let go and read. */
export const beforeUprights = (index: number, at = 0): number => TURN.brace + index * SIDE - 1 + at / 10;
export const afterLetGo = (index: number): number => TURN.brace + index * SIDE + 90;
