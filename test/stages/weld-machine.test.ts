import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { decide } from '../../src/coach/decide/decide.ts';
import { viewOf } from '../../src/coach/view.ts';
import type { Figure, Finding, SheetDraft } from '../../src/stages/sheet.ts';
import { STEPS, weldSheet } from '../../src/stages/weld/sheet.ts';
import { read, set, tick } from './doings.ts';
import { entriesOf, NOW, situationFor } from './situation-for.ts';
import { begun } from './weld-doings.ts';
import { WORDS, wordGaps } from './word-gaps.ts';

type Doings = Parameters<typeof situationFor>[0];
const sheetOf = (doings: Doings): SheetDraft => weldSheet(situationFor(doings));
const step = (doings: Doings, key: string) => sheetOf(doings).steps.find(x => x.key === key);
const value = (doings: Doings, id: string): Figure['value'] | undefined =>
  sheetOf(doings).figures.find(f => f.id === id)?.value;
const exact = (doings: Doings, id: string): number => {
  const v = value(doings, id);
  return v?.is === 'exact' ? v.v : Number.NaN;
};
const likely = (doings: Doings, id: string): number => {
  const v = value(doings, id);
  return v?.is === 'band' ? v.likely : Number.NaN;
};
const gates = (doings: Doings, key: string) => step(doings, key)?.gates?.map(g => g.id) ?? [];
const finding = (doings: Doings, words: string): Finding | undefined =>
  sheetOf(doings).findings.find(f => f.words === words);

const machine = (kind: number, wire: number, most = 180, mains = 230): Doing[] => [
  read('weld/machine', 'kind', kind),
  read('weld/machine', 'wire', wire),
  read('weld/machine', 'most', most),
  read('weld/machine', 'mains', mains),
];
const labels = (spool: number, polarity: number, bottle?: number): Doing[] => [
  read('weld/settings', 'spool', spool),
  ...(bottle === undefined ? [] : [read('weld/settings', 'bottle', bottle)]),
  read('weld/settings', 'polarity', polarity),
];
const WITH = { 'weld-kind': 1, 'weld-wire': 0.9, 'weld-wall': 3, 'joint-wall': 2 };
/** A reading that froze what it was welded with. */
const by = (step: string, ask: string, v: number): Doing => ({ ...read(step, ask, v), basis: WITH }) as Doing;

const MIX = machine(1, 0.9);
const POST = set('post', { depth_mm: 30, width_mm: 30, wall_mm: 2 });
const bench = (...more: Doing[]) => begun(POST, ...MIX, ...more);

describe('the machine told', () => {
  test('its wire, highest current and mains are asked after its kind', () => {
    expect(step(begun(), 'weld/machine')?.asks?.map(a => a.ask)).toEqual(['kind', 'wire', 'most', 'mains']);
  });

  test('each wall of the build has its own settings: 118 A in the 3 mm rail, 79 A at the 2 mm uprights', () => {
    expect(likely(bench(), 'weld-amps')).toBeCloseTo(3 / 0.0254, 3);
    expect(likely(bench(), 'joint-amps')).toBeCloseTo(2 / 0.0254, 3);
    expect(likely(bench(), 'joint-feed')).toBeLessThan(likely(bench(), 'weld-feed'));
    expect(likely(bench(), 'joint-volts')).toBeLessThan(likely(bench(), 'weld-volts'));
  });

  test('each number tells where it comes from this time: makers, memory, the chart in the door', () => {
    const source = (doings: Doings, id: string): string | undefined =>
      sheetOf(doings).figures.find(f => f.id === id)?.source;
    // Makers' tables of solid wire were read: their source stands with the words.
    expect(source(bench(), 'weld-feed')).toBeUndefined();
    const cored = begun(POST, ...machine(3, 0.9));
    expect(source(cored, 'weld-feed')).toBe('weld-remembered');
    expect(source(cored, 'weld-volts')).toBe('weld-remembered');
    expect(WORDS.sources['weld-remembered']?.mark).toBe('memory');
    const chart = bench(by('weld/settings', 'chart-volts', 18), by('weld/settings', 'chart-feed', 5));
    expect(source(chart, 'weld-feed')).toBe('weld-door-chart');
    expect(source(chart, 'joint-feed')).toBeUndefined();
    for (const doings of [cored, chart])
      expect(wordGaps(sheetOf(doings)).filter(gap => gap.startsWith('sources.'))).toEqual([]);
  });

  test('no figure asks more than the machine gives, and one too small for the wall is stopped', () => {
    const small = begun(POST, ...machine(1, 0.9, 105));
    expect(likely(small, 'weld-amps')).toBe(105);
    expect(gates(small, 'weld/settings')).toEqual([]);
    const smaller = begun(POST, ...machine(1, 0.9, 90));
    expect(gates(smaller, 'weld/settings')).toEqual(['machine-small']);
    // What is to be read again comes first.
    expect(step(smaller, 'weld/machine')?.asks?.[0]?.ask).toBe('most');
  });

  test('4 mm of wall is more than one pass from a 120 V socket', () => {
    const tube = set('tube', { depth_mm: 40, width_mm: 40, wall_mm: 4 });
    expect(gates(begun(tube, ...machine(1, 0.9, 180, 120)), 'weld/settings')).toEqual(['mains-small']);
    expect(gates(begun(tube, ...machine(1, 0.9, 180, 230)), 'weld/settings')).toEqual([]);
    // Rods are not held to it.
    expect(gates(begun(tube, ...machine(4, 3.2, 180, 120)), 'weld/settings')).toEqual([]);
  });

  test('how long it may burn comes from its mains and its current', () => {
    const duty = (doings: Doings) =>
      step(doings, 'weld/first-evening')?.items?.find(i => i.name === 'duty')?.note?.fills;
    // 30 % at 140 A, so 42 % at 118 A: 253 s, a slit of 108 mm takes 26 s.
    expect(duty(bench())?.slits).toBe(9);
    // 20 % at 90 A, so 11.6 % at 118 A: 70 s.
    expect(duty(begun(POST, ...machine(1, 0.9, 140, 120)))?.slits).toBe(2);
  });
});

