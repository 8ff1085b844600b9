import { describe, expect, test } from 'vitest';
import { endsToKeep } from '../../../src/build/shop/ends-to-keep.ts';
import type { Shop } from '../../../src/build/shop/shop.ts';
import type { WorkedBar } from '../../../src/ramp/cutting/bars-left.ts';

const bar = (id: string, left_mm: number, more: Partial<WorkedBar> = {}): WorkedBar => ({
  id,
  from: 'bought',
  label: id,
  whole_mm: 6000,
  squared: true,
  trim_mm: 0,
  left_mm,
  sawn: [],
  ...more,
});
const sawn = [{ need: 'upright@A:3', section: '30x30x2', length_mm: 400, spoiled: false }];
const shopWith = (...offcuts: Partial<Shop['offcuts'][number]>[]): Shop =>
  ({
    offcuts: offcuts.map(o => ({ usedBy: null, from: null, section: '30x30x2', ...o })),
  }) as unknown as Shop;
const ends = (worked: readonly WorkedBar[], shop: Shop) =>
  endsToKeep([{ section: '30x30x2', worked }], shop, 'first');

describe('ends kept when the last piece of a build is cut', () => {
  test('those worth keeping, once; shorter ones are scrap', () => {
    expect(ends([bar('1', 1285), bar('2', 60)], shopWith())).toEqual([
      { kind: 'offcut-kept', section: '30x30x2', length_mm: 1285, typed: '', build: 'first' },
    ]);
    expect(ends([bar('1', 1285)], shopWith({ id: 'e', from: 'first', length_mm: 1285.2 }))).toEqual([]);
  });

  test('an offcut that was sawed is used, and what is left of it is a shorter one; one not touched lies as it lay', () => {
    const shop = shopWith({ id: 'o', length_mm: 2000 }, { id: 'p', length_mm: 900 });
    const got = ends([bar('o', 1597, { from: 'offcut', sawn }), bar('p', 900, { from: 'offcut' })], shop);
    expect(got).toEqual([
      { kind: 'offcut-used', offcut: 'o', build: 'first' },
      { kind: 'offcut-kept', section: '30x30x2', length_mm: 1597, typed: '', build: 'first' },
    ]);
  });

  test('an end kept before that was cut since is gone', () => {
    const shop = shopWith({ id: 'e', from: 'first', length_mm: 1285 });
    expect(ends([bar('1', 880, { sawn })], shop)).toEqual([
      { kind: 'offcut-kept', section: '30x30x2', length_mm: 880, typed: '', build: 'first' },
      { kind: 'offcut-used', offcut: 'e', build: 'first' },
    ]);
  });
});
