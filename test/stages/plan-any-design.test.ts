import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { sceneBounds } from '../../src/drawing/scene-fit.ts';
import { settle } from '../../src/ramp/settle.ts';
import { cutSheet } from '../../src/stages/cut/sheet.ts';
import { planSheet } from '../../src/stages/plan/sheet.ts';
import type { SheetDraft } from '../../src/stages/sheet.ts';
import { read, set } from './doings.ts';
import { situationFor } from './situation-for.ts';
import { wordGaps } from './word-gaps.ts';

/** Designs a person might type, sensible or not, and what they then measure. */
const designs = fc
  .record({
    system: fc.constantFrom('metric' as const, 'us' as const),
    height: fc.double({ min: 100, max: 1500, noNaN: true }),
    exit: fc.double({ min: 0.1, max: 1.2, noNaN: true }),
    width: fc.integer({ min: 300, max: 3000 }),
    side: fc.constantFrom(25, 30, 40, 50, 60),
    wall: fc.constantFrom(1.5, 2, 3, 4),
    kerf: fc.double({ min: 0.5, max: 3, noNaN: true }),
    cutter: fc.constantFrom('thin disc', 'band saw', 'hacksaw', 'chop saw'),
    boards: fc.boolean(),
    route: fc.constantFrom('slit', 'rolled'),
    sequence: fc.constantFrom('in step', 'one after the other'),
    agreed: fc.boolean(),
    depth: fc.option(fc.double({ min: -1.5, max: 1.5, noNaN: true })),
    turn: fc.option(fc.double({ min: 0.02, max: 0.5, noNaN: true })),
    helpers: fc.option(fc.integer({ min: 0, max: 6 })),
  })
  .map((d): Doing[] => [
    { kind: 'build-begun', name: 'any', system: d.system },
    set('shape', { height: d.height, exit: d.exit }),
    set('width', d.width),
    set('tube', { depth_mm: d.side, width_mm: d.side, wall_mm: d.wall }),
    set('cutter', { kind: d.cutter, kerf_mm: d.kerf }),
    ...(d.boards ? [set('deck', { kind: 'boards', thickness_mm: 38, board_mm: 145 })] : []),
    set('route', d.route),
    set('sequence', d.sequence),
    ...(d.agreed ? [{ kind: 'design-agreed' } as const] : []),
    ...(d.depth === null ? [] : [read('cut/measure-tube@A', 'depth', d.side + d.depth)]),
    ...(d.turn === null ? [] : [read('cut/test-piece', 'turn', d.turn)]),
    ...(d.helpers === null ? [] : [read('plan/helpers', 'helpers', d.helpers)]),
  ])
  .filter(doings => {
    const shape = doings[1] as { value: { height: number; exit: number } };
    return settle('any', 'metric', { shape: shape.value }).ok;
  });

/** Numbers anywhere in a page that are none. */
const unsound = (value: unknown, path = ''): string[] => {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, v]) => unsound(v, `${path}.${key}`));
};

const sound = (sheet: SheetDraft): void => {
  expect(unsound(sheet)).toEqual([]);
  expect(wordGaps(sheet)).toEqual([]);
  const keys = sheet.steps.flatMap(s => [s.key, ...(s.items ?? []).map(i => i.key)]);
  expect(new Set(keys).size).toBe(keys.length);
  const ids = sheet.figures.map(f => f.id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const f of sheet.figures) expect(f.matters).toBeGreaterThan(0);
  for (const f of sheet.findings) {
    expect(f.offers.length).toBeGreaterThanOrEqual(3);
    expect(f.offers.some(o => o.remedy.startsWith('leave'))).toBe(true);
    expect(new Set(f.offers.map(o => o.remedy)).size).toBe(f.offers.length);
  }
  expect(sceneBounds(sheet.scene)).not.toBeNull();
};

describe('whatever is typed', () => {
  test('plan and cutting give whole pages: no number that is none, no word missing, three ways for every finding', () => {
    fc.assert(
      fc.property(designs, doings => {
        const s = situationFor(doings);
        sound(planSheet(s));
        sound(cutSheet(s));
      }),
      { numRuns: 150 },
    );
  });
});
