import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type KernelCase, worstError } from './kernel-case.ts';
import { errorText, KERNEL_CASES, kernelTable, withTable } from './kernel-table.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const RECKON = join(ROOT, 'src', 'reckon');
const page = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');

describe('every kernel of the table is as near to its source as it says', () => {
  test.each(KERNEL_CASES)('$kernel: $source: $about', async one => {
    expect(await worstError(one)).toBeLessThanOrEqual(one.tolerance);
  });
});

describe('the table in DEVELOPERS.md', () => {
  test('is the one that `npm run kernels` would write', async () => {
    const written = withTable(page, await kernelTable(KERNEL_CASES));
    expect(written, 'DEVELOPERS.md has lost the marks of the table').toBeDefined();
    expect(page, 'the table is behind the kernels: npm run kernels').toBe(written);
  });

  test('can be read in an editor: no line is wider than 150', async () => {
    const wide = (await kernelTable(KERNEL_CASES)).split('\n').filter(line => line.length > 150);
    expect(wide).toEqual([]);
  });

  test('has a row of every room of calculators', () => {
    const rooms = readdirSync(RECKON, { withFileTypes: true })
      .filter(entry => entry.isDirectory())
      .map(({ name }) => name);
    expect(rooms.length).toBeGreaterThan(10);
    expect([...new Set(KERNEL_CASES.map(({ kernel }) => kernel.split('/')[0]))].sort()).toEqual(rooms.sort());
  });

  test('names kernels that are there and that its cases do call', () => {
    const folder = join(import.meta.dirname, 'kernels');
    const text = readdirSync(folder).map(file => readFileSync(join(folder, file), 'utf8'));
    const called = new Set(
      text
        .flatMap(one => [
          ...one.matchAll(
            /^} from '.*\/src\/reckon\/(.+)\.ts';|^import \{.*} from '.*\/src\/reckon\/(.+)\.ts';/gm,
          ),
        ])
        .map(([, broken, whole]) => broken ?? whole),
    );
    for (const { kernel } of KERNEL_CASES) {
      expect(existsSync(join(RECKON, `${kernel}.ts`)), kernel).toBe(true);
      expect(called, kernel).toContain(kernel);
    }
  });

  test('names the mark of every source', () => {
    const unmarked = KERNEL_CASES.filter(
      ({ source }) => !/\[.*(found|memory|practice|derived).*\]/.test(source),
    );
    expect(unmarked).toEqual([]);
  });
});

describe('the table can be wrong', () => {
  const invented = (ours: number, published: number, unit = ''): KernelCase => ({
    kernel: 'curve/arc',
    source: 'invented [derived]',
    about: 'a case of this test',
    unit,
    tolerance: 0.1,
    compared: () => [
      [1, 1],
      [ours, published],
    ],
  });

  test('the worst of the values counts, in the unit or as a share', async () => {
    expect(await worstError(invented(102, 100))).toBeCloseTo(2, 12);
    expect(await worstError(invented(98, 100))).toBeCloseTo(2, 12);
    expect(await worstError(invented(-204, -200, '%'))).toBeCloseTo(2, 12);
  });

  test('no value, or no number, is no proof', async () => {
    expect(await worstError(invented(Number.NaN, 100))).toBe(Number.POSITIVE_INFINITY);
    expect(await worstError({ ...invented(1, 1), compared: () => [] })).toBe(Number.POSITIVE_INFINITY);
  });

  test('an error is told to two digits, and the last bits of a double not at all', () => {
    expect(errorText(0.23466842731, 0.5)).toBe('0.23');
    expect(errorText(11.2307, 11.5)).toBe('11');
    expect(errorText(0.0000137039, 0.0001)).toBe('1.4e-5');
    expect(errorText(3.5e-15, 1e-6)).toBe('< 1e-9');
    expect(errorText(0, 1e-6)).toBe('< 1e-9');
    expect(errorText(0, 0)).toBe('0');
  });

  test('a kernel that moved shows in the table, and a page without marks is refused', async () => {
    const before = await kernelTable([invented(100.5, 100)]);
    const after = await kernelTable([invented(100.6, 100)]);
    expect(after).not.toBe(before);
    const marked =
      '# Page\n\n<!-- kernels:begin (made by npm run kernels) -->\nold\n<!-- kernels:end -->\n\nrest\n';
    const once = withTable(marked, before);
    expect(once).toContain(before);
    expect(once).toContain('rest');
    expect(once).not.toContain('old');
    expect(withTable(once ?? '', before)).toBe(once);
    expect(withTable('# Page\n', before)).toBeUndefined();
  });
});
