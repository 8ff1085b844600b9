import { describe, expect, test } from 'vitest';
import { fold } from '../../../src/build/fold.ts';
import { type ShopDoing, type ShopEntry, understandShop } from '../../../src/build/shop/entries.ts';
import { haveOf } from '../../../src/build/shop/have-of.ts';
import {
  foldShop,
  learnedKerf,
  learnedMinutes,
  plannedKerf,
  shopCopy,
} from '../../../src/build/shop/shop.ts';
import { entriesOf } from '../../stages/situation-for.ts';

const AT = '2026-10-03T18:00:00.000Z';
const entries = (...doings: ShopDoing[]): ShopEntry[] =>
  doings.map((d, i) => ({ id: `e-${i + 1}`, n: i + 1, v: 1, at: AT, ...d }) as ShopEntry);
const shop = (...doings: ShopDoing[]) => foldShop(entries(...doings));

describe('the shop as its entries tell it', () => {
  test('prices are kept by section and length, the last one counts', () => {
    const s = shop(
      { kind: 'price-set', section: '40x40x3', bar_mm: 6000, price: 38, typed: '38' },
      { kind: 'price-set', section: '40x40x3', bar_mm: 6000, price: 41.5, typed: '41.5' },
    );
    expect(s.prices.get('40x40x3')?.get(6000)).toBe(41.5);
    expect(s.pricedAt).toBe(AT);
  });

  test('an entry taken back counts no more, and order does not matter', () => {
    const list = entries(
      { kind: 'offcut-kept', section: '40x40x3', length_mm: 1200, typed: '1200' },
      { kind: 'entry-struck', target: 'e-1' },
    );
    expect(foldShop(list).offcuts).toEqual([]);
    expect(foldShop([...list].reverse()).offcuts).toEqual([]);
  });

  test('an offcut used for one build is gone for all others', () => {
    const s = shop(
      { kind: 'offcut-kept', section: '40x40x3', length_mm: 1200, typed: '1200' },
      { kind: 'bars-bought', build: 'b-1', bars: [], offcuts: ['e-1'] },
    );
    const build = fold(entriesOf([{ kind: 'build-begun', name: 'yard', system: 'metric' }]));
    expect([...haveOf(build, 'b-1', s).offcuts.keys()]).toEqual(['40x40x3']);
    expect([...haveOf(build, 'b-2', s).offcuts.keys()]).toEqual([]);
  });

  test('what a build leaves goes to the next one, never back into its own list', () => {
    const s = shop({ kind: 'offcut-kept', section: '30x30x2', length_mm: 900, typed: '', build: 'b-1' });
    const build = fold(entriesOf([{ kind: 'build-begun', name: 'yard', system: 'metric' }]));
    expect(haveOf(build, 'b-1', s).offcuts.size).toBe(0);
    expect(haveOf(build, 'b-2', s).offcuts.get('30x30x2')?.[0]?.length_mm).toBe(900);
  });

  test('a line that is of no kind, or does not hold what its kind holds, is set aside in words', () => {
    const stored = { id: 'x', n: 1, v: 1, at: AT };
    expect(understandShop({ ...stored, kind: 'forge-lit' }).is).toBe('newer');
    expect(
      understandShop({ ...stored, kind: 'price-set', section: '40x40x3', bar_mm: -1, price: 1, typed: '' })
        .is,
    ).toBe('unfit');
    expect(understandShop({ ...stored, kind: 'aim-set', aim: 'bars' }).is).toBe('current');
  });
});

describe('what is learned', () => {
  test('without readings the usual range stands', () => {
    const kerf = learnedKerf(shop(), 'bars');
    expect(kerf.count).toBe(0);
    expect(kerf.low).toBeCloseTo(2.5, 9);
    expect(kerf.high).toBeCloseTo(3.2, 9);
    expect(plannedKerf(shop())).toBe(null);
  });

  test('the saw that is named says what is usual', () => {
    const s = shop({ kind: 'machine-set', machine: 'bar saw', saw: 'band saw' });
    expect(plannedKerf(s)).toBe(1.2);
    expect(learnedKerf(s, 'bars').high).toBeCloseTo(1.2, 9);
  });

  const minutes = (count: number, each: number): ShopDoing => ({
    kind: 'minutes-logged',
    what: 'cut',
    count,
    minutes: count * each,
  });

  test('every batch narrows the band about what was logged', () => {
    const one = learnedMinutes(shop(minutes(10, 4)), 'cut');
    const five = learnedMinutes(shop(...Array.from({ length: 5 }, () => minutes(10, 4))), 'cut');
    expect(one.low).toBeLessThan(five.low);
    expect(five.high).toBeLessThan(one.high);
    expect(Math.abs(five.likely - 4)).toBeLessThan(Math.abs(one.likely - 4));
    expect(five.low).toBeLessThan(five.likely);
  });

  test('one slip of the pen among many does not move it far', () => {
    const good = [1, 2, 3, 4, 5, 6].map(() => minutes(10, 4));
    const slipped = learnedMinutes(shop(...good, minutes(10, 400)), 'cut');
    expect(slipped.likely).toBeLessThan(4.5);
  });

  test('the kerf planned with is the most that is believed, so the last piece is not short', () => {
    const s = shop(
      { kind: 'saw-kerf-read', saw: 'bars', kerf_mm: 2.6, typed: '2.6' },
      { kind: 'saw-kerf-read', saw: 'bars', kerf_mm: 2.7, typed: '2.7' },
    );
    const kerf = learnedKerf(s, 'bars');
    expect(plannedKerf(s)).toBe(kerf.high);
    expect(kerf.likely).toBeGreaterThan(2.6);
    expect(kerf.likely).toBeLessThan(2.85);
  });

  test('a build’s copy holds what was read or set, and nothing that is merely usual', () => {
    expect(shopCopy(shop())).toEqual({});
    const copy = shopCopy(
      shop(minutes(10, 4), { kind: 'price-set', section: '40x40x3', bar_mm: 6000, price: 38, typed: '38' }),
    );
    expect(copy['price 40x40x3 6000']).toBe(38);
    expect(copy['minutes-cut']).toBeGreaterThan(3.9);
    expect(Object.keys(copy)).toHaveLength(2);
  });
});
