import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { StoredEntry } from '../../src/build/journal-line.ts';
import { byOrder, goneIds, inOrder, live, nextN } from '../../src/build/order.ts';

const AT = '2026-05-01T18:00:00.000Z';
const act = (id: string, n: number, more: Record<string, unknown> = {}): StoredEntry => ({
  id,
  n,
  v: 1,
  at: AT,
  kind: 'remarked',
  ...more,
});
const strike = (id: string, n: number, target: string): StoredEntry =>
  act(id, n, { kind: 'entry-struck', target });
const ids = (entries: readonly StoredEntry[]): string[] => entries.map(e => e.id);

describe('order', () => {
  test('goes by the count, then by the id, and not by the clock', () => {
    const entries = [act('b', 2), act('c', 1, { at: '2030-01-01T00:00:00Z' }), act('a', 2)];
    expect(ids(inOrder(entries))).toEqual(['c', 'a', 'b']);
    expect(byOrder(act('a', 1), act('a', 1))).toBe(0);
  });

  test('the next count is one more than the greatest seen', () => {
    expect(nextN([])).toBe(1);
    expect(nextN([act('a', 4), act('b', 9), act('c', 2)])).toBe(10);
  });
});

describe('what counts', () => {
  test('a struck entry does not', () => {
    expect(ids(live([act('a', 1), act('b', 2), strike('s', 3, 'a')]))).toEqual(['b']);
  });

  test('a strike that is itself struck takes nothing away', () => {
    expect(ids(live([act('a', 1), strike('s', 2, 'a'), strike('t', 3, 's')]))).toEqual(['a']);
  });

  test('and a third strike takes it away again', () => {
    expect(ids(live([act('a', 1), strike('s', 2, 'a'), strike('t', 3, 's'), strike('u', 4, 't')]))).toEqual(
      [],
    );
  });

  test('a correction stands in place of what it replaces', () => {
    expect(ids(live([act('a', 1), act('b', 2, { replaces: ['a'] })]))).toEqual(['b']);
  });

  test('a correction that was struck gives the replaced entry its place again', () => {
    expect(ids(live([act('a', 1), act('b', 2, { replaces: ['a'] }), strike('s', 3, 'b')]))).toEqual(['a']);
  });

  test('a correction of a correction leaves only the last', () => {
    expect(
      ids(live([act('a', 1), act('b', 2, { replaces: ['a'] }), act('c', 3, { replaces: ['b'] })])),
    ).toEqual(['c']);
    expect(
      ids(live([act('a', 1), act('b', 2, { replaces: ['a'] }), act('c', 3, { replaces: ['a', 'b'] })])),
    ).toEqual(['c']);
  });

  test('and taken back, the one before it', () => {
    const three = [act('a', 1), act('b', 2, { replaces: ['a'] }), act('c', 3, { replaces: ['b'] })];
    expect(ids(live([...three, strike('s', 4, 'c')]))).toEqual(['b']);
    expect(ids(live([...three, strike('s', 4, 'b')]))).toEqual(['c']);
    expect(ids(live([...three, strike('s', 4, 'c'), strike('t', 5, 'b')]))).toEqual(['a']);
  });

  test('striking what is not there, or oneself, harms nothing', () => {
    expect(
      ids(
        live([act('a', 1), strike('s', 2, 'zz'), strike('t', 3, 't'), act('u', 4, { kind: 'entry-struck' })]),
      ),
    ).toEqual(['a']);
  });

  test('is the same in whatever order the entries come, for any tangle of strikes', () => {
    const tangle = fc
      .array(
        fc.tuple(fc.integer({ min: 1, max: 6 }), fc.nat(12), fc.constantFrom('strike', 'replace', 'act')),
        {
          maxLength: 12,
        },
      )
      .map(rows =>
        rows.map(([n, to, what], i) =>
          what === 'strike'
            ? strike(`e${i}`, n, `e${to}`)
            : act(`e${i}`, n, what === 'replace' ? { replaces: [`e${to}`] } : {}),
        ),
      );
    fc.assert(
      fc.property(
        tangle.chain(all => fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length }))),
        ([all, shuffled]) => {
          expect(ids(live(shuffled))).toEqual(ids(live(all)));
          expect([...goneIds(shuffled)].sort()).toEqual([...goneIds(all)].sort());
        },
      ),
    );
  });
});
