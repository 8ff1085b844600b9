import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { decide } from '../../src/coach/decide/decide.ts';
import { type View, viewOf } from '../../src/coach/view.ts';
import { ARC_STEPS, strikesArc } from '../../src/stages/arc-steps.ts';
import { prepSheet } from '../../src/stages/prep/sheet.ts';
import { GOOD_FOR_h } from '../../src/stages/prep/weather-age.ts';
import { read, tick } from './doings.ts';
import { entriesOf, NOW, situationFor } from './situation-for.ts';
import { begun } from './weld-doings.ts';
import { WORDS, wordGaps } from './word-gaps.ts';

const HOUR = 3_600_000;
const ALL: Doing[] = [
  read('prep/weather', 'wet', 0),
  read('prep/weather', 'wind', 1),
  read('prep/weather', 'air', 18),
  read('prep/weather', 'steel', 18),
  read('prep/weather', 'damp', 50),
];
/** The build some hours after its last entry; entries stand an hour apart. */
const later = (hours: number, ...doings: Doing[]): View =>
  viewOf(entriesOf(begun(...doings)), NOW - HOUR + hours * HOUR);

const waits = (view: View, key: string): boolean =>
  view.steps.find(s => s.key === key)?.waitsFor.includes('prep/dry-steel') === true;
const bar = (view: View) => view.steps.find(s => s.key === 'prep/dry-steel');

const ARCS = [
  'tack/close-third@A:2',
  'weld/coupons',
  'weld/sides-rest@A',
  'weld/tops-odd@A',
  'weld/tops-even@B',
  'brace/join-entry@A',
  'brace/weld-uprights@A',
  'assemble/crossmembers',
  'assemble/weld-joints',
  'assemble/stand-up',
  'assemble/feet',
  'assemble/lugs',
  'assemble/entry-plate',
];

