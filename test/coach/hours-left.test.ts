import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import type { ShopDoing, ShopEntry } from '../../src/build/shop/entries.ts';
import { haveOf } from '../../src/build/shop/have-of.ts';
import { foldShop, learnedMinutes } from '../../src/build/shop/shop.ts';
import { doneSince, minutesLeft } from '../../src/coach/hours-left.ts';
import { newBuildEntries } from '../../src/coach/new-build.ts';
import { viewOf } from '../../src/coach/view.ts';
import { entriesOf, NOW } from '../stages/situation-for.ts';

const begun: Doing = { kind: 'build-begun', name: 'Yard kicker', system: 'metric' };
const tick = (step: string): Doing => ({ kind: 'step-ticked', step, basis: {} });
const view = (...doings: Doing[]) => viewOf(entriesOf([begun, ...doings]), NOW);
const shop = (...doings: ShopDoing[]) =>
  foldShop(
    doings.map(
      (d, i) => ({ id: `e-${i}`, n: i + 1, v: 1, at: '2026-10-03T18:00:00.000Z', ...d }) as ShopEntry,
    ),
  );
const slow: ShopDoing = { kind: 'minutes-logged', what: 'slit', count: 4, minutes: 60 };

describe('hours left', () => {
  test('as the stages have it while nothing was logged; the stages make up the build', () => {
    const v = view();
    const all = minutesLeft(v, shop(), null);
    const stages = (['plan', 'cut', 'prep', 'tack', 'weld', 'brace', 'assemble', 'finish'] as const).map(s =>
      minutesLeft(v, shop(), s),
    );
    expect(all.low).toBeCloseTo(
      stages.reduce((n, b) => n + b.low, 0),
      6,
    );
    expect(all.high).toBeCloseTo(
      stages.reduce((n, b) => n + b.high, 0),
      6,
    );
    expect(all.low).toBeLessThan(all.likely);
    expect(all.likely).toBeLessThan(all.high);
  });

  test('slits that took a quarter of an hour each: every slit still to saw is counted with that', () => {
    const v = view();
    const each = learnedMinutes(shop(slow), 'slit');
    const sawing = v.steps.filter(s => s.key.startsWith('cut/saw-third@'));
    const slits = sawing.reduce((n, s) => n + (s.items?.length ?? 0), 0);
    expect(slits).toBe(22);
    const drafts = sawing.reduce((n, s) => n + s.minutes[1], 0);
    const more = minutesLeft(v, shop(slow), 'cut').high - minutesLeft(v, shop(), 'cut').high;
    expect(more).toBeCloseTo(each.high * slits - drafts, 6);
  });

  test('a slit that is sawn leaves that much less, and is what the next minutes are for', () => {
    const before = view();
    const after = view(tick('cut/saw-third@A:1#1'), tick('cut/saw-third@A:1#2'));
    const each = learnedMinutes(shop(slow), 'slit');
    expect(
      minutesLeft(before, shop(slow), 'cut').low - minutesLeft(after, shop(slow), 'cut').low,
    ).toBeCloseTo(2 * each.low, 6);
    expect(doneSince(after, 'slit', null)).toBe(2);
    expect(doneSince(after, 'slit', '2030-01-01T00:00:00.000Z')).toBe(0);
    expect(doneSince(after, 'cut', null)).toBe(0);
  });

  test('joints are counted by the step that welds them', () => {
    const v = view(tick('brace/weld-uprights@A'));
    const uprights = v.ramp.members.filter(m => m.rail === 'A' && /upright/.test(m.kind));
    expect(doneSince(v, 'joint', null)).toBe(2 * uprights.length);
  });
});

test('a build carries the minutes its shop knew when it began to a folder that has no shop', () => {
  const begunWith = (values: Record<string, number>) => {
    const made = newBuildEntries('Yard kicker', 'metric', [], () => new Date(NOW), false, false, values);
    if (!made.ok) throw new Error(made.refusal.code);
    return viewOf(made.value, NOW);
  };
  expect(begunWith({}).build.all.map(e => e.kind)).toEqual(['build-begun']);
  const v = begunWith({ 'minutes-slit': 20, 'kerf-bars': 2.7 });
  expect(v.build.all.map(e => e.kind)).toEqual(['build-begun', 'shop-copied']);
  expect(minutesLeft(v, shop(), 'cut').low).toBeGreaterThan(minutesLeft(begunWith({}), shop(), 'cut').low);
  expect(haveOf(v.build, 'b', shop()).kerf_mm).toBe(2.7);
  const read: ShopDoing = { kind: 'saw-kerf-read', saw: 'bars', kerf_mm: 3.1, typed: '3.1' };
  expect(haveOf(v.build, 'b', shop(read)).kerf_mm).toBeGreaterThan(2.9);
});
