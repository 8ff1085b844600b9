import { describe, expect, test } from 'vitest';
import type { Doing, Entry } from '../../src/build/entries.ts';
import { decide } from '../../src/coach/decide/decide.ts';
import type { Intent } from '../../src/coach/intents.ts';
import { pausesOf } from '../../src/coach/pause/gaps.ts';
import { type View, viewOf } from '../../src/coach/view.ts';
import { noLongerAsked } from '../../src/coach/walk.ts';
import { fillMarks } from '../../src/words/say.ts';
import { begun, read, set, tick } from '../stages/doings.ts';
import { stationsOf, survey } from '../stages/frame-doings.ts';
import { WORDS } from '../stages/word-gaps.ts';
import { nextIntent } from '../walk/hand.ts';

const DAY = 86_400_000;
const LEFT = Date.parse('2026-09-01T18:00:00Z');

/** Doings an hour apart, the last at `LEFT`; ids their own, else `e1`, `e2` … */
const told = (doings: readonly Doing[], end = LEFT, from = 0): Entry[] =>
  doings.map(
    (doing, i) =>
      ({
        id: `e${from + i + 1}`,
        ...doing,
        n: from + i + 1,
        v: 1,
        at: new Date(end - (doings.length - 1 - i) * 60_000).toISOString(),
      }) as Entry,
  );

class Bench {
  entries: Entry[];
  now: number;
  constructor(doings: readonly Doing[], daysLater: number) {
    this.entries = told([begun(), { kind: 'design-agreed' }, ...doings]);
    this.now = LEFT + daysLater * DAY;
  }
  get view(): View {
    return viewOf(this.entries, this.now);
  }
  does(...intents: Intent[]): this {
    for (const intent of intents) {
      const decided = decide(this.view, intent);
      if (!decided.ok) throw new Error(`${JSON.stringify(intent)}: ${JSON.stringify(decided.refusal)}`);
      this.now += 60_000;
      this.entries.push(
        ...told([decided.value], this.now, this.entries.length).map(e => ({
          ...e,
          id: `e${this.entries.length + 1}`,
        })),
      );
    }
    return this;
  }
  get pauseSteps() {
    return this.view.steps.filter(s => s.key.includes('/pause-'));
  }
}

const marks = (rail: string, third: number): Doing => ({
  kind: 'slits-marked',
  rail,
  third,
  first: 1,
  marks_mm: [100, 200, 300],
  close_rad: 0.03,
  gap_mm: 0,
  kerf_mm: 1.2,
});
const tacked = (rail: string, offsets = [0, 0.5, 1, 0.5, 0]): Doing[] =>
  survey(rail, 'tacked', offsets, stationsOf());
const three = (bench: Bench, key: string, values: readonly string[]): Bench =>
  bench.does(
    ...(['entry', 'middle', 'lip'] as const).map(
      (ask, k): Intent => ({ do: 'read', step: key, ask, value: values[k] ?? '0' }),
    ),
  );

