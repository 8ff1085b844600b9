import { describe, expect, test } from 'vitest';
import { asShown } from '../../../src/quantity/as-shown.ts';
import { barsToBuy, NOTHING_HAD, type Order, orderOf } from '../../../src/ramp/cutting/order.ts';
import { isSteel, toBuy } from '../../../src/ramp/cutting/totals.ts';
import { yardCuts } from '../../../src/ramp/cutting/yard-cuts.ts';
import { NOTHING_MEASURED } from '../../../src/ramp/measured.ts';
import { type Ramp, rampOf } from '../../../src/ramp/ramp.ts';
import { heuristicPlan } from '../../../src/reckon/stock/plan-stock.ts';

const made = (system: 'metric' | 'us', answers: object): Ramp => {
  const ramp = rampOf('parts', system, answers, NOTHING_MEASURED);
  if (!ramp.ok) throw new Error(ramp.fault.message);
  return ramp.value;
};
const RAMPS = [
  ['metric', made('metric', {})],
  ['US', made('us', {})],
  ['US, wide and low', made('us', { shape: { height: 18 * 25.4, exit: (25 * Math.PI) / 180 }, width: 1500 })],
  ['metric, boards', made('metric', { deck: { kind: 'boards', thickness_mm: 38, board_mm: 145 } })],
] as const;
const CARRIES = [1500, 2000, 2440, 3100, 7000];
const ways = RAMPS.flatMap(([name, ramp]) => CARRIES.map(carry => [name, carry, ramp] as const));
const sum = (values: readonly number[]): number => values.reduce((a, v) => a + v, 0);
const steelOf = (o: Order) => o.sections.filter(isSteel);

describe('bars in the parts they go home in', () => {
  test.each(ways)(
    '%s, %d mm: each part closes, the parts are the bar, each piece is in one',
    (_, carry_mm, ramp) => {
      const o = orderOf(ramp, { ...NOTHING_HAD, carry_mm }, heuristicPlan);
      for (const s of steelOf(o)) {
        for (const p of s.parts) {
          const pieces = sum(p.cuts.map(c => c.to_mm - c.from_mm));
          expect(p.trim_mm + pieces + p.kerfs_mm - p.turned_mm + p.left_mm).toBeCloseTo(p.length_mm, 6);
          for (const c of p.cuts) {
            expect(c.from_mm).toBeGreaterThanOrEqual(-1e-9);
            expect(c.to_mm).toBeLessThanOrEqual(p.length_mm - p.trim_mm + 1e-6);
          }
        }
        for (const bar of s.bars) {
          const own = s.parts.filter(p => Number.parseInt(p.label, 10) === Number.parseInt(bar.label, 10));
          expect(sum(own.map(p => p.length_mm))).toBeCloseTo(bar.length_mm, 6);
          expect(
            own
              .map(p => p.label)
              .sort()
              .join(),
          ).toBe(own.length === 1 ? bar.label : own.map((_, k) => `${bar.label}${'abcdefghij'[k]}`).join());
          // The part's own end is where the yard's mark is.
          const marks = yardCuts(bar, carry_mm, ramp.design.system).at_mm;
          expect(own.length).toBe(marks.length + 1);
        }
        const needs = (bars: typeof s.bars) => bars.flatMap(b => b.cuts.map(c => c.piece.need)).sort();
        expect(needs(s.parts)).toEqual(needs(s.bars));
        const label = s.parts.map(p => p.label);
        expect(new Set(label).size).toBe(label.length);
      }
    },
  );

  test.each(ways)(
    '%s, %d mm: cut one after the other from their parts, nothing more is bought',
    (_, carry_mm, ramp) => {
      const first = orderOf(ramp, { ...NOTHING_HAD, carry_mm }, heuristicPlan);
      const bought = new Map(first.sections.map(s => [s.section.name, barsToBuy(s)]));
      const meant = new Map(
        [...bought].flatMap(([name, bars]) =>
          bars.flatMap(b => b.needs.map(n => [`${name} ${n}` as string, b.label] as const)),
        ),
      );
      const sawn: { need: string; section: string; length_mm: number; spoiled: boolean }[] = [];
      for (;;) {
        const o = orderOf(ramp, { ...NOTHING_HAD, carry_mm, bought, sawn }, heuristicPlan);
        expect(o.sections.flatMap(toBuy)).toEqual([]);
        const open = o.sections.flatMap(s => s.parts.flatMap(bar => bar.cuts.map(cut => ({ s, bar, cut }))));
        for (const { s, bar, cut } of open) {
          const piece = `${s.section.name} ${cut.piece.need}`;
          expect([piece, bar.label]).toEqual([piece, meant.get(piece)]);
        }
        const next = open.find(x => x.cut.piece.known && x.cut.piece.when !== 'spare');
        if (next === undefined) break;
        sawn.push({
          need: next.cut.piece.need,
          section: next.s.section.name,
          length_mm: asShown(next.cut.piece.long_mm, 'length', ramp.design.system),
          spoiled: false,
        });
      }
      expect(sawn.length).toBeGreaterThan(20);
    },
  );

  test('a bar that goes home whole is one part with its own number', () => {
    const o = orderOf(RAMPS[0][1], { ...NOTHING_HAD, carry_mm: 7000 }, heuristicPlan);
    for (const s of o.sections)
      expect(s.parts.map(p => p.label).sort()).toEqual(s.bars.map(b => b.label).sort());
  });
});