describe('cored wire of 0.8 mm, whose feed no source gives', () => {
  const thin = (...more: Doing[]) => begun(POST, ...machine(3, 0.8), ...labels(2, 2), ...more);
  const by = (step: string, ask: string, v: number): Doing =>
    ({ ...read(step, ask, v), basis: { ...WITH, 'weld-kind': 3, 'weld-wire': 0.8 } }) as Doing;
  const bead = (...more: Doing[]) =>
    thin(
      by('weld/worked-slits', 'feed', 2.5),
      by('weld/worked-slits', 'volts', 15),
      ...more,
      by('weld/worked-slits', 'long', 60),
      by('weld/worked-slits', 'took', 6),
    );
  const findings = (doings: Doings) => weldSheet(situationFor(doings)).findings.map(f => f.words);

  test('the page says so and sends to the door chart; with the chart typed in it is set like any other', () => {
    expect(step(thin(), 'weld/settings')?.words).toBe('settings-cored-chart');
    expect(WORDS.steps.weld?.['settings-cored-chart']?.do).toMatch(/No wire feed is known/);
    expect(step(thin(), 'weld/settings')?.tall).toEqual(['weld-amps']);
    const typed = ['chart', 'joint'].flatMap(on => [
      by('weld/settings', `${on}-volts`, 15),
      by('weld/settings', `${on}-feed`, 2.5),
    ]);
    expect(step(thin(...typed), 'weld/settings')?.words).toBe('settings-cored');
    // 0.9 mm has its feed.
    expect(step(begun(POST, ...machine(3, 0.9)), 'weld/settings')?.words).toBe('settings-cored');
  });

  test('a timed bead asks the current the machine shows, and its heat is judged by it', () => {
    expect(step(thin(), 'weld/worked-slits')?.asks?.map(a => a.ask)).toEqual([
      'feed',
      'volts',
      'shown',
      'long',
      'took',
    ]);
    // 100 A at 15 V in 60 mm of 6 s: 0.8 · 1500 / 10 = 120 J/mm, a third of what 3 mm wants.
    expect(findings(bead(by('weld/worked-slits', 'shown', 100)))).toContain('bead-cold');
    expect(findings(bead(by('weld/worked-slits', 'shown', 0))).filter(w => w.startsWith('bead'))).toEqual([]);
  });

  test('a bead that an older build timed without it stays written down', () => {
    expect(step(bead(), 'weld/worked-slits')?.asks?.map(a => a.ask)).not.toContain('shown');
  });
});

