import type { RailName } from '../../ramp/design.ts';
import type { Member } from '../../ramp/members.ts';
import type { Situation } from '../situation.ts';

/** Uprights of one side frame in the order they go in: the lip upright first, then from the lip down. */
export const uprightsOf = (s: Situation, rail: RailName): readonly Member[] =>
  s.ramp.members.filter(m => m.rail === rail && (m.kind === 'lip upright' || m.kind === 'upright'));

/** Diagonals of one side frame, the bay at the lip first. */
export const diagonalsOf = (s: Situation, rail: RailName): readonly Member[] =>
  s.ramp.members.filter(m => m.rail === rail && m.kind === 'diagonal');

/** What is written on the piece: the flat it stands on, or lip. */
export const standName = (m: Member): string => (m.flat === undefined ? 'lip' : String(m.flat));

/** Keys of the steps of one side frame: said once here, since ticks of one step open gates of another. */
export const KEYS = {
  hold: (rail: RailName) => `brace/hold-base@${rail}`,
  forced: (rail: RailName) => `brace/forced@${rail}`,
  uprights: (rail: RailName) => `brace/uprights@${rail}`,
  join: (rail: RailName) => `brace/join-entry@${rail}`,
  fit: (rail: RailName) => `brace/fit-uprights@${rail}`,
  joints: (rail: RailName) => `brace/weld-joints@${rail}`,
  weld: (rail: RailName) => `brace/weld-uprights@${rail}`,
  diagonals: (rail: RailName) => `brace/diagonals@${rail}`,
  weldDiagonals: (rail: RailName) => `brace/weld-diagonals@${rail}`,
  clamps: (rail: RailName) => `brace/clamps@${rail}`,
  survey: (rail: RailName) => `brace/survey@${rail}`,
} as const;