describe('a pause is a time without work at the bench', () => {
  const work = (at: string, n: number): Entry =>
    ({ id: `w${n}`, n, v: 1, at, kind: 'step-ticked', step: 'plan/dangers', basis: {} }) as Entry;

  test('a week between two Saturdays is none, nine days are one, and it is keyed by what was done last', () => {
    const entries = [work('2026-09-05T10:00:00.000Z', 1), work('2026-09-12T17:00:00.000Z', 2)];
    expect(pausesOf(entries, Date.parse('2026-09-12T18:00:00Z'))).toEqual([]);
    const [pause] = pausesOf(entries, Date.parse('2026-09-21T17:00:00Z'));
    expect(pause).toMatchObject({ after: 'w2', days: 9, until: null });
  });

  test('a look round, a remark and leaving the bench in between are no work', () => {
    const entries = [
      work('2026-09-05T10:00:00.000Z', 1),
      { id: 'r', n: 2, v: 1, at: '2026-09-20T10:00:00.000Z', kind: 'remarked', text: 'looked' } as Entry,
      { id: 's', n: 3, v: 1, at: '2026-09-20T10:01:00.000Z', kind: 'stopped' } as Entry,
    ];
    expect(pausesOf(entries, Date.parse('2026-10-05T10:00:00Z'))).toMatchObject([{ after: 'w1', days: 30 }]);
  });

  test('the same pause keeps its name once work has begun again, and each of two pauses has its own', () => {
    const entries = [
      work('2026-09-01T10:00:00.000Z', 1),
      work('2026-10-01T10:00:00.000Z', 2),
      work('2026-11-01T10:00:00.000Z', 3),
    ];
    expect(pausesOf(entries, Date.parse('2026-11-01T12:00:00Z')).map(p => [p.after, p.days])).toEqual([
      ['w2', 31],
      ['w1', 30],
    ]);
  });

  test('entries of two joined copies, whose times run back and forth, make one pause and no more', () => {
    const entries = [
      work('2026-01-10T10:00:00.000Z', 1),
      work('2026-03-10T10:00:00.000Z', 2),
      work('2026-01-11T10:00:00.000Z', 3),
      work('2026-03-11T10:00:00.000Z', 4),
    ];
    expect(pausesOf(entries, Date.parse('2026-03-12T10:00:00Z'))).toMatchObject([{ after: 'w1', days: 59 }]);
  });

  test('a clock that was set wrong gives a build all the same', () => {
    const entries = [work('no time', 1), work('2026-03-10T10:00:00.000Z', 2)];
    expect(pausesOf(entries, Date.parse('2026-03-11T10:00:00Z'))).toEqual([]);
  });
});

