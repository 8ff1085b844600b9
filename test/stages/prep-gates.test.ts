import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { decide } from '../../src/coach/decide/decide.ts';
import { openFindings, viewOf } from '../../src/coach/view.ts';
import { prepSheet } from '../../src/stages/prep/sheet.ts';
import type { Gate, StepDraft } from '../../src/stages/sheet.ts';
import { read, set, tick } from './doings.ts';
import { entriesOf, NOW, situationFor } from './situation-for.ts';
import { begun } from './weld-doings.ts';

const MPH = 0.44704;
const HOUR = 3_600_000;

const steps = (...more: Doing[]): readonly StepDraft[] => prepSheet(situationFor(begun(...more))).steps;
const step = (list: readonly StepDraft[], key: string): StepDraft | undefined =>
  list.find(s => s.key === key);
const bars = (...more: Doing[]): readonly Gate[] =>
  step(steps(...more), 'prep/dry-steel')?.gates?.filter(g => g.shut) ?? [];
const names = (gates: readonly Gate[]): string[] => gates.map(g => g.words ?? g.id);

const weather = (told: {
  wind: number;
  shelter?: number;
  wet?: number;
  air?: number;
  steel?: number;
  damp?: number;
}): Doing[] => [
  read('prep/weather', 'wet', told.wet ?? 0),
  read('prep/weather', 'wind', told.wind),
  ...(told.shelter === undefined ? [] : [read('prep/weather', 'shelter', told.shelter)]),
  read('prep/weather', 'air', told.air ?? 18),
  read('prep/weather', 'steel', told.steel ?? 18),
  read('prep/weather', 'damp', told.damp ?? 50),
];
const garage = (long = 6, wide = 6, high = 2.4): Doing[] => [
  read('prep/room', 'where', 1),
  read('prep/room', 'long', long),
  read('prep/room', 'wide', wide),
  read('prep/room', 'high', high),
];
const welder = (kind: number, size: number): Doing[] => [
  read('weld/machine', 'kind', kind),
  read('weld/machine', 'wire', size),
];

describe('wind, told as a speed', () => {
  test('5 mph passes under gas, more asks for the wind behind a shelter', () => {
    expect(bars(...weather({ wind: 5 * MPH }))).toEqual([]);
    const windy = [...weather({ wind: 5.1 * MPH })];
    expect(names(bars(...windy))).toEqual(['wind-strong']);
    expect(step(steps(...windy), 'prep/weather')?.asks?.[0]?.ask).toBe('shelter');
    expect(step(steps(...weather({ wind: 1 })), 'prep/weather')?.asks?.map(a => a.ask)).not.toContain(
      'shelter',
    );
  });

  test('a shelter that still lets too much through, and one behind which the air is dead', () => {
    expect(names(bars(...weather({ wind: 6, shelter: 3 })))).toEqual(['shelter-fails']);
    expect(names(bars(...weather({ wind: 6, shelter: 0.2 })))).toEqual(['shelter-dead']);
    expect(bars(...weather({ wind: 6, shelter: 1 }))).toEqual([]);
  });

  test('a shelter read in the wind of another evening says nothing of this one', () => {
    const before = weather({ wind: 6, shelter: 1 });
    expect(names(bars(...before, read('prep/weather', 'wind', 9)))).toEqual(['wind-strong']);
    expect(bars(...before, read('prep/weather', 'wind', 9), read('prep/weather', 'shelter', 1.5))).toEqual(
      [],
    );
  });

  test('rods and cored wire without gas stand 15 mph', () => {
    for (const kind of [3, 4, 5])
      expect(bars(...welder(kind, kind === 3 ? 0.9 : 2.5), ...weather({ wind: 14.9 * MPH }))).toEqual([]);
    expect(names(bars(...welder(4, 2.5), ...weather({ wind: 15.1 * MPH })))).toEqual(['wind-strong']);
    expect(names(bars(...welder(2, 0.8), ...weather({ wind: 14.9 * MPH })))).toEqual(['wind-strong']);
  });
});

