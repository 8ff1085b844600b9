import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distinct, idConflicts, type Journal, join } from '../../src/build/join.ts';
import { type Header, type StoredEntry, writeHeader, writeLine } from '../../src/build/journal-line.ts';

const AT = '2026-05-01T18:00:00.000Z';
const header: Header = { format: 'curvewright-build', version: 1, build: 'b-1', created: AT };
const act = (id: string, n: number, text = ''): StoredEntry => ({
  id,
  n,
  v: 1,
  at: AT,
  kind: 'remarked',
  text,
});
const journal = (...entries: StoredEntry[]): Journal => ({ header, entries });

/** A journal to the byte, as it would be written. */
const bytes = (j: Journal): string => [writeHeader(j.header), ...j.entries.map(writeLine)].join('\n');
const joined = (a: Journal, b: Journal): Journal => {
  const done = join(a, b);
  if (!done.ok) throw new Error(done.fault.message);
  return done.value.journal;
};

/** A world of entries, some ids standing for two contents, and copies that each saw a part of it in their own order. */
const copies = (count: number) =>
  fc
    .array(fc.tuple(fc.nat(9), fc.integer({ min: 1, max: 6 }), fc.nat(1)), { maxLength: 14 })
    .map(rows => rows.map(([id, n, text]) => act(`e${id}`, n, `${text}`)))
    .chain(world => fc.array(fc.shuffledSubarray(world), { minLength: count, maxLength: count }))
    .map(parts => parts.map(entries => journal(...entries)));

describe('joining two copies of a build', () => {
  test('keeps what each did, once, in order', () => {
    const shared = act('a', 1);
    const done = join(journal(shared, act('x', 2)), journal(shared, act('b', 2), act('c', 3)));
    expect(done.ok && done.value.journal.entries.map(e => e.id)).toEqual(['a', 'b', 'x', 'c']);
    expect(done.ok && done.value.conflicts).toEqual([]);
  });

  test('refuses two builds, and a build with a shop', () => {
    const other = { header: { ...header, build: 'b-2' }, entries: [] };
    const shop = { header: { ...header, format: 'curvewright-shop' as const }, entries: [] };
    expect(join(journal(), other)).toMatchObject({ ok: false, fault: { code: 'other-build' } });
    expect(join(journal(), shop)).toMatchObject({ ok: false, fault: { code: 'other-format' } });
  });

  test('keeps both of one id with two contents, and says so', () => {
    const done = join(journal(act('a', 1, 'cut at 412.0')), journal(act('a', 1, 'cut at 404.5')));
    expect(done.ok && done.value.journal.entries).toHaveLength(2);
    expect(done.ok && done.value.conflicts.map(c => [c.id, c.texts.length])).toEqual([['a', 2]]);
  });

  test('does not take two writings of the same entry for two', () => {
    const turned = Object.fromEntries(Object.entries(act('a', 1)).reverse()) as StoredEntry;
    expect(distinct([act('a', 1), turned])).toHaveLength(1);
    expect(idConflicts([act('a', 1), turned])).toEqual([]);
  });

  test('comes out the same to the byte from either side', () => {
    fc.assert(
      fc.property(copies(2), ([a, b]) => {
        expect(bytes(joined(a!, b!))).toBe(bytes(joined(b!, a!)));
      }),
    );
  });

  test('done twice is done once', () => {
    fc.assert(
      fc.property(copies(2), ([a, b]) => {
        const once = joined(a!, b!);
        expect(bytes(joined(once, a!))).toBe(bytes(once));
        expect(bytes(joined(once, b!))).toBe(bytes(once));
        expect(bytes(joined(once, once))).toBe(bytes(once));
      }),
    );
  });

  test('of three copies gives the same, whichever two come first', () => {
    fc.assert(
      fc.property(copies(3), ([a, b, c]) => {
        expect(bytes(joined(joined(a!, b!), c!))).toBe(bytes(joined(a!, joined(b!, c!))));
      }),
    );
  });

  test('loses nothing and invents nothing', () => {
    fc.assert(
      fc.property(copies(2), ([a, b]) => {
        const all = new Set([...a!.entries, ...b!.entries].map(writeLine));
        expect(joined(a!, b!).entries.map(writeLine).sort()).toEqual([...all].sort());
      }),
    );
  });

  test('keeps the earlier date of two changed first lines, from either side', () => {
    const early = { header: { ...header, created: '2026-01-01T00:00:00.000Z' }, entries: [] };
    expect(joined(journal(), early).header.created).toBe('2026-01-01T00:00:00.000Z');
    expect(joined(early, journal()).header.created).toBe('2026-01-01T00:00:00.000Z');
  });
});
