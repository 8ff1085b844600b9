import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Sawn } from '../../../src/ramp/cutting/needed.ts';
import { barsToBuy, NOTHING_HAD, type Order, orderOf } from '../../../src/ramp/cutting/order.ts';
import { SQUARING } from '../../../src/ramp/cutting/usual-stock.ts';
import { NOTHING_MEASURED } from '../../../src/ramp/measured.ts';
import { rampOf } from '../../../src/ramp/ramp.ts';
import { heuristicPlan } from '../../../src/reckon/stock/plan-stock.ts';

const made = rampOf('steel', 'metric', {}, NOTHING_MEASURED);
if (!made.ok) throw new Error(made.fault.message);
const ramp = made.value;
const CARRY = 2440;
const KERF = 3;
const have = { ...NOTHING_HAD, carry_mm: CARRY, kerf_mm: KERF };
const first = orderOf(ramp, have, heuristicPlan);
const bought = new Map(first.sections.map(s => [s.section.name, barsToBuy(s)]));
const after = (sawn: readonly Sawn[]): Order => orderOf(ramp, { ...have, bought, sawn }, heuristicPlan);

/** Needs that are pieces: spares change with what is still to be cut. */
const piecesOf = (o: Order): string[] =>
  o.sections.flatMap(s =>
    s.parts.flatMap(p =>
      p.cuts.filter(c => c.piece.when !== 'spare').map(c => `${s.section.name} ${c.piece.need}`),
    ),
  );

/** A piece is sawn: the how-manieth of those that can be, how far off its length, and whether it is spoiled. */
const act = fc.record({
  pick: fc.nat(60),
  off: fc.oneof(
    { weight: 5, arbitrary: fc.double({ min: -0.5, max: 0.5, noNaN: true }) },
    { weight: 1, arbitrary: fc.double({ min: -300, max: 3, noNaN: true }) },
  ),
  spoiled: fc.oneof(
    { weight: 6, arbitrary: fc.constant(false) },
    { weight: 1, arbitrary: fc.constant(true) },
  ),
});

describe('steel of a build, whatever is sawn, spoiled or sawn again', () => {
  test('no piece is listed twice or lost, and no steel is used twice', () => {
    const all = piecesOf(first).sort();
    expect(new Set(all).size).toBe(all.length);
    fc.assert(
      fc.property(fc.array(act, { minLength: 4, maxLength: 22 }), acts => {
        const sawn: Sawn[] = [];
        for (const { pick, off, spoiled } of acts) {
          const open = after(sawn).sections.flatMap(s =>
            s.parts.flatMap(p =>
              p.cuts.filter(c => c.piece.known && c.piece.when !== 'spare').map(c => ({ s, c })),
            ),
          );
          const next = open[pick % Math.max(1, open.length)];
          if (next === undefined) break;
          sawn.push({
            need: next.c.piece.need,
            section: next.s.section.name,
            length_mm: Math.max(20, next.c.piece.long_mm + off),
            spoiled,
          });
        }
        const o = after(sawn);
        const done = new Set(sawn.filter(p => !p.spoiled).map(p => `${p.section} ${p.need}`));
        expect(piecesOf(o).sort()).toEqual(all.filter(need => !done.has(need)));
        for (const s of o.sections) {
          const trim = s.section.kind === 'board' || s.section.kind === 'sheet' ? 0 : SQUARING.metric;
          const held = bought.get(s.section.name) ?? [];
          for (const w of s.worked) {
            // What was sawn off a bar and what is left of it were the bar.
            const bar = held.find(h => h.id === w.id);
            const off = w.sawn.reduce((sum, p) => sum + p.length_mm + KERF, 0);
            const squared = w.sawn.length > 0 ? (bar?.trim_mm ?? trim) : 0;
            expect(w.left_mm).toBeCloseTo(Math.max(0, (bar?.length_mm ?? 0) - squared - off), 6);
          }
          const sources = s.bars.flatMap(b => (b.source.is === 'open' ? [b.source.bar.id] : []));
          expect(new Set(sources).size).toBe(sources.length);
          for (const p of s.parts) {
            const last = p.cuts.at(-1)?.to_mm ?? 0;
            // Half a step of the tape a piece, as a bar that was planned to the last of it has.
            expect(last).toBeLessThanOrEqual(p.length_mm - p.trim_mm + 0.8 * (p.cuts.length + 1));
          }
        }
      }),
      { numRuns: 15 },
    );
  });
});