describe('what was left open is looked at again, measured things first', () => {
  const keys = (doings: readonly Doing[], days: number): string[] =>
    new Bench(doings, days).pauseSteps.map(s => s.key.replace(/~.*/, ''));

  test('a build in plan, and one laid aside for a week, ask for nothing', () => {
    expect(keys([tick('plan/dangers')], 90)).toEqual([]);
    expect(keys([marks('B', 1), ...tacked('B')], 7)).toEqual([]);
  });

  test('tacked: three stations first, bright metal after; the welding set only after two weeks', () => {
    expect(keys([marks('B', 1), ...tacked('B')], 9)).toEqual(['tack/pause-offsets@B', 'weld/pause-bright@B']);
    expect(keys([marks('B', 1), ...tacked('B')], 15)).toContain('weld/pause-welder@');
  });

  test('half welded and cold rails are read on the page of weld, a free side frame on that of brace', () => {
    for (const [phase, stage] of [
      ['half-welded', 'weld'],
      ['cold', 'weld'],
      ['unclamped', 'brace'],
    ] as const)
      expect(keys(survey('A', phase, [0, 0, 0, 0, 0], stationsOf()), 9)[0]).toBe(`${stage}/pause-offsets@A`);
  });

  test('a clamped rail is not let go to be read: its clamps are gauged closed, its tacked joints looked at', () => {
    const doings = [
      ...survey('A', 'cold', [0, 0, 0, 0, 0], stationsOf()),
      tick('brace/hold-base@A'),
      tick('brace/fit-uprights@A#lip'),
      tick('brace/fit-uprights@A#9'),
    ];
    expect(keys(doings, 10)).toEqual(['brace/pause-clamps@A', 'brace/pause-joints@A']);
    const joints = new Bench(doings, 10).pauseSteps.find(s => s.key.includes('joints'));
    expect(joints?.items?.map(i => i.name)).toEqual(['lip', '9']);
  });

  test('slits welded since the survey moved the rail: it is not held against it, its tacks are looked at', () => {
    const welding = [marks('B', 1), ...tacked('B'), tick('weld/sides-first@B#1')];
    expect(keys(welding, 9)).toContain('weld/pause-half@B');
    expect(keys(welding, 9)).not.toContain('tack/pause-offsets@B');
    const read = [...welding, ...survey('B', 'half-welded', [0, 0, 0, 0, 0], stationsOf())];
    expect(keys(read, 9)).toContain('weld/pause-offsets@B');
  });

  test('a side frame that stands between its props is not laid down again to be read', () => {
    const free = survey('A', 'unclamped', [0, 0, 0, 0, 0], stationsOf());
    expect(keys([...free, tick('assemble/props')], 9)).toEqual([]);
  });

  test('a rolled rail has no tacks: it is read as one that lay about', () => {
    const rolled = [set('route', 'rolled'), ...survey('A', 'tacked', [0, 0, 0, 0, 0], stationsOf())];
    expect(keys(rolled, 9)).toEqual(['weld/pause-offsets@A']);
  });

  test('slits sawn and open are gauged, a bend closed so far is read', () => {
    expect(keys([marks('A', 1), read('cut/deburr-third@A:1', 'kerf', 1.2)], 9)).toContain(
      'tack/pause-kerf@A:1',
    );
    const closed = [
      marks('A', 1),
      read('cut/deburr-third@A:1', 'kerf', 1.2),
      read('tack/read-third@A:1', 'bent', 0.18),
    ];
    expect(keys(closed, 9)).toContain('tack/pause-bend@A:1');
    expect(keys(closed, 9)).not.toContain('tack/pause-kerf@A:1');
  });

  test('a tacked frame its diagonals; welded bare, primed for a month, primed for three, decked outdoors', () => {
    const frame = [read('assemble/diagonals', 'd1', 2000), read('assemble/diagonals', 'd2', 2001)];
    expect(keys(frame, 9)).toEqual(['assemble/pause-diagonals@']);
    const welded = [...frame, tick('assemble/weld')];
    expect(keys(welded, 9)).toEqual([]);
    expect(keys(welded, 14)).toEqual(['finish/pause-frame@']);
    const primed = [...welded, tick('finish/prime')];
    const words = (days: number) => new Bench(primed, days).pauseSteps.map(s => s.words);
    expect(words(27)).toEqual([]);
    expect(words(30)).toEqual(['pause-primed']);
    expect(words(100)).toEqual(['pause-primed-long']);
    expect(keys([...primed, tick('finish/paint')], 100)).toEqual([]);
    const decked = [
      ...primed,
      tick('finish/deck'),
      ...[1, 2, 3, 4].map(k => read('finish/anchors', `pull${k}`, 1500)),
    ];
    expect(keys(decked, 27)).toEqual([]);
    expect(keys(decked, 28)).toEqual(['finish/pause-anchors@', 'finish/pause-deck@']);
  });

  test('every anchor that was pulled is pulled again, be there four or eight', () => {
    const pulled = (count: number) => {
      const pulls = Array.from({ length: count }, (_, k) => read('finish/anchors', `pull${k + 1}`, 1500));
      const bench = new Bench([tick('assemble/weld'), tick('finish/deck'), ...pulls], 30);
      const step = bench.pauseSteps.find(s => s.key.includes('anchors'));
      return { asks: step?.asks?.length, all: step?.fills?.all };
    };
    expect(pulled(4)).toEqual({ asks: 4, all: 4 });
    expect(pulled(8)).toEqual({ asks: 8, all: 8 });
  });

  test('the set is looked at by what it burns: no gas for cored wire, rods for a stick set', () => {
    const items = (kind: number) =>
      new Bench([marks('A', 1), read('weld/machine', 'kind', kind)], 20).pauseSteps
        .find(s => s.key.includes('welder'))
        ?.items?.map(i => i.name);
    expect(items(1)).toEqual(['gas', 'wire', 'lens', 'leads']);
    expect(items(3)).toEqual(['wire', 'lens', 'leads']);
    expect(items(5)).toEqual(['rods', 'lens', 'leads']);
  });
});