describe('weather that was read on another evening', () => {
  test('is good for the evening it was read on', () => {
    expect(bar(later(GOOD_FOR_h - 5, ...ALL))).toBeUndefined();
  });

  test('keeps every later arc of every stage waiting, not only the first ones', () => {
    const view = later(20, ...ALL);
    expect(bar(view)?.shut).toHaveLength(1);
    expect(ARCS.filter(key => !waits(view, key))).toEqual([]);
    for (const key of ['weld/cold-survey@A', 'brace/diagonals@A', 'cut/crossmembers', 'finish/paint'])
      expect(waits(view, key)).toBe(false);
  });

  test('is told in hours, and from two days on in days', () => {
    expect(bar(later(20, ...ALL))?.gates?.[0]).toMatchObject({
      words: 'weather-old',
      measure: 'prep/weather',
    });
    expect(bar(later(80, ...ALL))?.gates?.[0]?.words).toBe('weather-old-days');
    for (const hours of [20, 80])
      expect(wordGaps(prepSheet({ ...situationFor(begun(...ALL)), now: NOW + hours * HOUR }))).toEqual([]);
  });

  test('is as many days old as the pause after the evening it was read on', () => {
    // Read at the evening's beginning; three hours later the last tick, and from there on a pause of a little under ten days.
    const entries = entriesOf(begun(...ALL, tick('prep/discs'), tick('prep/vents'), tick('prep/edges')));
    const last = Date.parse(entries.at(-1)?.at ?? '');
    const gate = (away: number) => bar(viewOf(entries, last + away * HOUR))?.gates?.[0]?.fills?.days;
    expect(gate(10 * 24 - 1)).toBe(9);
    expect(gate(10 * 24 + 1)).toBe(10);
  });

  test('opens once all five are read anew, and not with four of them', () => {
    const entries = [...entriesOf(begun(...ALL))];
    const now = NOW + 24 * HOUR;
    const anew = entriesOf(ALL).map((e, i) => ({
      ...e,
      id: `again-${i}`,
      n: 100 + i,
      at: new Date(now - (10 - i) * 60_000).toISOString(),
    }));
    expect(bar(viewOf([...entries, ...anew.slice(0, 4)], now))?.words).toBe('weather-again');
    expect(bar(viewOf([...entries, ...anew], now))).toBeUndefined();
  });

  test('asks wind and rag as well where an older build never read them', () => {
    const older = ALL.slice(2);
    const asks = (hours: number) =>
      later(hours, ...older)
        .steps.find(s => s.key === 'prep/weather')
        ?.asks?.filter(a => a.optional !== true)
        .map(a => a.ask);
    expect(asks(1)).toEqual(['air', 'steel', 'damp']);
    expect(asks(30)).toEqual(['wet', 'wind', 'air', 'steel', 'damp']);
  });

  test('a reason opens it for as long as a reading would, then it is shut again', () => {
    const doings = begun(...ALL);
    const entries = entriesOf(doings);
    const now = NOW + 24 * HOUR;
    const gate = bar(viewOf(entries, now))?.shut[0] ?? '';
    const said = decide(viewOf(entries, now), {
      do: 'override',
      step: 'prep/dry-steel',
      gate,
      why: 'heated all night, hand-warm and dry',
    });
    if (!said.ok) throw new Error('refused');
    const told = [
      { ...said.value, id: 'said', n: 90, v: 1, at: new Date(now).toISOString() },
      { ...tick(`prep/dry-steel#${gate}`), id: 'ticked', n: 91, v: 1, at: new Date(now).toISOString() },
    ] as typeof entries;
    expect(waits(viewOf([...entries, ...told], now + HOUR), 'weld/coupons')).toBe(false);
    const next = viewOf([...entries, ...told], now + 20 * HOUR);
    expect(waits(next, 'weld/coupons')).toBe(true);
    expect(bar(next)?.shut[0]).not.toBe(gate);
  });

  test('a step that was left out with a reason is asked about on the next evening too', () => {
    const skipped: Doing = { kind: 'step-skipped', step: 'prep/weather', why: 'heated shop' };
    expect(bar(later(2, skipped))).toBeUndefined();
    expect(bar(later(30, skipped))?.words).toBe('weather-again');
  });

  test('comes just before the next arc of the walk, and no more when none is left', () => {
    const view = later(20, ...ALL);
    const at = bar(view)?.turn ?? 0;
    const first = view.steps.filter(s => waits(view, s.key)).map(s => s.turn);
    expect(at).toBeLessThan(Math.min(...first));
    expect(Math.min(...first) - at).toBeLessThan(1);
    const done = view.steps
      .filter(s => waits(view, s.key))
      .flatMap(s => [s.key, ...(s.items ?? []).map(i => i.key)])
      .map((step): Doing => ({ kind: 'step-skipped', step, why: 'another shop welds it' }));
    expect(bar(viewOf(entriesOf(begun(...ALL, ...done)), NOW + 40 * HOUR))).toBeUndefined();
  });
});

describe('steps with an arc', () => {
  /** Steps that speak of welding at the beginning of a sentence or of tacking again, and strike no arc. */
  const NONE = [
    'weld/half-narrow-beads',
    'weld/half-narrow-set',
    'weld/half-narrow-rod',
    'tack/hot-plank',
    'tack/twist-weld-held',
    'weld/bow-order',
  ];

  test('a step that is told to weld, tack, fit, join or break in is one, remedies among them', () => {
    const told = ['tack', 'weld', 'brace', 'assemble', 'finish'].flatMap(stage =>
      Object.entries(WORDS.steps[stage] ?? {})
        .filter(([, own]) =>
          /(^|\. |, )(weld|tack|fit and|join|break)\b|\b(tack|weld(ed)?|bead) (again|at that)/i.test(
            `${own.title}. ${own.do}`,
          ),
        )
        .map(([words]) => `${stage}/${words}`),
    );
    const struck = Object.entries(ARC_STEPS).flatMap(([stage, names]) => names.map(n => `${stage}/${n}`));
    expect(told.length).toBeGreaterThan(30);
    expect(told.filter(t => !NONE.includes(t) && !struck.some(name => t.startsWith(name)))).toEqual([]);
  });

  test('is told by its key, whatever rail, round or item it is of', () => {
    for (const key of ['weld/coupons:2', 'tack/close-third@A:1#4', 'weld/re-cut-weld@entry-9#12'])
      expect(strikesArc(key)).toBe(true);
    for (const key of ['weld/re-cut-saw@entry-9', 'weld/settings', 'brace/uprights@A#lip'])
      expect(strikesArc(key)).toBe(false);
  });
});