describe('spool, bottle and leads that do not go together', () => {
  const HOT = [
    'weld/settings',
    'weld/test-piece',
    'weld/coupons',
    'weld/sides-first@A',
    'weld/sides-rest@B',
    'weld/tops-odd@A',
    'weld/tops-even@B',
    'weld/joint-settings',
  ];

  test.each([
    ['cored wire on the spool, solid told', 1, labels(2, 1, 1), 'spool-wrong'],
    ['aluminium wire', 1, labels(4, 1, 1), 'spool-other'],
    ['CO2 in the bottle, mix told', 1, labels(1, 1, 2), 'gas-is-co2'],
    ['mix in the bottle, CO2 told', 2, labels(1, 1, 1), 'gas-is-mix'],
    ['argon alone', 1, labels(1, 1, 3), 'gas-argon'],
    ['another gas', 2, labels(1, 1, 4), 'gas-other'],
    ['solid wire on minus', 1, labels(1, 2, 1), 'pole-plus'],
    ['cored wire on plus', 3, labels(2, 1), 'pole-minus'],
    ['E7018 on minus', 5, labels(2, 2), 'pole-rod'],
    ['E7018 packet, E6013 told', 4, labels(2, 1), 'packet-wrong'],
  ] as const)('%s: every arc of the page is stopped', (_, kind, told, gate) => {
    const doings = begun(POST, ...machine(kind, kind >= 4 ? 2.5 : 0.9), ...told);
    for (const key of HOT) {
      const shut = step(doings, key)?.gates?.filter(g => g.shut) ?? [];
      expect(shut.map(g => g.id)).toEqual([gate]);
      expect(shut[0]?.measure).toBe('weld/settings');
    }
  });

  test.each([
    [1, labels(1, 1, 1)],
    [2, labels(1, 1, 2)],
    [3, labels(2, 2)],
    [4, labels(1, 3)],
    [4, labels(1, 2)],
    [5, labels(2, 3)],
  ] as const)('kind %d as it should be stops nothing', (kind, told) => {
    const doings = begun(POST, ...machine(kind, kind >= 4 ? 2.5 : 0.9), ...told);
    for (const key of HOT) expect(gates(doings, key)).toEqual([]);
  });

  test('what is wrong is read again first, and reading it right opens the arc', () => {
    const wrong = bench(...labels(1, 2, 1), by('weld/settings', 'chart-volts', 0));
    expect(step(wrong, 'weld/settings')?.asks?.[0]?.ask).toBe('polarity');
    const view = viewOf(entriesOf(wrong), NOW);
    const coupons = view.steps.find(s => s.key === 'weld/coupons');
    expect(coupons?.shut).toEqual(['pole-plus']);
    const refused = decide(view, { do: 'tick', step: 'weld/test-piece' });
    expect(refused.ok).toBe(false);
    const again = decide(view, { do: 'read', step: 'weld/settings', ask: 'polarity', value: 1 });
    expect(again.ok).toBe(true);
    expect(gates(bench(...labels(1, 1, 1)), 'weld/coupons')).toEqual([]);
  });

  test('no reason opens aluminium wire or oxygen', () => {
    expect(step(bench(...labels(4, 1, 1)), 'weld/coupons')?.gates?.[0]?.never).toBe(true);
    expect(step(bench(...labels(1, 1, 4)), 'weld/coupons')?.gates?.[0]?.never).toBe(true);
    expect(step(bench(...labels(1, 1, 3)), 'weld/coupons')?.gates?.[0]?.never).toBeUndefined();
  });
});

describe('the chart in the machine’s door', () => {
  test('goes before the rule, wall by wall', () => {
    const chart = bench(
      by('weld/settings', 'chart-volts', 19.2),
      by('weld/settings', 'chart-feed', 5.5),
      by('weld/settings', 'joint-volts', 17),
      by('weld/settings', 'joint-feed', 3.4),
    );
    expect([exact(chart, 'weld-volts'), exact(chart, 'weld-feed')]).toEqual([19.2, 5.5]);
    expect([exact(chart, 'joint-volts'), exact(chart, 'joint-feed')]).toEqual([17, 3.4]);
    // 0.9 mm wire: 1.6 in a minute for each ampere.
    expect(exact(chart, 'weld-amps')).toBeCloseTo(5.5 / 0.0254 / 1.6, 6);
  });

  test('nought is no chart: nothing more is asked of it, and the rule stands', () => {
    const none = bench(by('weld/settings', 'chart-volts', 0));
    const asks = step(none, 'weld/settings')?.asks?.map(a => a.ask);
    expect(asks).toEqual(['spool', 'bottle', 'polarity', 'chart-volts']);
    expect(value(none, 'weld-volts')?.is).toBe('band');
  });

  test('read for another wire it says nothing', () => {
    const other = begun(
      POST,
      ...machine(1, 0.8),
      by('weld/settings', 'chart-volts', 19.2),
      by('weld/settings', 'chart-feed', 5.5),
    );
    expect(value(other, 'weld-volts')?.is).toBe('band');
  });

  test('uprights of the rail’s wall need no second row', () => {
    const post = set('post', { depth_mm: 30, width_mm: 30, wall_mm: 3 });
    const asks = step(begun(post, ...MIX), 'weld/settings')?.asks?.map(a => a.ask) ?? [];
    expect(asks.filter(a => a.startsWith('joint'))).toEqual([]);
  });
});

