import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { DESIGN_VALUES } from '../../src/build/entries.ts';
import { REFUSED_USES } from '../../src/coach/decide/answer.ts';
import { NOTHING_HAD, orderOf } from '../../src/ramp/cutting/order.ts';
import { heuristicPlan } from '../../src/reckon/stock/plan-stock.ts';
import { planSheet, STEPS } from '../../src/stages/plan/sheet.ts';
import { shoppingList } from '../../src/stages/plan/shopping.ts';
import { begun, DEG, read, set } from './doings.ts';
import { situationFor } from './situation-for.ts';
import { WORDS, wordGaps } from './word-gaps.ts';

const agreed: Doing = { kind: 'design-agreed' };
const page = (...doings: Doing[]) => planSheet(situationFor([begun(), ...doings]));
const figure = (sheet: ReturnType<typeof page>, id: string): number => {
  const value = sheet.figures.find(f => f.id === id)?.value;
  if (value?.is !== 'exact') throw new Error(`${id} is ${value?.is ?? 'missing'}`);
  return value.v;
};
const REF = set('shape', { radius: 3000, exit: 45 * DEG });

describe('the plan', () => {
  test('the lines of a 3000 mm, 45° ramp under 18 mm of deck stand as a worked table has them', () => {
    // Curve page 1.2, derived: deck top, rail top face, back wall, rail bottom face of 40×40×3.
    const sheet = page(REF);
    const table = [
      ['deck', 3000, 2356.19, 2121.32, 878.68],
      ['top-face', 3018, 2370.33, 2134.05, 865.95],
      ['back-wall', 3056.5, 2400.57, 2161.27, 838.73],
      ['bottom-face', 3058, 2401.75, 2162.33, 837.67],
    ] as const;
    for (const [name, radius, arc, run, height] of table) {
      expect(figure(sheet, `${name}-radius`)).toBeCloseTo(radius, 1);
      expect(figure(sheet, `${name}-arc`)).toBeCloseTo(arc, 1);
      expect(figure(sheet, `${name}-lip-run`)).toBeCloseTo(run, 1);
      expect(figure(sheet, `${name}-lip-height`)).toBeCloseTo(height, 1);
    }
  });

  test('the entry of that ramp is where its bottom face reaches the ground: 593 mm, 28 % of the run', () => {
    // Bench practice 0-4 (derived).
    const sheet = page(REF);
    expect(figure(sheet, 'entry-length')).toBeCloseTo(592.8, 0);
    expect(figure(sheet, 'entry-share')).toBeCloseTo(27.9, 1);
  });

  test('a low flat curve is more than half entry plate and says that plate on ribs is the better build', () => {
    // The rail's bottom face, 58 mm outside the deck top, reaches the ground at x = √(8058² − 8000²): 965 of 1663 mm (derived).
    const sheet = page(set('shape', { radius: 8000, exit: 12 * DEG }));
    expect(figure(sheet, 'entry-length')).toBeCloseTo(Math.sqrt(8058 ** 2 - 8000 ** 2), 6);
    expect(figure(sheet, 'entry-share')).toBeCloseTo(58.02, 1);
    expect(sheet.steps.find(s => s.key === 'plan/entry')?.words).toBe('entry-ribs');
    const finding = sheet.findings.find(f => f.key === 'plan-entry-long');
    expect(finding?.severity).toBe('watch');
    expect(finding?.offers.length).toBeGreaterThanOrEqual(3);
    const higher = finding?.offers.find(o => o.remedy === 'entry-higher');
    // The offer holds what it says: taken, it brings the entry below half.
    const after = page(set('shape', higher?.plan.value));
    expect(figure(after, 'entry-share')).toBeLessThanOrEqual(50);
    expect(after.findings.some(f => f.key === 'plan-entry-long')).toBe(false);
  });

  test('the pull of the welds is a band, and so is the count that hangs on it', () => {
    const sheet = page();
    const pull = sheet.figures.find(f => f.id === 'pull@A')?.value;
    const count = sheet.figures.find(f => f.id === 'slit-count-band@A')?.value;
    expect(pull?.is).toBe('band');
    if (count?.is !== 'band') throw new Error('no band');
    expect(count.low).toBeLessThan(count.likely);
    expect(count.high).toBeGreaterThan(count.likely);
    expect(count.likely).toBe(figure(sheet, 'slit-count@A'));
  });

  test('ways to slit stand side by side once the design is agreed, and each holds what it says', () => {
    expect(page().findings.some(f => f.key === 'slit-ways')).toBe(false);
    const ways = page(agreed).findings.find(f => f.key === 'slit-ways');
    const offer = (name: string) => ways?.offers.find(o => o.remedy === name);
    const as = offer('leave-slits')?.fills?.count as number;
    expect(offer('slits-narrower')?.fills?.count).toBeGreaterThan(as);
    expect(offer('slits-wider')?.fills?.count).toBeLessThan(as);
    expect(offer('slits-rolled')).toBeDefined();
    const wider = offer('slits-wider')?.plan as { field: string; value: unknown };
    const after = page(set(wider.field, wider.value));
    expect(figure(after, 'slit-count@A')).toBe(offer('slits-wider')?.fills?.count);
  });

  test('rails rolled by a fabricator have no slits, no tack line of their own and no saw to check', () => {
    const sheet = page(set('route', 'rolled'));
    expect(sheet.figures.some(f => f.id.startsWith('slit-count@'))).toBe(false);
    expect(sheet.steps.some(s => s.key === 'plan/saw')).toBe(false);
    expect(sheet.steps.find(s => s.key === 'plan/slits')?.words).toBe('slits-rolled');
    expect(wordGaps(sheet)).toEqual([]);
  });

  test('the spare rail is first on the list, before any disc', () => {
    const buy = page().steps.find(s => s.key === 'plan/buy');
    const names = (buy?.items ?? []).map(i => i.name);
    expect(names[0]).toBe('spare rail');
    // Bench practice 5: never fewer than ten thin discs.
    const discs = buy?.items?.find(i => i.key === 'plan/buy#thin-discs');
    expect(discs?.value?.v).toBeGreaterThanOrEqual(10);
  });

  test('a frame too wide and too high for the door says so, with five ways', () => {
    const finding = page(
      set('shape', { height: 900, exit: 40 * DEG }),
      set('door', { width_mm: 800, height_mm: 2000 }),
      set('width', 2400),
    ).findings.find(f => f.key === 'door');
    expect(finding?.offers.length).toBeGreaterThanOrEqual(3);
  });

  test('two helpers lift what one cannot', () => {
    const heavy = [set('width', 2000), set('shape', { height: 900, exit: 35 * DEG })];
    const sheet = page(...heavy);
    const people = figure(sheet, 'lift-people');
    expect(people).toBeGreaterThan(2);
    const short = page(...heavy, read('plan/helpers', 'helpers', 1)).findings.some(
      f => f.key === 'few-helpers',
    );
    const enough = page(...heavy, read('plan/helpers', 'helpers', people - 1)).findings.some(
      f => f.key === 'few-helpers',
    );
    expect([short, enough]).toEqual([true, false]);
  });

  test('a kerf learned too wide for the wall stops the marking until it is settled', () => {
    // Five slits of 1.9 mm in 40×40×3 bend 5 × 1.9/38.5 rad: past half the wall and 0.3.
    const turn = (5 * 1.9) / 38.5;
    const finding = page(agreed, read('cut/test-piece', 'turn', turn)).findings.find(
      f => f.key === 'refused-kerf-wide',
    );
    expect(finding?.severity).toBe('stop');
    expect(finding?.blocks).toContain('cut/mark-third@A:1');
    expect(finding?.offers.length).toBeGreaterThanOrEqual(3);
  });

  test('what a steep lip offers is no longer steep', () => {
    const finding = page(set('shape', { height: 900, exit: 50 * DEG })).findings.find(
      f => f.key === 'plan-steep',
    );
    expect(finding?.offers.length).toBeGreaterThanOrEqual(3);
    for (const offer of finding?.offers.filter(o => o.plan.field === 'shape') ?? []) {
      expect(page(set('shape', offer.plan.value)).findings.some(f => f.key === 'plan-steep')).toBe(false);
    }
  });
});

