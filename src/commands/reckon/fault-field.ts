import type { Outcome } from '../../quantity/outcome.ts';

/** A kernel's outcome with its fault told under the name the field has on the command line: `exit_rad` as `exit_deg`. */
export const underFields = <T>(outcome: Outcome<T>, names: Readonly<Record<string, string>>): Outcome<T> => {
  if (outcome.ok || outcome.fault.field === null) return outcome;
  const { field } = outcome.fault;
  return {
    ok: false,
    fault: { ...outcome.fault, field: Object.hasOwn(names, field) ? (names[field] as string) : field },
  };
};
