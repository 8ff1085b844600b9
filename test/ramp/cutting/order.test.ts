import { describe, expect, test } from 'vitest';
import { HELD_OVER } from '../../../src/ramp/cutting/needed.ts';
import {
  barsToBuy,
  type Have,
  NOTHING_HAD,
  type Order,
  type OrderedSection,
  orderOf,
} from '../../../src/ramp/cutting/order.ts';
import { isSteel, totalsOf } from '../../../src/ramp/cutting/totals.ts';
import type { Answered } from '../../../src/ramp/design.ts';
import { type Measured, NOTHING_MEASURED } from '../../../src/ramp/measured.ts';
import { type Ramp, rampOf } from '../../../src/ramp/ramp.ts';
import { heuristicPlan, planStock } from '../../../src/reckon/stock/plan-stock.ts';

const made = (
  system: 'metric' | 'us',
  answers: Answered = {},
  measured: Measured = NOTHING_MEASURED,
): Ramp => {
  const ramp = rampOf('yard', system, answers, measured);
  if (!ramp.ok) throw new Error(ramp.fault.message);
  return ramp.value;
};
const order = (ramp: Ramp, have: Partial<Have> = {}, solve = heuristicPlan): Order =>
  orderOf(ramp, { ...NOTHING_HAD, ...have }, solve);
const section = (o: Order, name: string): OrderedSection => {
  const found = o.sections.find(s => s.section.name === name);
  if (found === undefined)
    throw new Error(`no ${name} among ${o.sections.map(s => s.section.name).join(', ')}`);
  return found;
};
const needsOf = (s: OrderedSection): string[] => s.bars.flatMap(b => b.cuts.map(c => c.piece.need));
const sum = (values: readonly number[]): number => values.reduce((a, v) => a + v, 0);

const DESIGNS: [string, Ramp][] = [
  ['the metric default', made('metric')],
  ['the US default, sheet deck', made('us')],
  [
    'a US ramp with boards on three rails',
    made('us', {
      shape: { height: 762, run: 2438.4 },
      deck: { kind: 'boards', thickness_mm: 38.1, board_mm: 139.7 },
    }),
  ],
];

describe.each(DESIGNS)('on paper, %s', (_, ramp) => {
  const o = order(ramp);

  test('every bar closes: trim, pieces, saw cuts, less what turning saves, and what is left', () => {
    expect(o.sections.length).toBeGreaterThanOrEqual(5);
    for (const s of o.sections) {
      expect(s.bars.length).toBeGreaterThan(0);
      for (const b of s.bars) {
        const pieces = sum(b.cuts.map(c => c.to_mm - c.from_mm));
        expect(b.trim_mm + pieces + b.kerfs_mm - b.turned_mm + b.left_mm).toBeCloseTo(b.length_mm, 6);
        expect(b.left_mm).toBeGreaterThanOrEqual(0);
      }
    }
  });

  test('every member of the frame, the entry plate and its bearers are in the list once', () => {
    const listed = o.sections.filter(isSteel).flatMap(needsOf);
    const members = [...ramp.members, ...ramp.entry.pieces].map(m => m.need);
    expect(members.filter(n => n.startsWith('bearer@')).length).toBe(ramp.entry.bearers.length);
    expect(listed.filter(n => !n.startsWith('spare')).sort()).toEqual([...members].sort());
  });

  test('a bearer is cut from a flat of just its height or thickness, as its stand asks', () => {
    ramp.entry.bearers.forEach((b, i) => {
      const from = o.sections.find(s => needsOf(s).includes(`bearer@:${i + 1}`))?.section;
      expect([from?.width_mm, from?.wall_mm]).toContainEqual(expect.closeTo(b.height_mm, 9));
    });
  });

  test('the sheet closes with the members: kilograms bought are at least those of the frame and a tenth', () => {
    const t = totalsOf(o);
    expect(t.kg).toBeGreaterThan(1.1 * ramp.masses.steel_kg * 0.98 + ramp.masses.entry_kg);
    expect(t.kg).toBeCloseTo(sum(o.sections.filter(isSteel).flatMap(s => s.bars.map(b => b.kg))), 9);
  });

  test('pieces follow each other with a saw cut between, and each keeps its length', () => {
    for (const b of o.sections.flatMap(s => s.bars)) {
      b.cuts.forEach((c, i) => {
        const before = b.cuts[i - 1];
        if (before !== undefined) expect(c.from_mm - before.to_mm).toBeGreaterThanOrEqual(o.kerf_mm - 1e-9);
        expect(c.to_mm - c.from_mm).toBeGreaterThanOrEqual(c.piece.long_mm - 1e-9);
      });
    }
  });
});

