import { describe, expect, test } from 'vitest';
import { asShown } from '../../../src/quantity/as-shown.ts';
import { leftOfBar, partsOfBar } from '../../../src/ramp/cutting/bar-parts.ts';
import { closingOf } from '../../../src/ramp/cutting/closing.ts';
import { NOTHING_HAD, type Order, orderOf } from '../../../src/ramp/cutting/order.ts';
import { isSteel } from '../../../src/ramp/cutting/totals.ts';
import { weigh } from '../../../src/ramp/cutting/weigh.ts';
import type { Answered } from '../../../src/ramp/design.ts';
import { memberMass, tubeMassPerMetre } from '../../../src/ramp/mass.ts';
import { NOTHING_MEASURED } from '../../../src/ramp/measured.ts';
import { type Ramp, rampOf } from '../../../src/ramp/ramp.ts';
import { heuristicPlan } from '../../../src/reckon/stock/plan-stock.ts';

const made = (system: 'metric' | 'us', answers: Answered = {}): Ramp => {
  const ramp = rampOf('yard', system, answers, NOTHING_MEASURED);
  if (!ramp.ok) throw new Error(ramp.fault.message);
  return ramp.value;
};
const orderFor = (ramp: Ramp): Order => orderOf(ramp, NOTHING_HAD, heuristicPlan);
const sum = (values: readonly number[]): number => values.reduce((a, v) => a + v, 0);

/** A kicker of 600 mm that leaves at 30°, 1200 wide, of 40×40×3 and 30×30×2, with two layers of 9 mm ply. */
const KICKER = made('metric', { shape: { height: 600, exit: Math.PI / 6 }, width: 1200 });
const DESIGNS: [string, Ramp][] = [
  ['the kicker', KICKER],
  ['the metric default', made('metric')],
  ['a US ramp', made('us', { shape: { height: 762, run: 2438.4 } })],
  ['a US ramp with boards', made('us', { deck: { kind: 'boards', thickness_mm: 38.1, board_mm: 139.7 } })],
];

describe.each(DESIGNS)('added up from the page, %s', (_, ramp) => {
  const { system } = ramp.design;
  const order = orderFor(ramp);
  const bars = order.sections.flatMap(s => s.bars);
  const onTape = (v: number): boolean => Math.abs(asShown(v, 'length', system) - v) < 1e-6;

  test('every piece has a length that a tape shows', () => {
    for (const b of bars) for (const c of b.cuts) expect(onTape(c.to_mm - c.from_mm)).toBe(true);
  });

  test('trim, pieces, saw less turned, and what is left are the bar, each as it is shown', () => {
    for (const b of bars) {
      const sums = closingOf(b, system);
      expect(Object.values(sums).every(onTape)).toBe(true);
      expect(sums.trim_mm + sums.pieces_mm + sums.saw_mm - sums.turned_mm + sums.left_mm).toBeCloseTo(
        asShown(b.length_mm, 'length', system),
        6,
      );
      // What is shown is what there is, to a step of the tape.
      expect(Math.abs(sums.left_mm - b.left_mm)).toBeLessThan(2);
      expect(Math.abs(sums.saw_mm - b.kerfs_mm)).toBeLessThan(2);
    }
  });

  test.each([1500, 2440, 3100])(
    'parts to carry, up to %d mm, are the bar as they are shown, and what they leave is what the bar leaves',
    carry_mm => {
      for (const s of orderOf(ramp, { ...NOTHING_HAD, carry_mm }, heuristicPlan).sections)
        for (const b of s.bars) {
          const parts = partsOfBar(s.parts, b);
          expect(parts.length).toBeGreaterThan(0);
          const shown = (v: number): number => asShown(v, 'length', system);
          expect(sum(parts.map(p => shown(p.length_mm)))).toBeCloseTo(shown(b.length_mm), 6);
          const used = sum(
            parts.map(p => {
              const c = closingOf(p, system);
              return c.trim_mm + c.pieces_mm + c.saw_mm - c.turned_mm;
            }),
          );
          expect(leftOfBar(s.parts, b, system)).toBeCloseTo(shown(b.length_mm) - used, 6);
        }
    },
  );

  test('frame, entry, spare and what is cut off are the bars', () => {
    const w = weigh(ramp, order);
    if (w === null) throw new Error('no weights');
    const frame = sum(ramp.members.map(memberMass));
    expect(w.frame_kg).toBeCloseTo(frame, 9);
    // What is cut off, bar by bar: ends, squaring, blade, and of each piece what its mitres and its rounding take.
    const rest = sum(
      order.sections.filter(isSteel).flatMap(s =>
        s.bars.map(b => {
          const pieces = b.cuts.filter(c => c.piece.when !== 'spare');
          const drawn = pieces.map(
            c => [...ramp.members, ...ramp.entry.pieces].find(m => m.need === c.piece.need)!,
          );
          const bar_kg = (b.length_mm / 1000) * s.section.kgPerM;
          const spare = sum(b.cuts.filter(c => c.piece.when === 'spare').map(c => c.piece.long_mm));
          return bar_kg - sum(drawn.map(memberMass)) - (spare / 1000) * s.section.kgPerM;
        }),
      ),
    );
    expect(w.rest_kg).toBeCloseTo(rest, 6);
    const off = sum(
      order.sections
        .filter(isSteel)
        .flatMap(s =>
          s.bars.map(b => ((b.left_mm + b.trim_mm + b.kerfs_mm - b.turned_mm) / 1000) * s.section.kgPerM),
        ),
    );
    // Ends, trims and cuts are most of it; mitres and what held pieces may come out longer are the rest.
    expect(w.rest_kg).toBeGreaterThan(off - 0.05);
    expect(w.rest_kg).toBeLessThan(off + 5);
  });
});