describe('the coach does not go on until it is measured again or left with a reason', () => {
  const left = [marks('B', 1), ...tacked('B')];
  const key = (bench: Bench) => bench.pauseSteps.find(s => s.key.includes('offsets'))?.key ?? '';

  test('they come first, the rail’s other steps wait for them, and plan does not', () => {
    const bench = new Bench(left, 20);
    expect(bench.view.next?.key).toBe(key(bench));
    const waits = bench.view.steps.filter(s => s.state === 'waiting' && s.waitsFor.includes(key(bench)));
    expect(waits.map(s => s.key)).toContain('weld/sides-first@B');
    expect(waits.some(s => s.stage === 'plan')).toBe(false);
    expect(decide(bench.view, { do: 'read', step: 'tack/twist@B', ask: 'entry', value: '0' })).toMatchObject({
      ok: false,
      refusal: { code: 'waits' },
    });
  });

  test('keeping children off the ramp waits for nothing', () => {
    const decked = [tick('finish/deck'), ...[1, 2, 3, 4].map(k => read('finish/anchors', `pull${k}`, 1500))];
    const waits = new Bench(decked, 40).view.steps.filter(s =>
      s.waitsFor.some(k => k.includes('pause-deck')),
    );
    expect(waits.map(s => s.key)).toContain('finish/first-use');
    expect(waits.map(s => s.key)).not.toContain('finish/keep-safe');
  });

  test('reading the three as before settles it; nothing more is said and nothing is shown as no longer asked', () => {
    const bench = new Bench(left, 9);
    three(bench, key(bench), ['0 mm', '1 mm', '0 mm']).does({
      do: 'tick',
      step: bench.pauseSteps.find(s => s.key.includes('bright'))?.key ?? '',
    });
    expect(bench.pauseSteps).toEqual([]);
    expect(bench.view.findings.filter(f => f.key.startsWith('pause'))).toEqual([]);
    expect(noLongerAsked(bench.view.build, bench.view.sheets).filter(k => k.includes('pause'))).toEqual([]);
    expect(bench.view.build.live.some(e => 'step' in e && String(e.step).includes('pause'))).toBe(true);
  });

  test('a reason settles it too, an empty one does not', () => {
    const bench = new Bench(left, 9);
    expect(decide(bench.view, { do: 'skip', step: key(bench), why: ' ' })).toMatchObject({ ok: false });
    const before = bench.view.steps.filter(s => s.state === 'waiting').length;
    bench.does({ do: 'skip', step: key(bench), why: 'it never left the jig' });
    expect(bench.pauseSteps.find(s => s.key.includes('offsets'))?.state).toBe('skipped');
    expect(bench.view.steps.filter(s => s.state === 'waiting').length).toBeLessThan(before);
  });

  test('reading the whole rail anew settles it as well', () => {
    const bench = new Bench(left, 9);
    bench.does(
      { do: 'open-survey', rail: 'B', phase: 'tacked', stations: ['0', '500', '1000'] },
      { do: 'offsets', values: ['0', '1', '0'] },
      { do: 'close-survey' },
    );
    expect(bench.pauseSteps.some(s => s.key.includes('offsets'))).toBe(false);
  });

  test('a second pause asks again', () => {
    const bench = new Bench(left, 9);
    bench.does({ do: 'skip', step: key(bench), why: 'no' });
    const first = key(bench);
    bench.now += 12 * DAY;
    expect(bench.pauseSteps.filter(s => s.key.includes('offsets')).map(s => s.key)).not.toContain(first);
    expect(bench.view.next?.key).toMatch(/^tack\/pause-offsets@B~/);
  });

  test('a steady hand gets past it, each key an entry', () => {
    const bench = new Bench(left, 30);
    let acts = 0;
    while (bench.pauseSteps.length > 0 && acts < 20) {
      const intent = nextIntent(bench.view, {});
      if (intent === null) break;
      bench.does(intent);
      acts++;
    }
    // Three stations, bright metal, four looks at the welding set.
    expect(acts).toBe(8);
    expect(bench.pauseSteps).toEqual([]);
  });
});