describe('air for one welder', () => {
  test('a garage of 86 m³ is three tenths of what one welder wants, and its air must move', () => {
    const s = situationFor(begun(...garage()));
    const air = prepSheet(s).figures.find(f => f.id === 'room-air')?.value;
    expect(air?.is === 'exact' ? air.v : 0).toBeCloseTo((100 * 86.4) / 283.17, 1);
    expect(names(bars(...garage(), ...weather({ wind: 0.3 })))).toEqual(['air-still']);
    expect(bars(...garage(), ...weather({ wind: 0.6 }))).toEqual([]);
  });

  test('a hall of 300 m³ under a ceiling of 5 m needs no fan; the same air under a low ceiling does', () => {
    expect(bars(...garage(10, 6, 5), ...weather({ wind: 0 }))).toEqual([]);
    expect(names(bars(...garage(15, 10, 2.5), ...weather({ wind: 0 })))).toEqual(['air-still']);
  });

  test('outdoors nothing is measured; a cellar has no way round', () => {
    expect(step(steps(read('prep/room', 'where', 0)), 'prep/room')?.asks?.length).toBe(1);
    expect(bars(read('prep/room', 'where', 0), ...weather({ wind: 0 }))).toEqual([]);
    expect(bars(read('prep/room', 'where', 2))).toMatchObject([{ id: 'cellar', never: true }]);
  });
});

describe('steel', () => {
  test('a wet rag, and rain that no reason opens', () => {
    expect(names(bars(...weather({ wind: 1, wet: 1 })))).toEqual(['steel-wet']);
    expect(bars(...weather({ wind: 1, wet: 2 }))).toMatchObject([{ words: 'rain', never: true }]);
  });

  test('zinc, plating and unknown tube, and chlorinated cleaner, no reason opens', () => {
    for (const [ask, value, gate] of [
      ['look', 2, 'tube-zinc'],
      ['look', 3, 'tube-plated'],
      ['look', 4, 'tube-unknown'],
      ['cleaner', 2, 'cleaner-chlorine'],
      ['cleaner', 3, 'cleaner-unknown'],
    ] as const)
      expect(bars(read('prep/steel', ask, value))).toMatchObject([
        { id: gate, never: true, measure: 'prep/steel' },
      ]);
    expect(bars(read('prep/steel', 'look', 1), read('prep/steel', 'cleaner', 1))).toEqual([]);
  });

  test('the number that opens the bar is the one asked first', () => {
    const first = (...more: Doing[]) => step(steps(...more), 'prep/weather')?.asks?.[0]?.ask;
    expect(first(...weather({ wind: 1, wet: 1 }))).toBe('wet');
    expect(first(...weather({ wind: 1, steel: 3 }))).toBe('steel');
    expect(first(...weather({ wind: 6, shelter: 3 }))).toBe('shelter');
    expect(
      step(steps(read('prep/steel', 'look', 1), read('prep/steel', 'cleaner', 2)), 'prep/steel')?.asks?.[0]
        ?.ask,
    ).toBe('cleaner');
  });
});

describe('lens', () => {
  test('wire on 3 mm wants 10 at least and 11 to begin with; 9 is refused', () => {
    expect(bars(read('prep/lens', 'shade', 9))).toMatchObject([
      { id: 'lens-light', never: true, fills: { least: 10, start: 11, lens: 9 } },
    ]);
    expect(bars(read('prep/lens', 'shade', 10))).toEqual([]);
  });

  test('a rod of 2.5 mm at 100 A stands 8', () => {
    expect(bars(...welder(4, 2.5), read('prep/lens', 'shade', 8))).toEqual([]);
    expect(names(bars(...welder(4, 2.5), read('prep/lens', 'shade', 7)))).toEqual(['lens-light']);
  });
});