describe('steel of the metric default', () => {
  const ramp = made('metric');
  const o = order(ramp);
  const rails = section(o, '40x40x3');
  const posts = section(o, '30x30x2');

  test('both curved rails come from one bar, side by side', () => {
    const bar = rails.bars.find(b => b.cuts.some(c => c.piece.need === 'curved rail@A'));
    const at = bar?.cuts.findIndex(c => c.piece.kind === 'curved rail') ?? -1;
    expect(bar?.cuts.slice(at, at + 2).map(c => c.piece.need)).toEqual(['curved rail@A', 'curved rail@B']);
  });

  test('a spare rail and a tenth are there before waste is looked at', () => {
    const pieces = rails.bars.flatMap(b => b.cuts.map(c => c.piece));
    expect(pieces.filter(p => p.kind === 'spare rail').map(p => p.long_mm)).toEqual([
      expect.closeTo(ramp.plans.get('A')?.cut_mm ?? 0, 0),
    ]);
    // Test pieces of 300 mm are more than a tenth of so little tube.
    expect(pieces.find(p => p.kind === 'spare')?.long_mm).toBe(900);
    const post = posts.bars.flatMap(b => b.cuts.map(c => c.piece));
    const needed = sum(post.filter(p => p.kind !== 'spare').map(p => p.long_mm));
    // A tenth, to the half millimetre of a tape.
    expect(Math.abs((post.find(p => p.kind === 'spare')?.long_mm ?? 0) - needed / 10)).toBeLessThan(0.26);
  });

  test('a tenth of much steel is more than one bar: it comes in equal parts that bars have room for', () => {
    const big = made('metric', {
      shape: { height: 1091, radius: 7610 },
      width: 2763,
      tube: { depth_mm: 50, width_mm: 50, wall_mm: 2 },
      route: 'rolled',
    });
    const parts = order(big).sections.flatMap(s =>
      s.bars.flatMap(b => b.cuts.filter(c => c.piece.kind === 'spare')),
    );
    for (const s of order(big).sections) expect(s.plan.ok, s.section.name).toBe(true);
    expect(parts.map(c => c.piece.need)).toContain('spare@:2');
    for (const c of parts) expect(c.piece.long_mm).toBeLessThanOrEqual(5800);
  });

  test('uprights and diagonals hold their steel back, with what they may come out longer', () => {
    const held = posts.bars.flatMap(b => b.cuts.filter(c => c.piece.when === 'to the rail'));
    expect(held.length).toBe(ramp.members.filter(m => /upright|diagonal/.test(m.kind)).length);
    for (const c of held) {
      expect(c.piece.known).toBe(false);
      expect(c.to_mm - c.from_mm).toBeCloseTo(c.piece.long_mm + HELD_OVER, 9);
    }
    for (const b of posts.bars) {
      // What is held lies behind what is cut, in one stretch.
      const first = b.cuts.findIndex(c => !c.piece.known);
      if (first >= 0)
        expect(b.cuts.slice(first).every(c => !c.piece.known || c.piece.when === 'spare')).toBe(true);
    }
  });

  test('a bar weighs its length of the published section (3.30 kg/m: 19.8 kg)', () => {
    expect(rails.bars[0]?.kg).toBeCloseTo(6 * 3.303, 1);
  });

  test('prices: cheapest of the lengths that have one, and the sum closes', () => {
    const have: Partial<Have> = {
      barSizes: new Map([['40x40x3', [6000, 3000]]]),
      prices: new Map([
        [
          '40x40x3',
          new Map([
            [6000, 38],
            [3000, 17],
          ]),
        ],
        ['30x30x2', new Map([[6000, 21]])],
        ['flat 60x3', new Map([[1000, 6]])],
        ['flat 100x5', new Map([[1000, 11]])],
        ['sheet 9', new Map([[2440, 40]])],
        ['plate 727x5', new Map([[1200, 48]])],
        ['flat 50x5', new Map([[2000, 9]])],
        ['flat 20x5', new Map([[2000, 4]])],
        ['flat 40x5', new Map([[2000, 7]])],
      ]),
    };
    const priced = order(ramp, have, job => planStock(job));
    const t = totalsOf(priced);
    expect(t.unpriced).toEqual([]);
    const bars = priced.sections.flatMap(s => s.bars);
    expect(t.cost).toBeCloseTo(sum(bars.map(b => b.price ?? Number.NaN)), 9);
    // Rails and spare rail fill the 6 m; base rails and the spare stretch do not share 3 m, and two short bars (34) beat a long one (38).
    const bars40 = section(priced, '40x40x3').bars;
    expect(bars40.map(b => b.length_mm).sort()).toEqual([3000, 3000, 6000]);
    expect(sum(bars40.map(b => b.price ?? 0))).toBe(72);
    expect(totalsOf(o).cost).toBe(null);
  });
});

