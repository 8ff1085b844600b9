import { describe, expect, test } from 'vitest';
import { barsLeft } from '../../../src/ramp/cutting/bars-left.ts';
import { layerStrips } from '../../../src/ramp/cutting/deck-wanted.ts';
import { NOTHING_HAD, orderOf } from '../../../src/ramp/cutting/order.ts';
import { yardCuts } from '../../../src/ramp/cutting/yard-cuts.ts';
import { NOTHING_MEASURED } from '../../../src/ramp/measured.ts';
import { rampOf } from '../../../src/ramp/ramp.ts';
import { heuristicPlan } from '../../../src/reckon/stock/plan-stock.ts';

const bar = (id: string, length_mm: number, needs: string[] = []) => ({
  id,
  from: 'bought' as const,
  length_mm,
  label: id,
  needs,
});
const sawn = (need: string, length_mm: number) => ({ need, section: 's', length_mm, spoiled: false });

describe('what is left of the bars', () => {
  test('a piece comes off the bar it was to come from, with the squaring and the blade', () => {
    const [a, b] = barsLeft(
      [bar('1', 6000), bar('2', 6000, ['base rail@A'])],
      [sawn('base rail@A', 1330)],
      3,
      12,
    );
    expect(a).toMatchObject({ left_mm: 6000, squared: false, sawn: [] });
    expect(b).toMatchObject({ left_mm: 6000 - 12 - 1330 - 3, squared: true });
  });

  test('the same need cut twice comes off the same bar while it fits, then off another that does', () => {
    const left = barsLeft([bar('1', 3000, ['x']), bar('2', 3000)], [sawn('x', 2000), sawn('x', 2000)], 3, 12);
    expect(left.map(b => b.left_mm)).toEqual([985, 985]);
  });

  test('an end gone to another build is the bar it was all of, not the first opened one', () => {
    const left = barsLeft(
      [bar('1', 3000, ['x']), bar('2', 3000, ['y'])],
      [sawn('x', 1000), sawn('y', 2000), { ...sawn('end', 985), spoiled: true, isEnd: true }],
      3,
      12,
    );
    expect(left.map(b => b.left_mm)).toEqual([1985, 0]);
  });

  test('a piece that fits no bar came from elsewhere', () => {
    expect(barsLeft([bar('1', 1000)], [sawn('x', 2000)], 3, 12)[0]?.left_mm).toBe(1000);
  });
});

describe('cuts for the way home', () => {
  const ramp = rampOf('yard', 'metric', {}, NOTHING_MEASURED);
  if (!ramp.ok) throw new Error(ramp.fault.message);
  const bars = orderOf(ramp.value, NOTHING_HAD, heuristicPlan).sections.flatMap(s => s.bars);

  test.each([6100, 3000, 2440, 2000])(
    'for %d mm: no cut goes through a piece, and each piece keeps room to be squared',
    carry => {
      for (const b of bars) {
        const yard = yardCuts(b, carry, 'metric');
        const marks = [0, ...yard.at_mm, b.length_mm];
        // Pieces keep their order: each part between two cuts holds those that follow, ends squared.
        let i = 0;
        for (let k = 1; k < marks.length; k++) {
          let room =
            (marks[k] as number) - (marks[k - 1] as number) - (k === 1 ? b.trim_mm / 2 : yard.wander_mm);
          while (i < b.cuts.length) {
            const cut = b.cuts[i] as (typeof b.cuts)[number];
            const long = cut.to_mm - cut.from_mm;
            if (room < long - 1.6) break;
            room -= long + 3;
            i++;
          }
        }
        expect(i).toBe(b.cuts.length);
        if (b.cuts.every(c => c.to_mm - c.from_mm <= carry - 40)) {
          const free = b.length_mm - (b.cuts.at(-1)?.to_mm ?? 0);
          expect(yard.longest_mm).toBeLessThanOrEqual(Math.max(carry, free));
        }
      }
    },
  );

  test('a bar that goes home whole is not cut', () => {
    for (const b of bars) expect(yardCuts(b, 6100, 'metric').at_mm).toEqual([]);
  });
});

describe('strips of a sheet deck', () => {
  test.each([1622, 2440, 2500, 3000, 4880, 5100])(
    '%d mm of deck: both layers cover it, joints a hand apart',
    deck => {
      const joints = (strips: readonly number[]): number[] => {
        let at = 0;
        return strips.slice(0, -1).map(s => {
          at += s;
          return at;
        });
      };
      const layers = [0, 1].map(layer => layerStrips(deck, 2440, layer));
      for (const strips of layers) {
        expect(strips.reduce((a, b) => a + b, 0)).toBeCloseTo(deck, 6);
        expect(Math.max(...strips)).toBeLessThanOrEqual(2440);
      }
      for (const a of joints(layers[0] ?? []))
        for (const b of joints(layers[1] ?? [])) expect(Math.abs(a - b)).toBeGreaterThanOrEqual(200);
    },
  );
});