describe('test pieces', () => {
  const broke = (piece: string, look: number, round = ''): Doing => by(`weld/coupons${round}`, piece, look);

  test('three on the slit route, two of a rolled rail; a piece that held is asked no more', () => {
    expect(step(bench(), 'weld/coupons')?.asks?.map(a => a.ask)).toEqual(['tee', 'slit', 'sawn']);
    const rolled = begun(set('route', 'rolled'), POST, ...MIX);
    expect(step(rolled, 'weld/coupons')?.asks?.map(a => a.ask)).toEqual(['tee', 'sawn']);
    const held = bench(broke('tee', 1), broke('slit', 1), broke('sawn', 1));
    expect(step(held, 'weld/coupons')?.asks?.length).toBe(3);
    expect(step(held, 'weld/coupons:2')).toBeUndefined();
  });

  test('one that peeled is told with the knob to turn, and alone is welded again; the rails wait for it', () => {
    const peeled = bench(broke('tee', 1), broke('slit', 2), broke('sawn', 1));
    const found = finding(peeled, 'piece-cold');
    expect(found?.offers.length).toBeGreaterThanOrEqual(3);
    const more = found?.offers.find(o => o.remedy === 'piece-more-feed');
    const feed = likely(peeled, 'weld-feed');
    expect(more?.plan.feed_m_min).toBeCloseTo(1.1 * feed, 6);
    expect(step(peeled, 'weld/coupons')).toBeUndefined();
    expect(step(peeled, 'weld/coupons:2')?.asks?.map(a => a.ask)).toEqual(['slit']);
    for (const key of ['weld/sides-first@A', 'weld/sides-rest@A', 'weld/tops-odd@A', 'weld/tops-even@A'])
      expect(step(peeled, key)?.needs).toContain('weld/coupons:2');
    const chosen: Doing = {
      kind: 'remedy-chosen',
      finding: found?.key ?? '',
      remedy: 'piece-more-feed',
      plan: more?.plan ?? {},
    };
    expect(exact([...peeled, chosen], 'weld-feed')).toBeCloseTo(1.1 * feed, 6);
    const again = [...peeled, chosen, broke('slit', 1, ':2')];
    expect(finding(again, 'piece-cold')).toBeUndefined();
    expect(step(again, 'weld/coupons:3')).toBeUndefined();
  });

  test.each([
    ['a hole', 3, 'piece-hot', 'piece-less-feed'],
    ['pinholes', 4, 'piece-pores', 'piece-gas'],
    ['torn along the edge', 5, 'piece-edge', 'piece-less-volts'],
  ] as const)('%s', (_, look, words, remedy) => {
    const found = finding(bench(broke('tee', look)), words);
    expect(found?.offers.map(o => o.remedy)).toContain(remedy);
    expect(found?.offers.map(o => o.remedy)).toContain('leave-broken');
  });

  test('rods are turned by their current, and dried instead of given gas', () => {
    const rods = begun(POST, ...machine(4, 2.5), read('weld/coupons', 'tee', 2));
    expect(finding(rods, 'piece-cold')?.offers.map(o => o.remedy)).toContain('piece-more-amps');
    const pores = begun(POST, ...machine(4, 2.5), read('weld/coupons', 'tee', 4));
    expect(finding(pores, 'piece-pores')?.offers.map(o => o.remedy)).toContain('piece-dry');
  });

  test('after eight weeks without an arc they are asked again, and the walk goes there first', () => {
    const done = bench(broke('tee', 1), broke('slit', 1), broke('sawn', 1), tick('weld/sides-first@A#1'));
    const later = NOW + 9 * 7 * 86_400_000;
    const view = viewOf(entriesOf(done), later);
    const again = view.steps.find(s => s.key === 'weld/coupons:2');
    expect(again?.words).toBe('coupons-pause');
    expect(again?.asks?.map(a => a.ask)).toEqual(['tee', 'slit', 'sawn']);
    expect(view.steps.find(s => s.key === 'weld/sides-rest@A')?.needs).toContain('weld/coupons:2');
    expect(viewOf(entriesOf(done), NOW).steps.some(s => s.key === 'weld/coupons:2')).toBe(false);
  });

  test('with another wire they are asked again', () => {
    const held = [broke('tee', 1), broke('slit', 1), broke('sawn', 1)];
    const changed = bench(...held, ...machine(1, 0.8));
    expect(step(changed, 'weld/coupons:2')?.words).toBe('coupons-changed');
  });

  test('skipped with a reason they hold nothing up', () => {
    const skip: Doing = { kind: 'step-skipped', step: 'weld/coupons', why: 'welded for years' };
    expect(step(bench(skip), 'weld/sides-first@A')?.needs).toContain('weld/coupons');
    expect(step(bench(skip), 'weld/coupons:2')).toBeUndefined();
  });

  test('pieces that an older journal ticked off are not asked again', () => {
    const ticked = bench(...['tee', 'slit', 'sawn'].map(p => tick(`weld/coupons#${p}`)));
    const coupons = viewOf(entriesOf(ticked), NOW).steps.find(s => s.key === 'weld/coupons');
    expect(coupons?.state).toBe('done');
  });
});

