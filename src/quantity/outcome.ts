/**
 * A result that is either a value or a fault. Faults are data: nothing is thrown for what a person typed;
 * exceptions are for bugs.
 */
export type Outcome<T, F = Fault> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly fault: F };

/** Every way an input can be refused. The names are part of the contract of the number command. */
export type FaultCode =
  | 'unknown-topic'
  | 'unknown-field'
  | 'missing-field'
  | 'not-a-number'
  | 'wrong-unit'
  | 'out-of-range'
  | 'too-many-values'
  | 'contradiction'
  | 'no-solution'
  | 'mechanism'
  | 'too-large';

/** What is wrong, where, and what would be accepted, each in plain words. */
export type Fault = Readonly<{
  code: FaultCode;
  /** A path such as `pieces.2.length_mm`, or null when it is about no one field. */
  field: string | null;
  message: string;
  accepted: string;
}>;

export const good = <T>(value: T): { ok: true; value: T } => ({ ok: true, value });

export const refuse = (
  code: FaultCode,
  field: string | null,
  message: string,
  accepted: string,
): { ok: false; fault: Fault } => ({ ok: false, fault: { code, field, message, accepted } });
