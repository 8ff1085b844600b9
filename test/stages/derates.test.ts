import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { deratesOf } from '../../src/stages/derates.ts';
import type { Situation } from '../../src/stages/situation.ts';
import { read, set, tick } from './doings.ts';
import { NOW, situationFor } from './situation-for.ts';
import { begun } from './weld-doings.ts';

const WEEK = 7 * 86_400_000;
const WITH = { 'weld-kind': 1, 'weld-wire': 0.8, 'weld-wall': 3, 'joint-wall': 2 };
const POST = set('post', { depth_mm: 30, width_mm: 30, wall_mm: 2 });
const machine = (kind: number, wire: number) => [
  read('weld/machine', 'kind', kind),
  read('weld/machine', 'wire', wire),
];
/** A piece broken and looked at: 1 it held. */
const broke = (piece: string, look = 1, round = ''): Doing =>
  ({ ...read(`weld/coupons${round}`, piece, look), basis: WITH }) as Doing;

/** What is seen so many weeks after the last of these doings. */
const later = (doings: readonly Doing[], weeks: number): Situation => ({
  ...situationFor(doings),
  now: NOW + weeks * WEEK,
});
const all = [...machine(1, 0.8), broke('tee'), broke('slit'), broke('sawn')];

describe('half strength until the own piece held (bench rule; common practice)', () => {
  test('nothing broken yet: slits and joints at half', () => {
    const d = deratesOf(situationFor(begun()));
    expect(d.slit).toMatchObject({ factor: 0.5, why: 'not tested', expires_ms: null });
    expect(d.joint).toMatchObject({ factor: 0.5, why: 'not tested' });
  });

  test('the T says nothing of a slit, the slit nothing of a joint', () => {
    const tee = deratesOf(situationFor(begun(POST, ...machine(1, 0.8), broke('tee'))));
    expect([tee.joint.factor, tee.slit.factor]).toEqual([1, 0.5]);
    const slit = deratesOf(situationFor(begun(POST, ...machine(1, 0.8), broke('slit'))));
    expect([slit.joint.factor, slit.slit.factor]).toEqual([0.5, 1]);
  });

  test('a bead that peeled off is a failed piece, until it is welded again and holds', () => {
    const peeled = [...machine(1, 0.8), broke('tee'), broke('slit', 2), broke('sawn')];
    expect(deratesOf(situationFor(begun(POST, ...peeled))).slit).toMatchObject({
      factor: 0.5,
      why: 'failed',
    });
    const again = [...peeled, broke('slit', 1, ':2')];
    expect(deratesOf(situationFor(begun(POST, ...again))).slit).toMatchObject({ factor: 1, why: 'held' });
    const worse = [...again, broke('slit', 3, ':3')];
    expect(deratesOf(situationFor(begun(POST, ...worse))).slit.why).toBe('failed');
  });

  test('sawn across, the bead not in the steel: both stay at half', () => {
    const d = deratesOf(
      situationFor(begun(POST, ...machine(1, 0.8), broke('tee'), broke('slit'), broke('sawn', 2))),
    );
    expect([d.slit.factor, d.joint.factor]).toEqual([0.5, 0.5]);
  });

  test('pieces ticked off in an older journal held', () => {
    const d = deratesOf(situationFor(begun(tick('weld/coupons#tee'), tick('weld/coupons#slit'))));
    expect([d.slit.factor, d.joint.factor]).toEqual([1, 1]);
  });
});

describe('it lapses', () => {
  const doings = begun(POST, ...all);

  test('eight weeks after the last arc, and says when that will be', () => {
    const now = deratesOf(later(doings, 0)).slit;
    // The slit piece was broken two hours before the end of the doings.
    expect(now.expires_ms).toBe(NOW - 2 * 3_600_000 + 8 * WEEK);
    expect(deratesOf(later(doings, 7.9)).slit.factor).toBe(1);
    expect(deratesOf(later(doings, 8.1)).slit).toMatchObject({
      factor: 0.5,
      why: 'lapsed',
      lapse: 'long pause',
      expires_ms: null,
    });
  });

  test('welding in between keeps it; a pause once lapsed is not mended by welding on', () => {
    const at = (weeks: number, key: string): Doing & { at: string } => ({
      ...tick(key),
      at: new Date(NOW + weeks * WEEK).toISOString(),
    });
    const stamped = (...ticks: (Doing & { at: string })[]): Situation => {
      const s = situationFor(doings);
      const map = new Map(s.build.ticks);
      for (const t of ticks)
        if (t.kind === 'step-ticked') map.set(t.step, { entry: t.step, at: t.at, basis: {} });
      return { ...s, build: { ...s.build, ticks: map }, now: NOW + 12 * WEEK };
    };
    expect(deratesOf(stamped(at(6, 'weld/sides-first@A#1'))).slit.factor).toBe(1);
    expect(deratesOf(stamped(at(11, 'weld/sides-first@A#1'))).slit.lapse).toBe('long pause');
  });

  test.each([
    ['another wire', machine(1, 0.9), 'other wire'],
    ['another gas', machine(2, 0.8), 'other gas'],
    ['cored wire', machine(3, 0.8), 'other wire'],
  ] as const)('with %s', (_, told, lapse) => {
    const d = deratesOf(situationFor(begun(POST, ...all, ...told)));
    expect(d.slit).toMatchObject({ factor: 0.5, lapse });
    expect(d.joint.lapse).toBe(lapse);
  });

  test('the same wire told in inches is no other wire', () => {
    expect(deratesOf(situationFor(begun(POST, ...all, ...machine(1, 0.03 * 25.4)))).slit.factor).toBe(1);
  });

  test('with another wall, each for its own: rails of 4 mm, posts as before', () => {
    const tube = set('tube', { depth_mm: 40, width_mm: 40, wall_mm: 4 });
    const d = deratesOf(situationFor(begun(POST, ...all, tube)));
    expect(d.slit.lapse).toBe('other wall');
    expect(d.joint.factor).toBe(1);
    // What a caliper reads beside the nominal wall is no other wall.
    const wall = read('cut/measure-tube@A', 'wall', 2.85);
    expect(deratesOf(situationFor(begun(POST, ...all, wall))).slit.factor).toBe(1);
  });

  test('not for slits that were welded while it held, whatever comes after', () => {
    const welded = begun(
      POST,
      ...all,
      tick('weld/sides-first@A#1'),
      tick('weld/tops-even@B#2'),
      tick('weld/cool@A'),
      tick('weld/cool@B'),
      ...machine(1, 0.9),
    );
    const d = deratesOf(later(welded, 30));
    expect(d.slit).toMatchObject({ factor: 1, why: 'held', expires_ms: null });
    expect(d.joint).toMatchObject({ factor: 0.5, lapse: 'other wire' });
  });
});