describe('a survey that was left half read', () => {
  /** Opened and read at the first stations; not closed. */
  const half = (stations: number): Doing[] => [
    marks('B', 1),
    ...[1, 2, 3].map(t => read(`tack/read-third@B:${t}`, 'bent', 0.1 * t)),
    ...tacked('B', [0, 1, 2, 1, 0].slice(0, stations)).slice(0, 2),
  ];
  const key = (bench: Bench) => bench.pauseSteps.find(s => s.key.includes('half-read'))?.key ?? '';
  const again = (bench: Bench, ...values: (readonly [string, string])[]): Bench =>
    bench.does(...values.map(([ask, value]): Intent => ({ do: 'read', step: key(bench), ask, value })));
  const on: Intent = { do: 'offsets', from: 4, values: ['1 mm'] };

  test('is gone on with within a week, not after a long pause before some stations are read again', () => {
    expect(decide(new Bench(half(3), 6).view, on).ok).toBe(true);
    const bench = new Bench(half(3), 9);
    expect(decide(bench.view, on)).toMatchObject({ ok: false, refusal: { code: 'waits' } });
    expect(bench.view.next?.key).toBe(key(bench));
    expect(bench.view.next?.asks?.map(a => a.ask)).toEqual(['first', 'mid', 'last']);
    again(bench, ['first', '0'], ['mid', '1'], ['last', '2.5']);
    expect(decide(bench.view, on).ok).toBe(true);
    expect(bench.view.findings.filter(f => f.key.startsWith('pause-moved'))).toEqual([]);
  });

  test('one or two stations read are all asked; none read asks nothing', () => {
    const asks = (n: number) => {
      const bench = new Bench(half(n), 9);
      return bench.pauseSteps.find(s => s.key.includes('half-read'))?.asks?.map(a => a.ask);
    };
    expect(asks(1)).toEqual(['first']);
    expect(asks(2)).toEqual(['first', 'last']);
    expect(asks(0)).toBeUndefined();
  });

  test('where they moved the survey is read anew from its first station, and nothing more is asked', () => {
    const bench = new Bench(half(3), 9);
    again(bench, ['first', '0'], ['mid', '5'], ['last', '2']);
    const found = bench.view.findings.find(f => f.key.startsWith('pause-moved'));
    expect(found).toMatchObject({ words: 'pause-half-moved', tall: { v: 4 }, fills: { station: 2 } });
    bench.does({ do: 'choose', finding: found?.key ?? '', remedy: 'pause-half-anew' });
    expect(bench.view.build.surveys.at(-1)?.readings.every(r => r === null)).toBe(true);
    expect(bench.pauseSteps.filter(s => s.key.includes('half-read'))).toEqual([]);
    expect(decide(bench.view, { ...on, from: 1 }).ok).toBe(true);
  });

  test('a hand that scripts it looks at the stations first, then goes on', () => {
    const bench = new Bench(half(3), 9);
    const first = nextIntent(bench.view, {});
    expect(first).toMatchObject({ do: 'read', step: key(bench), ask: 'first' });
  });
});

