import type { Outcome } from '../../src/quantity/outcome.ts';

/** Our value, and the one that is published or was worked apart from the kernel. */
export type Compared = readonly (readonly [ours: number, published: number])[];

/** One row of the table of kernels: a kernel held against something that was not made with it. */
export type KernelCase = Readonly<{
  /** The kernel's file under src/reckon, without its ending. */
  kernel: string;
  /** Where the values are from, and their mark in brackets: found, memory, practice or derived. */
  source: string;
  about: string;
  /** `%` of the published value, or the unit in which the two are apart. */
  unit: string;
  /** What they may be apart, in that unit: what the source rounds away, unless `about` says otherwise. */
  tolerance: number;
  compared: () => Compared | Promise<Compared>;
}>;

/** The value of an outcome that must be good; this is run without a test as well. */
export const kept = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(`refused: ${outcome.fault.message}`);
  return outcome.value;
};

/** The worst error of a case in its unit. No values at all, or one that is no number, is as wrong as can be. */
export const worstError = async ({ unit, compared }: KernelCase): Promise<number> => {
  const errors = (await compared()).map(([ours, published]) =>
    unit === '%' ? Math.abs(ours / published - 1) * 100 : Math.abs(ours - published),
  );
  return errors.length > 0 && errors.every(Number.isFinite) ? Math.max(...errors) : Number.POSITIVE_INFINITY;
};

export const INCH = 25.4;
export const FOOT = 304.8;
export const KSI = 6.894757293;
export const KIP = 4448.2216153;
export const rad = (degrees: number): number => (degrees * Math.PI) / 180;
export const deg = (radians: number): number => (radians * 180) / Math.PI;
