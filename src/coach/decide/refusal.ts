import type { Fault } from '../../quantity/outcome.ts';
import type { Fills } from '../../stages/sheet.ts';

/** Why an act is refused: words under `refusals.<code>`; a fault of reading carries its own words. */
export type Refusal = Readonly<{
  code: string;
  fills?: Fills;
  field?: string;
  fault?: Fault;
  problem?: string;
}>;

export type Decided<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: Refusal };

export const no = (
  code: string,
  fills?: Fills,
  more: Partial<Refusal> = {},
): { ok: false; refusal: Refusal } => ({
  ok: false,
  refusal: { code, ...(fills === undefined ? {} : { fills }), ...more },
});