describe('disc against grinder', () => {
  const fitted = (grinder: number, disc: number): readonly StepDraft[] =>
    steps(read('prep/discs', 'grinder', grinder), read('prep/discs', 'disc', disc));

  test('a slower disc is refused for good, one as fast passes', () => {
    expect(step(fitted(11_500, 11_000), 'prep/disc-fits')?.gates).toMatchObject([
      { id: 'disc-slow', shut: true, never: true, measure: 'prep/discs' },
    ]);
    expect(step(fitted(11_500, 11_500), 'prep/disc-fits')).toBeUndefined();
    expect(step(fitted(11_500, 12_250), 'prep/disc-fits')).toBeUndefined();
  });

  test('a marking that no disc of 125 mm has was misread', () => {
    expect(step(fitted(11_500, 25_000), 'prep/disc-fits')?.gates?.[0]?.id).toBe('disc-misread');
  });

  test('neither a reason nor a skip passes it', () => {
    const view = viewOf(
      entriesOf(
        begun(tick('plan/dangers'), read('prep/discs', 'grinder', 11_500), read('prep/discs', 'disc', 9000)),
      ),
      NOW,
    );
    for (const intent of [
      { do: 'override', step: 'prep/disc-fits', gate: 'disc-slow', why: 'only this once' },
      { do: 'skip', step: 'prep/disc-fits', why: 'only this once' },
      { do: 'tick', step: 'prep/disc-fits' },
    ] as const)
      expect(decide(view, intent).ok).toBe(false);
    expect(view.steps.find(s => s.key === 'prep/clean-back')?.waitsFor).toContain('prep/disc-fits');
  });

  test('the rails are not sawn with it either, whatever is chosen about it, until another disc is read', () => {
    const slow = begun(read('prep/discs', 'grinder', 11_500), read('prep/discs', 'disc', 9000));
    const finding = (doings: Doing[]) =>
      prepSheet(situationFor(doings)).findings.find(f => f.words === 'disc-slow');
    expect(finding(slow)?.severity).toBe('stop');
    expect(finding(slow)?.offers.length).toBe(3);
    const chosen: Doing[] = [
      ...slow,
      { kind: 'remedy-chosen', finding: finding(slow)?.key ?? '', remedy: 'disc-hand-saw', plan: {} },
    ];
    const view = viewOf(entriesOf(chosen), NOW);
    const open = openFindings(view).find(f => f.words === 'disc-slow');
    expect(open?.blocks).toContain('cut/saw-third@A:1');
    expect(open?.blocks?.filter(key => !view.steps.some(s => s.key === key))).toEqual([]);
    expect(finding([...chosen, read('prep/discs', 'disc', 12_250)])).toBeUndefined();
  });
});

describe('the place', () => {
  test('what cannot be put right shuts the list until it is told right', () => {
    const shut = step(steps(read('prep/place', 'floor', 2)), 'prep/place')?.gates ?? [];
    expect(shut).toMatchObject([{ words: 'floor-bitumen', never: true, measure: 'prep/place' }]);
    expect(
      step(steps(read('prep/place', 'floor', 2), read('prep/place', 'floor', 0)), 'prep/place')?.gates,
    ).toEqual([]);
    expect(step(steps(read('prep/place', 'floor', 1)), 'prep/place')?.gates?.[0]).not.toHaveProperty('never');
  });

  test('told wrong once the list is walked, it bars the arc', () => {
    expect(names(bars(tick('prep/place#others'), read('prep/place', 'others', 1)))).toEqual(['child-near']);
  });
});

describe('a reason is kept, and opens one evening', () => {
  const windy = weather({ wind: 6 });
  const gateOf = (doings: Doing[]): string => bars(...doings)[0]?.id ?? '';

  test('the arc waits until the bar is passed with a reason and ticked; the next windy reading bars it again', () => {
    const told = begun(...windy);
    const waits = (doings: Doing[]): boolean =>
      viewOf(entriesOf(doings), NOW)
        .steps.find(s => s.key === 'weld/test-piece')
        ?.waitsFor.includes('prep/dry-steel') === true;
    expect(waits(told)).toBe(true);
    const gate = gateOf(windy);
    const passed: Doing[] = [
      ...told,
      { kind: 'gate-overridden', step: 'prep/dry-steel', gate, why: 'wall of the house on the weather side' },
    ];
    expect(waits(passed)).toBe(true);
    const ticked: Doing[] = [...passed, tick(`prep/dry-steel#${gate}`)];
    expect(waits(ticked)).toBe(false);
    expect(waits([...ticked, read('prep/weather', 'wind', 7)])).toBe(true);
  });
});