describe('the list of what to have', () => {
  test.each(['metric', 'us'] as const)(
    'names the tube and the plate that the order sheet shares out, %s',
    system => {
      const s = situationFor([begun(system), agreed]);
      const order = orderOf(s.ramp, NOTHING_HAD, heuristicPlan);
      const listed = (id: string) =>
        shoppingList(s).find(i => i.key === `plan/buy#${id}`)?.value?.v ?? Number.NaN;
      const [rails, posts] = order.sections.filter(o => o.section.kind === 'tube');
      for (const [id, section] of [
        ['rail-tube', rails],
        ['post-tube', posts],
      ] as const) {
        const cut = section?.bars.flatMap(b => b.cuts).reduce((sum, c) => sum + c.to_mm - c.from_mm, 0) ?? 0;
        expect(cut).toBeGreaterThan(8000);
        expect(listed(id) * 1000).toBeCloseTo(cut, 3);
      }
      const plate = order.sections.find(o => o.section.kind === 'plate');
      expect(listed('entry-plate')).toBeCloseTo(plate?.section.width_mm ?? 0, 9);
    },
  );
});

describe('words of the plan', () => {
  const designs: readonly (readonly [string, readonly Doing[]])[] = [
    ['as begun', []],
    ['agreed', [agreed]],
    ['US', [{ kind: 'build-begun', name: 'Harbor Street launch', system: 'us' }, agreed]],
    ['steep', [set('shape', { height: 900, exit: 50 * DEG })]],
    ['long entry', [set('shape', { radius: 8000, exit: 12 * DEG })]],
    ['boards', [set('deck', { kind: 'boards', thickness_mm: 38, board_mm: 145 })]],
    [
      'band saw, one by one',
      [set('cutter', { kind: 'band saw', kerf_mm: 1 }), set('sequence', 'one after the other')],
    ],
    [
      'chop saw',
      [
        set('cutter', { kind: 'chop saw', kerf_mm: 2.3 }),
        set('tube', { depth_mm: 50, width_mm: 50, wall_mm: 4 }),
      ],
    ],
    ['coarse kerf', [set('cutter', { kind: 'thin disc', kerf_mm: 1.7 })]],
    [
      'short flats',
      [set('shape', { radius: 2000, exit: 40 * DEG }), set('cutter', { kind: 'band saw', kerf_mm: 0.9 })],
    ],
    [
      'small door',
      [
        set('shape', { height: 900, exit: 40 * DEG }),
        set('door', { width_mm: 700, height_mm: 1900 }),
        set('width', 2400),
      ],
    ],
    ['rolled', [set('route', 'rolled')]],
    ['on a slab', [set('ground', 'concrete')]],
    [
      'a ride onto a slope',
      [
        read('plan/ride', 'entry-speed', 5),
        read('plan/landing', 'landing-table', 1),
        read('plan/landing', 'landing-down', 0),
        read('plan/landing', 'landing-slope', 25 * DEG),
        read('plan/landing', 'landing-length', 6),
      ],
    ],
    [
      'a ride over a gap',
      [
        read('plan/ride', 'entry-speed', 6),
        read('plan/landing', 'landing-gap', 1),
        read('plan/landing', 'landing-down', 0),
        read('plan/landing', 'landing-slope', 25 * DEG),
        read('plan/landing', 'landing-length', 6),
      ],
    ],
    ['no helper', [set('width', 2400), read('plan/helpers', 'helpers', 0)]],
    ['a large grinder', [set('grinder', 230)]],
    ['wall read thin', [agreed, read('cut/measure-tube@A', 'wall', 1.7)]],
    ['kerf read wide', [agreed, read('cut/test-piece', 'turn', 0.25)]],
    ['kerf read as nothing', [agreed, read('cut/test-piece', 'turn', 0.02)]],
    [
      'kerf read narrow',
      [agreed, set('shape', { radius: 1500, exit: 40 * DEG }), read('cut/test-piece', 'turn', 0.1)],
    ],
  ];
  const seen = new Set<string>();
  test.each(designs)(
    '%s: every step, figure and finding has words, every mark is filled',
    (_name, doings) => {
      const sheet = planSheet(
        situationFor(doings[0]?.kind === 'build-begun' ? doings : [begun(), ...doings]),
      );
      for (const f of sheet.findings) seen.add(`finding ${f.words}`);
      for (const s of sheet.steps) seen.add(s.words);
      for (const f of sheet.findings) for (const o of f.offers) seen.add(o.remedy);
      expect(wordGaps(sheet)).toEqual([]);
      for (const f of sheet.findings) {
        expect(f.offers.length).toBeGreaterThanOrEqual(3);
        expect(f.offers.some(o => o.remedy.startsWith('leave'))).toBe(true);
      }
    },
  );

  test('each kind of step is reached by some design', () => {
    expect(STEPS.filter(words => !seen.has(words) && words !== 'slits-rolled')).toEqual([]);
    expect(Object.keys(WORDS.steps.plan ?? {}).sort()).toEqual([...STEPS].sort());
  });

  test('each warning of the design was met', () => {
    expect([...seen]).toEqual(
      expect.arrayContaining([
        'finding plan-steep',
        'finding plan-entry-long',
        'finding plan-kink-felt',
        'finding plan-flats-tight',
        'finding refused-wall-thin',
        'finding refused-kerf-wide',
        'finding refused-kerf-thin',
        'finding refused-flats-short',
        'finding door',
      ]),
    );
  });

  test('every refused use has a reason and somebody to ask, and is a choice of the question', () => {
    const choices = Object.keys(WORDS.questions.use?.choices ?? {});
    expect(choices).toEqual(expect.arrayContaining([...DESIGN_VALUES.use.options, ...REFUSED_USES]));
    for (const use of REFUSED_USES) expect(WORDS.refusals[`use-${use}`]?.accepted).toBeTruthy();
    const asked = [
      'use',
      'height',
      'second',
      'second-value',
      'width',
      'tube',
      'cutter',
      'rider',
      'door',
      'deck',
      'first',
      'ground',
      'straight',
      'spacing',
      'diagonals',
      'rails',
    ];
    expect(asked.filter(q => WORDS.questions[q] === undefined)).toEqual([]);
    // What the ground may be is asked with the grounds that are reckoned with.
    expect(Object.keys(WORDS.questions.ground?.choices ?? {})).toEqual(DESIGN_VALUES.ground.options);
    expect(Object.keys(WORDS.questions.cutter?.choices ?? {})).toEqual(
      DESIGN_VALUES.cutter.shape.kind.options,
    );
  });
});
