import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { fold, readingKey } from '../../src/build/fold.ts';
import { countingSurvey, openSurvey } from '../../src/build/surveys.ts';
import { entriesOf } from '../stages/situation-for.ts';

const begun: Doing = { kind: 'build-begun', name: 'Yard kicker', system: 'metric' };
const open = (rail: string, phase: 'tacked' | 'cold' | 'braced'): Doing => ({
  kind: 'survey-opened',
  kind_of: 'curve',
  rail,
  phase,
  edge: 'rail bottom face',
  to: phase === 'tacked' ? 'tack line' : 'finished line',
  stations_mm: [0, 100, 200],
  read_to_mm: 0.5,
});
const read = (survey: string, offsets: readonly number[]): Doing => ({
  kind: 'offsets-read',
  survey,
  readings: offsets.map((offset_mm, i) => ({ station: i + 1, offset_mm, typed: String(offset_mm) })),
});

describe('a build is the fold of its journal', () => {
  test('what was answered, ticked and read is there', () => {
    const b = fold(
      entriesOf([
        begun,
        { kind: 'design-set', field: 'width', value: 1200 },
        { kind: 'step-ticked', step: 'plan/curve', basis: { run: 2239 } },
        { kind: 'reading-logged', step: 'prep/weather', ask: 'air', value: 14, typed: '14', basis: {} },
      ]),
    );
    expect(b.name).toBe('Yard kicker');
    expect(b.answers.width).toBe(1200);
    expect(b.ticks.get('plan/curve')?.basis).toEqual({ run: 2239 });
    expect(b.readings.get(readingKey('prep/weather', 'air'))?.value).toBe(14);
  });

  test('a struck entry counts no more, and put back it counts again', () => {
    const tick: Doing = { kind: 'step-ticked', step: 'plan/curve', basis: {} };
    const struck = entriesOf([begun, tick, { kind: 'entry-struck', target: 'entry-2' }]);
    expect(fold(struck).ticks.size).toBe(0);
    const back = entriesOf([
      begun,
      tick,
      { kind: 'entry-struck', target: 'entry-2' },
      { kind: 'entry-struck', target: 'entry-3' },
    ]);
    expect(fold(back).ticks.size).toBe(1);
  });

  test('a correction replaces, two answers that do not know of each other are a conflict', () => {
    const first: Doing = { kind: 'design-set', field: 'width', value: 1200 };
    const corrected = fold(
      entriesOf([begun, first, { kind: 'design-set', field: 'width', value: 900, replaces: ['entry-2'] }]),
    );
    expect(corrected.answers.width).toBe(900);
    expect(corrected.conflicts).toEqual([]);
    const apart = fold(entriesOf([begun, first, { kind: 'design-set', field: 'width', value: 900 }]));
    expect(apart.answers.width).toBe(900);
    expect(apart.conflicts).toEqual([{ about: 'design width', kept: 'entry-3', other: 'entry-2' }]);
  });

  test('only a closed survey counts, the latest phase first, and an open one is found again', () => {
    const doings: Doing[] = [
      begun,
      open('A', 'tacked'),
      read('entry-2', [1, 2, 3]),
      { kind: 'survey-closed', survey: 'entry-2' },
      open('A', 'cold'),
      read('entry-5', [0, 0, 1]),
    ];
    const half = fold(entriesOf(doings));
    expect(countingSurvey(half, 'A')?.id).toBe('entry-2');
    expect(openSurvey(half)?.id).toBe('entry-5');
    const whole = fold(entriesOf([...doings, { kind: 'survey-closed', survey: 'entry-5' }]));
    expect(countingSurvey(whole, 'A')?.id).toBe('entry-5');
    expect(countingSurvey(whole, 'B')).toBeNull();
  });

  test('a re-cut retires what was read of the rail before it, of that rail only', () => {
    const b = fold(
      entriesOf([
        begun,
        open('A', 'tacked'),
        { kind: 'survey-closed', survey: 'entry-2' },
        open('B', 'tacked'),
        { kind: 'survey-closed', survey: 'entry-4' },
        { kind: 'remedy-chosen', finding: 'rail-off@B', remedy: 're-cut', plan: { rail: 'B' } },
        open('B', 'tacked'),
      ]),
    );
    expect(b.surveys.map(s => s.retired)).toEqual([false, true, false]);
  });

  test('a reading of a survey that was taken back is kept, idle', () => {
    const b = fold(
      entriesOf([
        begun,
        open('A', 'tacked'),
        read('entry-2', [1]),
        { kind: 'entry-struck', target: 'entry-2' },
      ]),
    );
    expect(b.surveys).toEqual([]);
    expect(b.idle.map(e => e.kind)).toEqual(['offsets-read']);
  });

  test('a station read twice keeps both readings', () => {
    const b = fold(entriesOf([begun, open('A', 'tacked'), read('entry-2', [1, 2]), read('entry-2', [1.5])]));
    expect(b.surveys[0]?.readings[0]).toMatchObject({ offset_mm: 1.5, again: [1] });
  });

  test('a piece serves its own need until it is given to another, and a spoiled one is known', () => {
    const piece: Doing = {
      kind: 'piece-cut',
      need: 'upright@A:7',
      section: '30x30x2',
      asked_mm: 251,
      length_mm: 240,
      typed: '240',
      ends_rad: [0, 0.4],
    };
    const given = fold(
      entriesOf([
        begun,
        piece,
        { kind: 'piece-fated', piece: 'entry-2', fate: 'fitted', need: 'upright@B:7' },
      ]),
    );
    expect(given.pieces[0]).toMatchObject({ fate: 'fitted', serves: 'upright@B:7', length_mm: 240 });
  });

  test('whatever the entries say, in any order, there is a build, and the order does not matter', () => {
    const kinds: readonly Doing[] = [
      begun,
      { kind: 'design-set', field: 'width', value: 1 },
      { kind: 'step-ticked', step: 'a/b@00000000-0000-0000-0000-000000000000#1', basis: {} },
      { kind: 'step-skipped', step: 'a/b', why: 'x' },
      { kind: 'survey-closed', survey: 'nothing' },
      { kind: 'piece-fated', piece: 'nothing', fate: 'spoiled' },
      { kind: 'entry-struck', target: 'entry-3' },
      { kind: 'entry-struck', target: 'nothing' },
      { kind: 'remedy-chosen', finding: 'f', remedy: 're-cut', plan: { rail: 'A' } },
      open('A', 'cold'),
      read('entry-1', [1, 2]),
    ];
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...kinds), { maxLength: 25 }),
        fc.infiniteStream(fc.nat()),
        (list, luck) => {
          const entries = entriesOf(list);
          const shuffled = [...entries]
            .map(e => ({ e, k: luck.next().value as number }))
            .sort((a, b) => a.k - b.k)
            .map(x => x.e);
          expect(fold(shuffled)).toEqual(fold(entries));
        },
      ),
    );
  });
});

test('a remedy that changes the design changes it, and only to something that fits', () => {
  const chosen = (value: unknown): Doing => ({
    kind: 'remedy-chosen',
    finding: 'plan-steep',
    remedy: 'steep-longer',
    plan: { field: 'width', value },
  });
  expect(fold(entriesOf([begun, chosen(900)])).answers.width).toBe(900);
  expect(fold(entriesOf([begun, chosen('wide')])).answers.width).toBeUndefined();
});
