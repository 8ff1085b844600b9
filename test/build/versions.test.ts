import { describe, expect, test } from 'vitest';
import type { StoredEntry } from '../../src/build/journal-line.ts';
import { VERSION_STEPS } from '../../src/build/versions/steps.ts';
import { understandEntry } from '../../src/build/versions/understand.ts';
import { upcast, type VersionStep, versionTable } from '../../src/build/versions/upcast.ts';

/** A table of these tests alone: a kind that changed twice, and one that never did. */
const STEPS: readonly VersionStep[] = [
  { kind: 'plank-sawn', from: 2, change: old => ({ ...old, length_mm: (old.length_cm as number) * 10 }) },
  {
    kind: 'plank-sawn',
    from: 1,
    change: ({ size, ...old }) => ({ ...(old as StoredEntry), length_cm: size }),
  },
];
const TABLE = versionTable(['plank-sawn', 'remarked'], STEPS);
const plank = (v: number, more: Record<string, unknown>): StoredEntry => ({
  id: 'p',
  n: 7,
  v,
  at: '2026-05-01T18:00:00.000Z',
  kind: 'plank-sawn',
  ...more,
});

describe('an entry of an older version', () => {
  test('is brought up step by step, in order', () => {
    expect(upcast(plank(1, { size: 12 }), TABLE)).toMatchObject({
      is: 'current',
      entry: { v: 3, length_cm: 12, length_mm: 120 },
    });
  });

  test('takes only the steps that are left', () => {
    expect(upcast(plank(2, { length_cm: 5 }), TABLE)).toMatchObject({
      is: 'current',
      entry: { v: 3, length_mm: 50 },
    });
  });

  test('keeps its id, its count and its time, whatever a step does', () => {
    const careless = versionTable(
      ['k'],
      [{ kind: 'k', from: 1, change: () => ({ ...plank(9, {}), id: 'other', n: 99 }) }],
    );
    const old = { ...plank(1, {}), kind: 'k' };
    expect(upcast(old, careless)).toMatchObject({ entry: { id: 'p', n: 7, at: old.at, v: 2 } });
  });

  test('is not changed itself', () => {
    const old = Object.freeze(plank(1, { size: 12 }));
    upcast(old, TABLE);
    expect(old).toEqual(plank(1, { size: 12 }));
  });

  test('that does not hold what it should is unfit, not a crash', () => {
    const step = { kind: 'k', from: 1, change: (old: StoredEntry) => (old.missing as { x: StoredEntry }).x };
    expect(upcast({ ...plank(1, {}), kind: 'k' }, versionTable(['k'], [step]))).toMatchObject({
      is: 'unfit',
    });
  });
});

describe('an entry of today or tomorrow', () => {
  test('of this version is taken as it is', () => {
    const now = plank(3, { length_mm: 50 });
    expect(upcast(now, TABLE)).toEqual({ is: 'current', entry: now });
  });

  test('of a newer version, or of an unknown kind, is newer and says why', () => {
    expect(upcast(plank(4, {}), TABLE)).toEqual({ is: 'newer', reason: expect.stringMatching(/newer way/) });
    expect(upcast({ ...plank(1, {}), kind: 'moon-phase' }, TABLE)).toEqual({
      is: 'newer',
      reason: expect.stringMatching(/kind of entry/),
    });
  });
});

describe('the table of steps', () => {
  test('must lead from version 1 up without a gap', () => {
    const change = (old: StoredEntry): StoredEntry => old;
    expect(() => versionTable(['k'], [{ kind: 'k', from: 2, change }])).toThrow(/one by one/);
    expect(() =>
      versionTable(
        ['k'],
        [
          { kind: 'k', from: 1, change },
          { kind: 'k', from: 1, change },
        ],
      ),
    ).toThrow(/one by one/);
    expect(() => versionTable(['k'], [{ kind: 'j', from: 1, change }])).toThrow(/unknown kind/);
  });

  test('of this version holds nothing yet, for no kind has changed', () => expect(VERSION_STEPS).toEqual([]));
});

describe('entries of a build', () => {
  const stamp = { id: 'a', n: 1, v: 1, at: '2026-05-01T18:00:00.000Z' };
  test('are held against their schema', () => {
    expect(understandEntry({ ...stamp, kind: 'remarked', text: 'cold today' })).toMatchObject({
      is: 'current',
    });
    expect(understandEntry({ ...stamp, kind: 'remarked', text: 12 })).toMatchObject({ is: 'unfit' });
    expect(understandEntry({ ...stamp, kind: 'moon-phase' })).toMatchObject({ is: 'newer' });
    expect(understandEntry({ ...stamp, v: 2, kind: 'remarked', text: '' })).toMatchObject({ is: 'newer' });
  });
});