describe('the kicker by hand', () => {
  test('a metre of 40×40×3 is 3.30 kg, as the tables of tube have it', () => {
    // EN 10219-2: A = 2t(B + H − 2t) − (4 − π)(r² − (r − t)²) = 444 − 23.2 = 420.8 mm²; × 7850 kg/m³ = 3.30 kg/m [found in makers' tables].
    expect(tubeMassPerMetre({ depth_mm: 40, width_mm: 40, wall_mm: 3 })).toBeCloseTo(3.3, 2);
    expect(tubeMassPerMetre({ depth_mm: 30, width_mm: 30, wall_mm: 2 })).toBeCloseTo(1.68, 2);
  });

  test('the deck is 1.942 m² and weighs 23.8 kg', () => {
    // R = 600/(1 − cos 30°) = 4478.46; arc R·π/6 = 2344.92. The plate reaches x = √((R + 58)² − R²) = 723.1, with 18 of deck and 40 of
    // tube; along the deck R·asin(x/R) = 726.3. 2344.9 − 726.3 = 1618.6 long, 1200 wide = 1.942 m²; × 0.018 m × 680 kg/m³ = 23.8 kg (derived).
    const w = weigh(KICKER, orderFor(KICKER));
    expect(w?.deck_kg).toBeCloseTo(1.6186 * 1.2 * 0.018 * 680, 1);
    const strips = orderFor(KICKER).sections.find(s => s.section.kind === 'sheet')?.bars ?? [];
    expect(strips.flatMap(b => b.cuts.map(c => c.piece.long_mm))).toEqual([1618.5, 1618.5]);
  });

  test('nothing is added up where some of the frame is sawn from bars of before', () => {
    const rails = KICKER.members.filter(m => m.kind === 'curved rail' || m.kind === 'base rail');
    const sawn = rails.map(m => ({
      need: m.need,
      section: '40x40x3',
      length_mm: m.long_mm,
      spoiled: false,
    }));
    expect(weigh(KICKER, orderOf(KICKER, { ...NOTHING_HAD, sawn }, heuristicPlan))).toBeNull();
  });

  test('what stands in the end is frame, entry and deck', () => {
    const { frame_kg, entry_kg, deck_kg, all_kg } = KICKER.masses;
    expect(frame_kg + entry_kg + deck_kg).toBeCloseTo(all_kg, 9);
    // Entry plate 726.3 × 1200 × 5 mm at 7850 kg/m³ = 34.2 kg, its bearers of flat on top (derived).
    expect(entry_kg).toBeGreaterThan(34.2);
    expect(entry_kg).toBeLessThan(34.2 + 3 * 1.2 * 2);
  });
});