describe('what is cut leaves the question, what is left stays in it', () => {
  const ramp = made('metric');
  const first = order(ramp);
  const cut = (need: string, length_mm: number, spoiled = false) => ({
    need,
    section: '40x40x3',
    length_mm,
    spoiled,
  });
  const railLong = ramp.plans.get('A')?.cut_mm ?? 0;
  const baseLong = ramp.members.find(m => m.need === 'base rail@A')?.long_mm ?? 0;

  test('the rest of an opened bar is used, and nothing new is bought', () => {
    const o = order(ramp, { sawn: [cut('curved rail@A', railLong)] });
    const rails = section(o, '40x40x3');
    expect(needsOf(rails)).not.toContain('curved rail@A');
    expect(rails.bars.every(b => b.source.is === 'open')).toBe(true);
    const opened = rails.bars.find(b => b.source.is === 'open' && b.source.bar.squared);
    expect(opened?.length_mm).toBeCloseTo(6000 - 12 - railLong - 3, 6);
    expect(opened?.trim_mm).toBe(0);
    expect(needsOf(rails)).toContain('curved rail@B');
  });

  test('a spoiled rail has used the spare: the list asks for the rail again and no bar more', () => {
    const o = order(ramp, { sawn: [cut('curved rail@A', railLong, true)] });
    const rails = section(o, '40x40x3');
    expect(needsOf(rails)).toContain('curved rail@A');
    expect(needsOf(rails)).not.toContain('spare rail');
    expect(rails.bars.filter(b => b.source.is === 'sold')).toEqual([]);
  });

  test('more spoiled than the spare covers is bought again', () => {
    const sawn = [1, 2, 3, 4].map(() => cut('base rail@A', baseLong, true));
    const o = order(ramp, {
      sawn: [...sawn, cut('curved rail@A', railLong, true), cut('curved rail@A', railLong, true)],
    });
    expect(barsToBuy(section(o, '40x40x3')).length).toBeGreaterThan(0);
  });

  test('bars that were bought are there: nothing is left to buy, and the plan is the same', () => {
    const bought = new Map(first.sections.map(s => [s.section.name, barsToBuy(s)]));
    const o = order(ramp, { bought });
    expect(totalsOf(o).bars).toBe(0);
    expect(totalsOf(o).there.bars).toBe(totalsOf(first).bars);
    for (const s of o.sections)
      expect(needsOf(s).sort()).toEqual(needsOf(section(first, s.section.name)).sort());
  });

  test('an offcut long enough takes the place of a bar', () => {
    const offcuts = new Map([
      ['40x40x3', [{ id: 'o', from: 'offcut' as const, length_mm: 5000, label: 'x1', needs: [] }]],
    ]);
    const rails = section(order(ramp, { offcuts }), '40x40x3');
    expect(barsToBuy(rails).length).toBe(1);
    expect(rails.bars.some(b => b.source.is === 'open' && b.source.bar.from === 'offcut')).toBe(true);
  });

  test('a caliper on the tube changes lengths, not the section that was bought', () => {
    const measured: Measured = {
      ...NOTHING_MEASURED,
      tubes: new Map([['A', { depth_mm: 40.2, wall_mm: 2.9 }]]),
    };
    expect(order(made('metric', {}, measured)).sections.map(s => s.section.name)).toContain('40x40x3');
  });
});

test('rails read as welded: uprights are cut to them, their mitres turned to each other, and the bars still close', () => {
  const stations_mm = [0, 200, 400, 600, 800, 1000, 1200, 1400, 1600];
  const curve = (rail: string) =>
    [
      rail,
      {
        survey: `s-${rail}`,
        phase: 'cold',
        line: 'finished line',
        stations_mm,
        offsets_mm: stations_mm.map(s => s / 800),
        read_to_mm: 0.5,
      },
    ] as const;
  const read: Measured = { ...NOTHING_MEASURED, curves: new Map([curve('A'), curve('B')]) };
  const o = order(made('metric', {}, read));
  const posts = section(o, '30x30x2');
  expect(posts.bars.flatMap(b => b.cuts).every(c => c.piece.known)).toBe(true);
  expect(totalsOf(o).held).toEqual({ low_mm: 0, high_mm: 0 });
  expect(sum(posts.bars.map(b => b.saved_mm))).toBeGreaterThan(20);
  // No spare rail any more: both are welded and read.
  expect(needsOf(section(o, '40x40x3'))).not.toContain('spare rail');
  for (const b of posts.bars) {
    const pieces = sum(b.cuts.map(c => c.to_mm - c.from_mm));
    expect(b.trim_mm + pieces + b.kerfs_mm - b.turned_mm + b.left_mm).toBeCloseTo(b.length_mm, 6);
  }
});

test('a piece longer than any bar is named, with the bar that would do', () => {
  const o = order(made('metric'), { barSizes: new Map([['40x40x3', [1500]]]) });
  const rails = section(o, '40x40x3');
  expect(rails.bars).toEqual([]);
  expect(rails.plan.ok).toBe(false);
  if (!rails.plan.ok) expect(rails.plan.fault.message).toContain('curved rail@A');
});
