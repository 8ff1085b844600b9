/** Exit codes, one table for all commands (after sysexits where one fits). */
export const EXIT = {
  done: 0,
  /** Done, and the answer is no. */
  no: 1,
  /** Wrong usage, or a value refused. */
  refused: 2,
  noInput: 66,
  bug: 70,
  cannotCreate: 73,
  cannotWrite: 74,
  heldByOther: 75,
} as const;

/** Every object printed with --json carries it. */
export const SCHEMA_VERSION = 1;