describe('what held is written down, once a wall', () => {
  const bead = (place: string, feed: number, volts: number, long: number, took: number, round = '') => [
    by(`weld/worked-${place}${round}`, 'feed', feed),
    by(`weld/worked-${place}${round}`, 'volts', volts),
    by(`weld/worked-${place}${round}`, 'long', long),
    by(`weld/worked-${place}${round}`, 'took', took),
  ];
  // 4.9 m/min of 0.9 mm wire is 120.6 A; 18.5 V; 80 mm in 14 s is 343 mm/min: 0.31 kJ/mm, 0.104 for each mm of 3 mm wall.
  const good = bead('slits', 4.9, 18.5, 80, 14);

  test('it goes before rule and chart, for its own wall', () => {
    const doings = bench(
      by('weld/settings', 'chart-volts', 20),
      by('weld/settings', 'chart-feed', 6),
      ...good,
    );
    expect(exact(doings, 'weld-volts')).toBe(18.5);
    expect(exact(doings, 'weld-travel')).toBeCloseTo(80 / 14, 9);
    expect(exact(doings, 'joint-feed')).toBeNaN();
    expect(step(doings, 'weld/sides-first@A')?.needs).toContain('weld/worked-slits');
    expect(step(doings, 'weld/joint-settings')?.needs).toContain('weld/worked-joints');
  });

  test('a quick hand seen at the rail steps the current of the uprights up', () => {
    // 80 mm in 10 s is 480 mm/min, quicker than makers' tables begin: 55 + 28 t.
    const quick = bench(...bead('slits', 6, 20, 80, 10));
    expect(likely(quick, 'joint-amps')).toBeCloseTo(55 + 28 * 2, 6);
    expect(likely(bench(), 'joint-amps')).toBeCloseTo(2 / 0.0254, 6);
  });

  test('uprights of the rail’s wall are set by the rail’s bead', () => {
    const post = set('post', { depth_mm: 30, width_mm: 30, wall_mm: 3 });
    const doings = begun(post, ...MIX, ...good);
    expect(exact(doings, 'joint-volts')).toBe(18.5);
    expect(step(doings, 'weld/worked-joints')).toBeUndefined();
  });

  test('with another wire another bead is asked; with the first one again it is remembered', () => {
    const other = bench(...good, ...machine(1, 0.8));
    expect(step(other, 'weld/worked-slits:2')).toBeDefined();
    expect(value(other, 'weld-volts')?.is).toBe('band');
    const back = [...other, ...machine(1, 0.9)];
    expect(exact(back, 'weld-volts')).toBe(18.5);
    expect(step(back, 'weld/worked-slits:2')).toBeUndefined();
  });

  test('a bead that suits is no finding', () => {
    expect(sheetOf(bench(...good)).findings.filter(f => f.words.startsWith('bead'))).toEqual([]);
  });

  test('80 mm in 22 s at that setting burns through: less feed or quicker, each with the heat after it', () => {
    const slow = bench(...bead('slits', 4.9, 18.5, 80, 22));
    const found = finding(slow, 'bead-hot');
    // 0.8 × 18.5 V × 120.6 A ÷ 3.64 mm/s = 0.49 kJ/mm, 0.3 suits: 164 %.
    expect(found?.tall?.v).toBeCloseTo(163.6, 0);
    expect(found?.blocks).toContain('weld/sides-first@B');
    expect(found?.offers.map(o => o.remedy)).toEqual([
      'heat-less',
      'heat-quicker',
      'heat-stitches',
      'leave-heat',
    ]);
    const quicker = found?.offers.find(o => o.remedy === 'heat-quicker');
    expect(quicker?.after?.v).toBeCloseTo(100, 6);
    expect(quicker?.after?.within).toBe(true);
    const leave = found?.offers.find(o => o.remedy === 'leave-heat');
    expect(leave?.after?.within).toBe(false);
  });

  test('chosen, the new travel is what the page shows, and another bead is asked', () => {
    const slow = bench(...bead('slits', 4.9, 18.5, 80, 22));
    const found = finding(slow, 'bead-hot');
    const plan = found?.offers.find(o => o.remedy === 'heat-quicker')?.plan ?? {};
    const chosen: Doing = {
      kind: 'remedy-chosen',
      finding: found?.key ?? '',
      remedy: 'heat-quicker',
      plan,
    };
    const after = [...slow, chosen];
    expect(exact(after, 'weld-travel')).toBeCloseTo(Number(plan.travel_mm_s), 9);
    expect(step(after, 'weld/worked-slits:2')).toBeDefined();
    expect(step(after, 'weld/sides-first@A')?.needs).toContain('weld/worked-slits:2');
    const second = [...after, ...bead('slits', 4.9, 18.5, 80, 13.5, ':2')];
    expect(finding(second, 'bead-hot')).toBeUndefined();
    expect(step(second, 'weld/worked-slits:3')).toBeUndefined();
  });

  test('80 mm in 8 s lies on the steel', () => {
    const found = finding(bench(...bead('slits', 4.9, 18.5, 80, 8)), 'bead-cold');
    expect(found?.offers.map(o => o.remedy).sort()).toEqual(['heat-more', 'heat-slower', 'leave-heat']);
    expect(found?.offers[0]?.after?.within).toBe(true);
  });
});