describe('fire watch', () => {
  const after = (hours: number): readonly StepDraft[] => {
    const s = situationFor(begun(tick('weld/sides-first@A#1')));
    const spark = Date.parse(s.build.ticks.get('weld/sides-first@A#1')?.at ?? '');
    return prepSheet({ ...s, now: spark + hours * HOUR }).steps;
  };
  const watch = (list: readonly StepDraft[], name: string): StepDraft | undefined =>
    list.find(s => s.words === name);

  test('an hour after the last spark the look can be ticked, after three the later one', () => {
    expect(watch(after(0.25), 'watch')?.gates).toMatchObject([
      { words: 'watch-on', shut: true, fills: { left: { v: 0.75 * 3600, as: 'time' } } },
    ]);
    expect(watch(after(1), 'watch')?.gates?.[0]?.shut).toBe(false);
    expect(watch(after(1), 'watch-late')?.gates?.[0]).toMatchObject({
      shut: true,
      fills: { 'late-left': { v: 2 * 3600, as: 'time' } },
    });
    expect(watch(after(3), 'watch-late')?.gates?.[0]?.shut).toBe(false);
    expect(watch(after(13), 'watch')).toBeUndefined();
  });

  test('another spark begins it anew; marking and measuring do not', () => {
    const key = (...more: Doing[]): string | undefined =>
      watch(steps(tick('weld/sides-first@A#1'), ...more), 'watch')?.key;
    expect(key(tick('weld/sides-first@A#2'))).not.toBe(key());
    expect(key(tick('tack/lines#1'))).toBe(key());
    expect(watch(steps(), 'watch')).toBeUndefined();
  });

  test('a flap disc on edges and rust and a wheel through bars spark too; a hacksaw does not', () => {
    const watched = (...doings: Doing[]): boolean => watch(steps(...doings), 'watch') !== undefined;
    for (const spark of [
      'finish/edges#outside',
      'cut/crossmembers#2',
      'brace/uprights@A#lip',
      'assemble/trim-rails',
    ])
      expect(watched(tick(spark))).toBe(true);
    expect(watched(read('finish/clean', 'rust', 0))).toBe(true);
    expect(watched(tick('finish/deck-check#gaps'))).toBe(false);
    const hacksaw = read('cut/saw', 'saw', 4);
    expect(watched(hacksaw, tick('cut/crossmembers#2'))).toBe(false);
    expect(watched(hacksaw, tick('finish/edges#outside'))).toBe(true);
  });
});

describe('alone', () => {
  const evening = (helpers: number): Doing[] => [
    read('plan/helpers', 'helpers', helpers),
    tick('weld/sides-first@A#1'),
    tick('weld/sides-first@A#2'),
    tick('weld/sides-first@A#3'),
  ];
  const found = (helpers: number, later = 0) => {
    const s = situationFor(begun(...evening(helpers)));
    return prepSheet({ ...s, now: s.now - 0.5 * HOUR + later }).findings.find(f => f.words === 'alone-late');
  };

  test('past two and a half hours of sparks with nobody there, with ways to go on', () => {
    expect(found(0)?.offers.map(o => o.remedy)).toContain('alone-stop');
    expect(found(0)?.offers.length).toBeGreaterThanOrEqual(3);
    expect(found(2)).toBeUndefined();
    expect(found(0, 2 * HOUR)).toBeUndefined();
  });
});

describe('a rolled rail', () => {
  test('has no thin discs to count', () => {
    const rolled = steps(set('route', 'rolled'));
    expect(step(rolled, 'prep/discs')?.asks?.map(a => a.ask)).toEqual(['grinder', 'disc']);
    expect(rolled.some(s => s.words === 'discs-left')).toBe(false);
  });
});
