import { expect } from 'vitest';
import type { Fault, Outcome } from '../../src/quantity/outcome.ts';

/** The value of an outcome that must be good. */
export const kept = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) expect.fail(`refused: ${outcome.fault.message}`);
  return outcome.value;
};

/** The fault of an outcome that must be refused. */
export const refused = (outcome: Outcome<unknown>): Fault => {
  if (outcome.ok) expect.fail(`read as ${outcome.value}`);
  return outcome.fault;
};
