import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { viewOf } from '../../src/coach/view.ts';
import { prepSheet, STEPS } from '../../src/stages/prep/sheet.ts';
import { say } from '../../src/words/say.ts';
import { read, set, tick } from './doings.ts';
import { entriesOf, situationFor } from './situation-for.ts';
import { begun } from './weld-doings.ts';
import { longWords, WORDS, wordGaps } from './word-gaps.ts';

const sheet = (...more: Parameters<typeof begun>) => prepSheet(situationFor(begun(...more)));
const step = (s: ReturnType<typeof sheet>, key: string) => s.steps.find(x => x.key === key);
const weather = (air: number, steel: number, damp: number) => [
  read('prep/weather', 'air', air),
  read('prep/weather', 'steel', steel),
  read('prep/weather', 'damp', damp),
];

describe('the place and its power', () => {
  test('a lead told in the plan is not asked again; one never told is asked here', () => {
    expect(step(sheet(), 'prep/lead')?.asks?.[0]?.ask).toBe('lead');
    expect(step(sheet(read('plan/power', 'lead', 6)), 'prep/lead')).toBeUndefined();
    // Told here first and in the plan later: the step that was done stays.
    expect(
      step(sheet(read('prep/lead', 'lead', 6), read('plan/power', 'lead', 6)), 'prep/lead'),
    ).toBeDefined();
  });

  test('the lead measured in the plan chooses the words and shuts the gate here', () => {
    const words = (m: number): string | undefined =>
      step(sheet(read('plan/power', 'lead', m)), 'prep/power')?.words;
    expect(words(5)).toBe('power');
    expect(words(12)).toBe('power-thick');
    const far = step(sheet(read('plan/power', 'lead', 25)), 'prep/power');
    expect(far?.words).toBe('power-far');
    expect(far?.gates?.[0]).toMatchObject({ id: 'lead-long', shut: true, measure: 'plan/power' });
    expect(step(sheet(read('plan/power', 'lead', 12)), 'prep/power')?.gates).toEqual([]);
  });

  test('chlorinated solvent is stopped on before anything is cleaned', () => {
    expect(step(sheet(), 'prep/place')?.cautions).toContain('prep-solvent');
    expect(WORDS.cautions['prep-solvent']?.text).toMatch(/phosgene/);
  });

  test('is cleared as far as is paced out, in whole metres or feet', () => {
    const fills = step(sheet(), 'prep/place')?.fills ?? {};
    const title = (system: 'metric' | 'us') =>
      say({ content: WORDS, system }, { words: 'steps.prep.place.title', fills });
    expect(title('metric')).toContain('11 m all round');
    expect(title('us')).toContain('35 ft all round');
  });
});

describe('the weather', () => {
  test('dew point 9.3 °C at 20 °C and 50 %: steel wants 12.3 °C', () => {
    // 20 °C, 50 %: 9.3 °C in every psychrometric table; the calculator itself is held against tables in its outside test.
    const figures = sheet(...weather(20, 18, 50)).figures;
    const dew = figures.find(f => f.id === 'dew-point')?.value;
    const least = figures.find(f => f.id === 'steel-least')?.value;
    expect(dew).toMatchObject({ is: 'exact' });
    expect(dew?.is === 'exact' ? dew.v : 0).toBeCloseTo(9.3, 1);
    expect(least?.is === 'exact' ? least.v : 0).toBeCloseTo(12.3, 1);
  });

  test('good weather asks for nothing; damp or cold steel shuts a gate that measuring again opens', () => {
    expect(step(sheet(...weather(20, 18, 50)), 'prep/dry-steel')).toBeUndefined();
    const damp = step(sheet(...weather(14, 12.5, 90)), 'prep/dry-steel');
    expect(damp?.gates?.map(g => g.words)).toEqual(['steel-damp']);
    expect(damp?.gates?.[0]?.measure).toBe('prep/weather');
    const cold = step(sheet(...weather(2, 2, 40)), 'prep/dry-steel');
    expect(cold?.gates?.map(g => g.words)).toEqual(['steel-cold']);
    const frost = step(sheet(...weather(-20, -20, 60)), 'prep/dry-steel');
    expect(frost?.gates?.find(g => g.words === 'air-cold')?.never).toBe(true);
  });

  test('wet steel keeps the tack and the test weld waiting', () => {
    const view = viewOf(entriesOf(begun(...weather(14, 12.5, 90))), 0);
    for (const key of ['weld/test-piece', 'tack/close-third@A:1', 'weld/sides-first@A'])
      expect(view.steps.find(s => s.key === key)?.waitsFor).toContain('prep/dry-steel');
    const dry = viewOf(entriesOf(begun(...weather(14, 14.5, 60))), 0);
    expect(dry.steps.find(s => s.key === 'weld/test-piece')?.waitsFor).not.toContain('prep/dry-steel');
  });
});