describe('words', () => {
  test('everything said of machine, pieces and beads has words, and every mark is filled', () => {
    const bead = (place: string, took: number) => [
      by(`weld/worked-${place}`, 'feed', 4.9),
      by(`weld/worked-${place}`, 'volts', 18.5),
      by(`weld/worked-${place}`, 'long', 80),
      by(`weld/worked-${place}`, 'took', took),
    ];
    const told = [1, 2, 3, 4, 5].flatMap(kind =>
      [1, 2, 3, 4].map(n =>
        begun(POST, ...machine(kind, kind >= 4 ? 2.5 : 0.9), ...labels(n, Math.min(n, 3), n)),
      ),
    );
    const looks = [1, 4].flatMap(kind =>
      [2, 3, 4, 5].map(look =>
        begun(
          POST,
          ...machine(kind, kind === 4 ? 2.5 : 0.9),
          ...['tee', 'slit', 'sawn'].map(piece => read('weld/coupons', piece, look)),
        ),
      ),
    );
    for (const doings of [
      begun(),
      ...told,
      ...looks,
      begun(POST, ...machine(1, 0.9, 60)),
      begun(set('tube', { depth_mm: 40, width_mm: 40, wall_mm: 4 }), ...machine(1, 0.9, 180, 120)),
      begun(set('route', 'rolled'), POST, ...MIX),
      bench(...bead('slits', 30), ...bead('joints', 5)),
      bench(...bead('slits', 6), ...bead('joints', 40), read('plan/power', 'lead', 6)),
      bench(by('weld/coupons', 'tee', 1), ...machine(1, 0.8)),
    ]) {
      const s = situationFor(doings);
      const figures = viewOf(entriesOf(doings), s.now).sheets.flatMap(x => x.figures);
      const sheet = weldSheet(s);
      const own = { ...sheet, findings: sheet.findings.filter(f => /^(piece|bead)/.test(f.words)) };
      expect(wordGaps(own, STEPS, figures)).toEqual([]);
    }
  });
});
