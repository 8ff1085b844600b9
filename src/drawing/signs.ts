import type { Role } from './row.ts';

/** Every state of a step or a finding that a page shows with a sign. */
export type State =
  | 'done'
  | 'next'
  | 'to-do'
  | 'stale'
  | 'skipped'
  | 'waiting'
  | 'stop'
  | 'fix'
  | 'watch'
  | 'struck';

export type Sign = Readonly<{
  /** One cell wide in every terminal that does not draw East Asian ambiguous signs wide. */
  sign: string;
  ascii: string;
  word: string;
  role: Role;
}>;

/** Sign, 7-bit twin, word and role of each state. The word always stands beside the sign; colour never stands alone. */
export const SIGNS: Readonly<Record<State, Sign>> = {
  done: { sign: '✓', ascii: 'x', word: 'done', role: 'settled' },
  next: { sign: '▸', ascii: '>', word: 'next', role: 'lead' },
  'to-do': { sign: '·', ascii: '.', word: 'to do', role: 'quiet' },
  stale: { sign: '≠', ascii: '~', word: 'stale', role: 'attention' },
  skipped: { sign: '–', ascii: '-', word: 'skipped', role: 'quiet' },
  waiting: { sign: '◌', ascii: 'o', word: 'waiting', role: 'quiet' },
  stop: { sign: '■', ascii: '#', word: 'stop', role: 'halt' },
  fix: { sign: '▲', ascii: '!', word: 'fix', role: 'attention' },
  watch: { sign: '◇', ascii: '?', word: 'watch', role: 'plain' },
  struck: { sign: '×', ascii: '/', word: 'struck', role: 'quiet' },
};

/** The sign of a state, in the signs the terminal can show. */
export const signOf = (state: State, ascii: boolean): string =>
  ascii ? SIGNS[state].ascii : SIGNS[state].sign;