describe('slit faces and joints', () => {
  test('closed faces are opened to a V on 3 mm wall and left alone on 2 mm', () => {
    expect(step(sheet(), 'prep/open-faces@A')?.needs).toContain('tack/survey@A');
    const thin = sheet(set('tube', { depth_mm: 40, width_mm: 40, wall_mm: 2 }));
    expect(step(thin, 'prep/open-faces@A')).toBeUndefined();
    expect(step(sheet(set('route', 'rolled')), 'prep/open-faces@A')).toBeUndefined();
  });

  test('the tube as measured decides, not as bought', () => {
    const measured = sheet(read('cut/measure-tube@A', 'wall', 2.3), read('cut/measure-tube@B', 'wall', 3));
    expect(step(measured, 'prep/open-faces@A')).toBeUndefined();
    expect(step(measured, 'prep/open-faces@B')).toBeDefined();
  });

  test('one vent a closed tube; uprights come onto the list when all of a rail are cut', () => {
    const s = situationFor(begun());
    const before = step(prepSheet(s), 'prep/vents')?.items?.map(i => i.key) ?? [];
    expect(before).toContain('prep/vents#curved rail@A');
    expect(before).toContain('prep/vents#base rail@B');
    expect(before.some(k => k.includes('upright'))).toBe(false);
    const uprights = s.ramp.members.filter(m => m.rail === 'A' && m.kind.endsWith('upright'));
    const cut = uprights.map(
      (m): Doing => ({
        kind: 'piece-cut',
        need: m.need,
        section: '30x30x2',
        asked_mm: m.long_mm,
        length_mm: m.long_mm,
        typed: 'as asked',
        ends_rad: [0, 0],
      }),
    );
    const some = step(sheet(...cut.slice(1)), 'prep/vents')?.items?.length;
    expect(some).toBe(before.length);
    const all = step(sheet(...cut), 'prep/vents')?.items?.map(i => i.key) ?? [];
    expect(all.length).toBe(before.length + uprights.length);
  });

  test('vents and drains are counted over the whole frame: two drains a base rail, one a curved rail', () => {
    const s = situationFor(begun());
    const drains = prepSheet(s).figures.find(f => f.id === 'drain-count')?.value;
    expect(drains).toEqual({ is: 'exact', v: 3 * s.ramp.rails.length });
  });
});

describe('words', () => {
  test('each step has its words and no words are left over', () => {
    expect(
      Object.keys(WORDS.steps.prep ?? {}).filter(k => !(STEPS as readonly string[]).includes(k)),
    ).toEqual([]);
    expect([...STEPS].filter(k => WORDS.steps.prep?.[k] === undefined)).toEqual([]);
    expect(longWords('prep')).toEqual([]);
  });

  test('everything a page emits is said, and every mark is filled', () => {
    for (const more of [
      [],
      [set('route', 'rolled')],
      [read('plan/power', 'lead', 25), ...weather(-20, -20, 90)],
      [read('plan/power', 'lead', 12), ...weather(20, 18, 50), tick('weld/sides-first@A#1')],
      [...weather(20, 18, 50), read('prep/weather', 'wet', 1), read('prep/weather', 'wind', 6)],
      [...weather(20, 18, 50), read('prep/weather', 'wind', 6), read('prep/weather', 'shelter', 0.1)],
      [read('prep/weather', 'wet', 2), read('prep/weather', 'wind', 0), ...weather(20, 18, 50)],
      [read('prep/room', 'where', 2)],
      [
        ...['long', 'wide', 'high'].map((ask, i) => read('prep/room', ask, [6, 6, 2.4][i] ?? 0)),
        read('prep/room', 'where', 1),
        read('prep/weather', 'wind', 0.1),
        ...weather(20, 18, 50),
      ],
      ...[2, 3, 4].map(look => [read('prep/steel', 'look', look)]),
      ...[2, 3].map(can => [read('prep/steel', 'cleaner', can)]),
      [read('prep/lens', 'shade', 7)],
      [read('prep/discs', 'grinder', 11_500), read('prep/discs', 'disc', 10_000)],
      [read('prep/discs', 'grinder', 11_500), read('prep/discs', 'disc', 40_000)],
      [read('prep/discs', 'thin', 1)],
      ...(['extractor', 'chargers', 'fuel', 'flames', 'put-out', 'others'] as const).map(ask => [
        read('prep/place', ask, 1),
      ]),
      ...[1, 2, 3].map(floor => [tick('prep/place#others'), read('prep/place', 'floor', floor)]),
      ...[1, 2, 3, 4, 5].map(kind => [
        read('weld/machine', 'kind', kind),
        read('weld/machine', 'wire', kind > 3 ? 2.5 : 0.8),
        read('prep/supplies@rails', 'spool', 0.1),
        read('prep/supplies@rails', 'rods', 3),
        read('prep/supplies@rails', 'co2', 0.1),
        read('prep/supplies@rails', 'bottle', 2000),
        read('prep/supplies@rails', 'needle', 5),
        read('prep/supplies@sides', 'spool', 0.05),
        read('prep/supplies@sides', 'needle', 2),
        tick('tack/close-third@A:1#1'),
      ]),
    ]) {
      const s = situationFor(begun(...more));
      const view = viewOf(entriesOf(begun(...more)), s.now);
      for (const hours of [0, 48])
        expect(
          wordGaps(
            prepSheet({ ...s, now: s.now + hours * 3_600_000 }),
            STEPS,
            view.sheets.flatMap(x => x.figures),
          ),
        ).toEqual([]);
    }
  });
});