describe('what moved is said, with three ways on', () => {
  const left = [
    marks('B', 1),
    ...[1, 2, 3].map(t => read(`tack/read-third@B:${t}`, 'bent', 0.1 * t)),
    ...tacked('B', [0, 1, 2, 1, 0]),
  ];
  const key = (bench: Bench) => bench.pauseSteps.find(s => s.key.includes('offsets'))?.key ?? '';
  const found = (bench: Bench) => bench.view.findings.find(f => f.key.startsWith('pause-moved'));

  test('shifted and turned as one piece: it lies elsewhere, laying it again brings it in', () => {
    const bench = new Bench(left, 9);
    three(bench, key(bench), ['3', '6', '5']);
    expect(found(bench)).toMatchObject({ words: 'pause-rail-lies', severity: 'fix', stage: 'tack' });
    expect(found(bench)?.offers.map(o => o.remedy)).toEqual(['pause-lay-again', 'read-again', 'pause-leave']);
    expect(found(bench)?.offers[0]?.after?.within).toBe(true);
  });

  test('the middle moved alone: it is bent, by what the middle moved beside the ends', () => {
    const bench = new Bench(left, 9);
    three(bench, key(bench), ['0', '-3', '0']);
    expect(found(bench)).toMatchObject({ words: 'pause-rail-bent', tall: { v: 5 }, worst_mm: 5 });
    expect(found(bench)?.blocks).toContain('weld/sides-first@B');
    expect(bench.view.steps.find(s => s.key === 'tack/twist@B')?.state).toBe('stop');
  });

  test('as one hand reads twice, nothing moved', () => {
    const bench = new Bench(left, 9);
    three(bench, key(bench), ['1', '1', '-1']);
    expect(found(bench)).toBeUndefined();
  });

  test('laid again, the three are asked once more; left, the walk goes on', () => {
    const bench = new Bench(left, 9);
    three(bench, key(bench), ['5', '7', '5']);
    const first = found(bench)?.key ?? '';
    bench.does({ do: 'choose', finding: first, remedy: 'pause-lay-again' });
    expect(found(bench)).toBeUndefined();
    expect(bench.view.next?.key).toBe(key(bench));
    three(bench, key(bench), ['5', '7', '5']);
    expect(found(bench)?.key).not.toBe(first);
    bench.does({ do: 'choose', finding: found(bench)?.key ?? '', remedy: 'pause-leave' });
    expect(bench.view.steps.find(s => s.key === 'tack/twist@B')?.state).toBe('to do');
  });

  test('read anew as a whole: the rail gets a step for it', () => {
    const bench = new Bench(left, 9);
    three(bench, key(bench), ['0', '-3', '0']);
    bench.does({ do: 'choose', finding: found(bench)?.key ?? '', remedy: 'read-again' });
    expect(bench.view.steps.some(s => s.key.startsWith('tack/read-again@'))).toBe(true);
  });

  const frame = [read('assemble/diagonals', 'd1', 2000), read('assemble/diagonals', 'd2', 2001)];
  const diagonals = (bench: Bench, d1: string, d2: string): Bench => {
    const step = bench.pauseSteps[0]?.key ?? '';
    return bench.does({ do: 'read', step, ask: 'd1', value: d1 }, { do: 'read', step, ask: 'd2', value: d2 });
  };

  test('diagonals read again count in the frame from then on', () => {
    const bench = diagonals(new Bench(frame, 9), '2010', '1995');
    expect(bench.view.build.readings.get('assemble/diagonals#d1')?.value).toBe(2010);
    expect(bench.view.findings.some(f => f.words.includes('diagonals'))).toBe(true);
    const moved = found(bench);
    expect(moved).toMatchObject({ words: 'pause-moved', fills: { was: { v: 2000 }, now: { v: 2010 } } });
    expect(moved?.offers).toHaveLength(3);
  });

  test('a slip of the tape: the old ones stand, and are not asked for again', () => {
    const bench = diagonals(new Bench(frame, 9), '2010', '1995');
    bench.does({ do: 'choose', finding: found(bench)?.key ?? '', remedy: 'pause-old-counts' });
    expect(bench.view.build.readings.get('assemble/diagonals#d1')?.value).toBe(2000);
    expect(bench.pauseSteps).toEqual([]);
  });

  test('mended and read once more: the step asks again', () => {
    const bench = diagonals(new Bench(frame, 9), '2010', '1995');
    bench.does({ do: 'choose', finding: found(bench)?.key ?? '', remedy: 'pause-read-again' });
    expect(bench.view.next?.key).toMatch(/^assemble\/pause-diagonals@~/);
    expect(bench.view.build.readings.get('assemble/diagonals#d1')?.value).toBe(2000);
  });

  test('read anew in its own step, it is settled there', () => {
    const bench = new Bench([...frame, tick('plan/dangers')], 9);
    bench.does({ do: 'read', step: 'assemble/diagonals', ask: 'd1', value: '2000' });
    bench.does({ do: 'read', step: 'assemble/diagonals', ask: 'd2', value: '2000' });
    expect(bench.pauseSteps).toEqual([]);
  });

  test('an anchor that gave way shuts the first use again', () => {
    const pulls = [1, 2, 3, 4].map(k => read('finish/anchors', `pull${k}`, 9000));
    const bench = new Bench([tick('assemble/weld'), tick('finish/deck'), ...pulls], 30);
    const step = bench.pauseSteps[0]?.key ?? '';
    const shut = () => bench.view.steps.find(s => s.key === 'finish/first-use')?.shut ?? [];
    expect(shut()).not.toContain('anchors');
    bench.does({ do: 'read', step, ask: 'pull3', value: '300 N' });
    expect(shut()).toContain('anchors');
  });
});

