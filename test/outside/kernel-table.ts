import { type KernelCase, worstError } from './kernel-case.ts';
import { CURVE } from './kernels/curve.ts';
import { HANDLING_AND_COATING } from './kernels/handling-and-coating.ts';
import { RAIL } from './kernels/rail.ts';
import { RIDE } from './kernels/ride.ts';
import { STATICS } from './kernels/statics.ts';
import { STEEL } from './kernels/steel.ts';
import { STOCK } from './kernels/stock.ts';
import { STRENGTH } from './kernels/strength.ts';
import { WELDING } from './kernels/welding.ts';

/** Every row of the table of kernels, in the order of the rooms of src/reckon. */
export const KERNEL_CASES: readonly KernelCase[] = [
  ...CURVE,
  ...STEEL,
  ...STATICS,
  ...STRENGTH,
  ...RAIL,
  ...STOCK,
  ...WELDING,
  ...RIDE,
  ...HANDLING_AND_COATING,
];

/** Below this an error is the last bits of a double, which are not the same on every machine. */
const NOTHING = 1e-9;

const plain = (value: number): string => (value >= 1e-4 || value === 0 ? `${value}` : value.toExponential());

/** An error to two digits, so that the table is the same wherever it is made; nothing at all only where nothing is allowed. */
export const errorText = (error: number, tolerance: number): string => {
  if (error === 0 && tolerance === 0) return '0';
  return error < NOTHING ? `< ${NOTHING}` : plain(Number(error.toPrecision(2)));
};

const withUnit = (value: string, unit: string): string => `${value} ${unit}`.trimEnd();

const HEAD = ['kernel', 'source [mark]', 'case', 'tolerance', 'worst error'] as const;

/** The table as it stands in DEVELOPERS.md, its columns as wide as their widest cell. */
export const kernelTable = async (cases: readonly KernelCase[]): Promise<string> => {
  const rows = await Promise.all(
    cases.map(async one => [
      one.kernel,
      one.source,
      one.about,
      withUnit(plain(one.tolerance), one.unit),
      withUnit(errorText(await worstError(one), one.tolerance), one.unit),
    ]),
  );
  const widths = HEAD.map((head, n) => Math.max(head.length, ...rows.map(row => row[n]?.length ?? 0)));
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell, n) => cell.padEnd(widths[n] ?? 0)).join(' | ')} |`;
  return [line(HEAD), `|${widths.map(width => '-'.repeat(width + 2)).join('|')}|`, ...rows.map(line)].join(
    '\n',
  );
};

const BEGIN = '<!-- kernels:begin (made by npm run kernels) -->';
const END = '<!-- kernels:end -->';

/** A page with the table between its two marks put in anew; undefined when the marks are not there. */
export const withTable = (page: string, table: string): string | undefined => {
  const [from, to] = [page.indexOf(BEGIN), page.indexOf(END)];
  if (from < 0 || to < from) return undefined;
  return `${page.slice(0, from + BEGIN.length)}\n\n${table}\n\n${page.slice(to)}`;
};
