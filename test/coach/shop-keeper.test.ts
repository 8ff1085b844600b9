import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { openShopKeeper } from '../../src/coach/shop-keeper.ts';
import { writeSheet } from '../../src/machine/sheet-file.ts';
import { shopPath } from '../../src/machine/shop-file.ts';
import { tempFolder } from '../machine/temp-folder.ts';

const made = tempFolder();
afterEach(made.remove);
const now = () => new Date('2026-10-03T18:00:00Z');
const price = (value: number) =>
  ({ kind: 'price-set', section: '40x40x3', bar_mm: 6000, price: value, typed: String(value) }) as const;
const priceIn = (shop: ReturnType<typeof openShopKeeper>) => shop.shop().prices.get('40x40x3')?.get(6000);

describe('the shop beside the builds', () => {
  test('looking makes no file; the first entry does, and another build finds it', () => {
    const folder = made.make();
    const shop = openShopKeeper(join(folder, 'kicker.jsonl'), now);
    expect(priceIn(shop)).toBe(undefined);
    expect(existsSync(shopPath(folder))).toBe(false);
    expect(shop.act(price(38))).toBe(null);
    expect(priceIn(shop)).toBe(38);
    expect(priceIn(openShopKeeper(join(folder, 'launch.jsonl'), now))).toBe(38);
  });

  test('the last entry written here is taken back, and kept in the file', () => {
    const folder = made.make();
    const shop = openShopKeeper(join(folder, 'kicker.jsonl'), now);
    shop.act(price(38));
    shop.act(price(41));
    expect(shop.takeBack()).toBe(true);
    expect(priceIn(shop)).toBe(38);
    expect(shop.takeBack()).toBe(true);
    expect(shop.takeBack()).toBe(false);
    expect(
      readFileSync(shopPath(folder), 'utf8')
        .split('\n')
        .filter(l => l.includes('price-set')),
    ).toHaveLength(2);
  });

  test('two programs write in turns, and neither loses what the other wrote', () => {
    const folder = made.make();
    const one = openShopKeeper(join(folder, 'kicker.jsonl'), now);
    one.act(price(38));
    const two = openShopKeeper(join(folder, 'launch.jsonl'), now);
    two.act({ kind: 'carry-set', length_mm: 3000, typed: '3000' });
    expect(one.act(price(40))).toBe(null);
    expect(one.shop().carry_mm).toBe(3000);
    expect(priceIn(openShopKeeper(join(folder, 'kicker.jsonl'), now))).toBe(40);
  });

  test('a file that is no shop is left alone, and writing says why', () => {
    const folder = made.make();
    writeFileSync(shopPath(folder), 'not a journal\n');
    const shop = openShopKeeper(join(folder, 'kicker.jsonl'), now);
    expect(shop.act(price(38))).toMatch(/\w/);
    expect(readFileSync(shopPath(folder), 'utf8')).toBe('not a journal\n');
  });
});

test('a sheet is written beside its build under a free name, never over another', () => {
  const folder = made.make();
  const build = join(folder, 'kicker.jsonl');
  expect(writeSheet(build, 'order', '.txt', 'first')).toEqual({ ok: true, value: 'kicker-order.txt' });
  expect(writeSheet(build, 'order', '.txt', 'second')).toEqual({ ok: true, value: 'kicker-order-2.txt' });
  expect(readFileSync(join(folder, 'kicker-order.txt'), 'utf8')).toBe('first');
});