describe('the words', () => {
  const LEFTS: Readonly<Record<string, readonly Doing[]>> = {
    tacked: [marks('B', 1), ...tacked('B')],
    welding: [marks('B', 1), ...tacked('B'), tick('weld/sides-first@B#1')],
    cold: survey('A', 'cold', [0, 0, 0, 0, 0], stationsOf()),
    free: survey('A', 'unclamped', [0, 0, 0, 0, 0], stationsOf()),
    sawn: [marks('A', 1), read('cut/deburr-third@A:1', 'kerf', 1.2), read('weld/machine', 'kind', 5)],
    halfRead: [marks('B', 1), ...tacked('B').slice(0, 2)],
    halfCold: survey('A', 'cold', [0, 0], stationsOf()).slice(0, 2),
    halfFree: survey('A', 'unclamped', [0], stationsOf()).slice(0, 2),
    closed: [marks('A', 1), read('tack/read-third@A:1', 'bent', 0.18), read('weld/machine', 'kind', 3)],
    clamped: [
      ...survey('A', 'cold', [0, 0, 0, 0, 0], stationsOf()),
      tick('brace/hold-base@A'),
      tick('brace/fit-uprights@A#lip'),
    ],
    squared: [read('assemble/diagonals', 'd1', 2000), read('assemble/diagonals', 'd2', 2001)],
    bare: [tick('assemble/weld')],
    primed: [tick('assemble/weld'), tick('finish/prime')],
    decked: [tick('finish/deck'), ...[1, 2, 3, 4].map(k => read('finish/anchors', `pull${k}`, 1500))],
  };

  test.each(Object.entries(LEFTS))('stand for every step: %s', (_, doings) => {
    for (const days of [30, 100]) {
      const steps = new Bench(doings, days).pauseSteps;
      expect(steps.length).toBeGreaterThan(0);
      for (const step of steps) {
        const words = WORDS.steps[step.stage]?.[step.words];
        expect(words, step.words).toBeDefined();
        const said = fillMarks(JSON.stringify(words), step.fills ?? {}, [], 'metric');
        expect(said, step.words).not.toMatch(/\{[a-z][a-z0-9-]*\}/);
        for (const ask of step.asks ?? []) expect(words?.asks?.[ask.ask], ask.ask).toBeDefined();
        for (const item of step.items ?? [])
          if (item.note !== undefined)
            expect(WORDS.says[item.note.words.replace('says.', '')], item.note.words).toBeDefined();
        expect((words?.title.split(' ').length ?? 99) <= 12, words?.title).toBe(true);
        for (const t of [words?.why, words?.caution, words?.measure])
          expect((t ?? '').length, t).toBeLessThanOrEqual(132);
      }
    }
  });

  test('stand for every finding and its ways on', () => {
    const bent = new Bench([marks('B', 1), ...tacked('B')], 9);
    three(bent, bent.pauseSteps[0]?.key ?? '', ['0', '-3', '0']);
    const lies = new Bench([marks('B', 1), ...tacked('B')], 9);
    three(lies, lies.pauseSteps[0]?.key ?? '', ['9', '10', '9']);
    const slipped = new Bench(LEFTS.clamped ?? [], 9);
    slipped.does({ do: 'read', step: slipped.pauseSteps[0]?.key ?? '', ask: 'slipped', value: '3 mm' });
    const moved = new Bench(LEFTS.sawn ?? [], 9);
    moved.does({ do: 'read', step: moved.pauseSteps[0]?.key ?? '', ask: 'kerf', value: '0.9 mm' });
    const half = new Bench(LEFTS.halfRead ?? [], 9);
    for (const ask of ['first', 'mid', 'last'])
      half.does({ do: 'read', step: half.pauseSteps[0]?.key ?? '', ask, value: '9 mm' });
    const found = [bent, lies, slipped, moved, half].map(b =>
      b.view.findings.find(f => f.key.startsWith('pause-moved')),
    );
    expect(found.map(f => f?.words)).toEqual([
      'pause-rail-bent',
      'pause-rail-lies',
      'pause-slipped',
      'pause-moved',
      'pause-half-moved',
    ]);
    for (const f of found) {
      const own = JSON.stringify(WORDS.findings[f?.words ?? '']);
      expect(fillMarks(own, f?.fills ?? {}, [], 'us')).not.toMatch(/\{[a-z]/);
      for (const o of f?.offers ?? []) {
        const words = WORDS.remedies[o.remedy];
        expect(words, o.remedy).toBeDefined();
        expect(fillMarks(JSON.stringify(words), o.fills ?? {}, [], 'us'), o.remedy).not.toMatch(/\{[a-z]/);
      }
    }
  });
});
