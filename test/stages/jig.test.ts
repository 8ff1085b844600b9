import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { tackLineOffset } from '../../src/ramp/rail-shape.ts';
import {
  alongLine,
  blockPairs,
  clampsWanted,
  jigPoints,
  jigScene,
  jigSheets,
  jigSpot,
  lineLength,
  SCREWS_PER_BLOCK,
} from '../../src/stages/jig.ts';
import { situationFor } from './situation-for.ts';

const DEG = Math.PI / 180;
const begun = (...more: Doing[]): Doing[] => [
  { kind: 'build-begun', name: 'jig', system: 'metric' },
  { kind: 'design-set', field: 'shape', value: { radius: 3000, exit: 45 * DEG } },
  { kind: 'design-set', field: 'deck', value: { kind: 'sheet', layer_mm: 9, layers: 2 } },
  { kind: 'design-set', field: 'clamps', value: 8 },
  ...more,
];
const planOf = (...more: Doing[]) => {
  const s = situationFor(begun(...more));
  const plan = s.ramp.plans.get('A');
  if (plan === undefined) throw new Error('no rail A');
  return { s, plan };
};

describe('the lines on the jig', () => {
  test('R 3058: offsets from the tangent are the circle’s own, 14.8 at 300, 135.4 at 900', () => {
    // Tangent offset y = R − √(R² − x²), taught in every book of setting out; by hand for R = 3058.
    const { plan } = planOf();
    expect(plan.finished.radius_mm).toBeCloseTo(3058, 6);
    const points = jigPoints(plan, 'finished line', 300);
    expect(points[0]).toMatchObject({ name: 'F1', x_mm: 300 });
    expect(points[0]?.y_mm).toBeCloseTo(3058 - Math.sqrt(3058 ** 2 - 300 ** 2), 6);
    expect(points[2]?.y_mm).toBeCloseTo(135.44, 2);
  });

  test('every point lies on its circle, and the last one is the lip mark', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('tack line', 'finished line'),
        fc.double({ min: 50, max: 700, noNaN: true }),
        (line, step) => {
          const { plan } = planOf();
          const { radius_mm } = line === 'tack line' ? plan.tack : plan.finished;
          const points = jigPoints(plan, line as 'tack line', step);
          for (const p of points) {
            expect(Math.hypot(p.x_mm, radius_mm - p.y_mm)).toBeCloseTo(radius_mm, 6);
            expect(p.across_mm).toBeCloseTo(Math.hypot(p.x_mm, p.y_mm), 9);
          }
          const lip = jigSpot(plan, line as 'tack line', lineLength(plan, line as 'tack line'));
          expect(points.at(-1)?.x_mm).toBeCloseTo(lip.x, 9);
        },
      ),
    );
  });

  test('a straight last part goes on along the tangent', () => {
    const { plan } = planOf({ kind: 'design-set', field: 'straight', value: 120 });
    const bend = jigSpot(plan, 'finished line', plan.finished.radius_mm * plan.finished.turn_rad);
    const lip = jigSpot(plan, 'finished line', lineLength(plan, 'finished line'));
    expect(Math.hypot(lip.x - bend.x, lip.y - bend.y)).toBeCloseTo(120, 6);
    expect(Math.atan2(lip.y - bend.y, lip.x - bend.x)).toBeCloseTo(plan.finished.turn_rad, 9);
    expect(jigPoints(plan, 'finished line', 300).map(p => p.name)).toContain('F bend');
  });

  test('tack line and finished line leave the entry together and end as far apart as the pull makes them', () => {
    const { plan } = planOf();
    const tack = jigSpot(plan, 'tack line', lineLength(plan, 'tack line'));
    const lip = jigSpot(plan, 'finished line', lineLength(plan, 'finished line'));
    const off = -(tack.x - lip.x) * Math.sin(lip.slope) + (tack.y - lip.y) * Math.cos(lip.slope);
    // The ramp's own figure takes the circles as leaving the back wall together; half a wall aside they are one.
    expect(off).toBeCloseTo(tackLineOffset(plan, plan.toLip_mm), 0);
    expect(off).toBeLessThan(0);
  });

  test('the middle of a flat lies at the same share of every line', () => {
    const { plan } = planOf();
    expect(alongLine(plan, 'finished line', plan.bend_mm)).toBeCloseTo(
      plan.finished.radius_mm * plan.finished.turn_rad,
      9,
    );
    expect(alongLine(plan, 'tack line', plan.bend_mm / 2)).toBeCloseTo(
      (plan.tack.radius_mm * plan.tack.turn_rad) / 2,
      9,
    );
  });
});

describe('blocks and sheets', () => {
  test('2 ⌈s / 2.5 p⌉ + 4 blocks, three screws each, at the ends and at middles of flats', () => {
    const { s, plan } = planOf();
    const pairs = blockPairs(s.ramp.design, plan, 'tack line');
    expect(2 * pairs.length).toBe(2 * Math.ceil(plan.bend_mm / (2.5 * plan.pitch_mm)) + 4);
    expect(SCREWS_PER_BLOCK).toBe(3);
    expect(pairs.at(0)?.name).toBe('entry');
    expect(pairs.at(-1)?.name).toBe('lip');
    for (const pair of pairs) {
      for (const slit of plan.slits) {
        const away = Math.abs(pair.along_mm - alongLine(plan, 'tack line', slit.at_mm));
        if (pair.flat !== null) expect(away).toBeGreaterThan(plan.pitch_mm / 2 - 1);
      }
    }
  });

  test('fewer clamps than one every 400 mm: the blocks stand closer', () => {
    const many = planOf();
    const few = planOf({ kind: 'design-set', field: 'clamps', value: 2 });
    expect(clampsWanted(many.plan)).toBe(Math.ceil(many.plan.toLip_mm / 400));
    expect(blockPairs(few.s.ramp.design, few.plan, 'tack line').length).toBeGreaterThan(
      blockPairs(many.s.ramp.design, many.plan, 'tack line').length,
    );
  });

  test('a rail of 1.7 m run lies on one sheet, a long shallow one on two', () => {
    expect(jigSheets(planOf().s)).toBe(1);
    expect(
      jigSheets(planOf({ kind: 'design-set', field: 'shape', value: { radius: 9000, exit: 25 * DEG } }).s),
    ).toBe(2);
  });

  test('the drawing shows both lines dotted, the rail, its blocks, and lights the station', () => {
    const { s, plan } = planOf();
    const scene = jigScene(s, 'A', { railOn: 'tack line', blocks: true, lit_mm: 500 });
    const dotted = scene.items.filter(i => i.is === 'path' && i.stroke === 'dotted');
    expect(dotted).toHaveLength(3);
    const pairs = blockPairs(s.ramp.design, plan, 'tack line').length;
    expect(scene.items.filter(i => i.is === 'path' && i.stroke === 'solid')).toHaveLength(1 + 2 * pairs);
    expect(scene.items.some(i => i.is === 'mark' && i.lit === true)).toBe(true);
  });
});
