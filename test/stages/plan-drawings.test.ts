import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { sceneBounds } from '../../src/drawing/scene-fit.ts';
import type { Scene } from '../../src/scene/scene.ts';
import { sideView } from '../../src/stages/side-view.ts';
import { sawItemKey, slitStrip } from '../../src/stages/slit-strip.ts';
import { situationFor } from './situation-for.ts';

const begun: Doing = { kind: 'build-begun', name: 'Quarry Lane kicker', system: 'metric' };
const paths = (scene: Scene, stroke: string) =>
  scene.items.flatMap(i => (i.is === 'path' && i.stroke === stroke ? [i.points] : []));

describe('the side view', () => {
  test('is to scale: from the arc on the ground to behind the lip, and as high as the lip', () => {
    const s = situationFor([begun]);
    const bounds = sceneBounds(sideView(s));
    expect(bounds?.left).toBe(0);
    expect(bounds?.bottom).toBeCloseTo(0, 9);
    expect(bounds?.right).toBeGreaterThanOrEqual(s.ramp.lip.x_mm);
    // The label of the lip stands one tube above it; nothing else is higher.
    expect(bounds?.top).toBeCloseTo(s.ramp.lip.y_mm + 40, 6);
  });

  test('the deck top is the dotted line and ends at the lip', () => {
    const s = situationFor([begun]);
    const [deck] = paths(sideView(s), 'dotted');
    expect(deck?.at(-1)?.x).toBeCloseTo(s.ramp.lip.x_mm, 9);
    expect(deck?.at(-1)?.y).toBeCloseTo(s.ramp.lip.y_mm, 9);
  });

  test('an upright stands between the base rail and the rail’s bottom face', () => {
    const s = situationFor([begun]);
    const upright = s.ramp.members.find(m => m.kind === 'upright');
    const lit = paths(sideView(s, { lit: upright?.need ?? '' }), 'lit')[0] ?? [];
    const ys = lit.map(p => p.y);
    const xs = lit.map(p => p.x);
    expect(Math.min(...ys)).toBeCloseTo(40, 6);
    expect(Math.max(...ys) - 40).toBeCloseTo(((upright?.long_mm ?? 0) + (upright?.short_mm ?? 0)) / 2, 6);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(30, 6);
  });

  test('the tops of diagonals reach the rail they hold', () => {
    const s = situationFor([begun]);
    const shape = s.ramp.shapes.get('A');
    const tall = s.ramp.members.find(m => m.need === 'diagonal@A:lip');
    const lit = paths(sideView(s, { lit: tall?.need ?? '' }), 'lit')[0] ?? [];
    const lip = s.ramp.members.find(m => m.need === 'lip upright@A');
    const top = Math.max(...lit.map(p => p.y));
    const rail = shape?.bottomAt(lip?.along_mm ?? 0).y ?? 0;
    expect(Math.abs(top - rail)).toBeLessThan(40);
  });

  test('every rail can be lit by its name, also the second that stands behind the first', () => {
    const s = situationFor([begun]);
    expect(paths(sideView(s, { lit: 'B' }), 'lit')).toHaveLength(1);
    expect(paths(sideView(s), 'lit')).toHaveLength(0);
  });
});

describe('the slit strip', () => {
  test('each slit has its stroke at its mark; the one the step is about is lit', () => {
    const s = situationFor([begun]);
    const plan = s.ramp.plans.get('A');
    const scene = slitStrip(s, 'A', 7);
    const lit = paths(scene, 'lit');
    expect(lit).toHaveLength(1);
    expect(lit[0]?.[0]?.x).toBe(plan?.slits[6]?.at_mm);
    // The lip mark and every other planned slit are dotted.
    expect(paths(scene, 'dotted')).toHaveLength((plan?.slits.length ?? 0) - 1 + 1);
  });

  test('a sawn slit reaches lower than a marked one', () => {
    const slits =
      situationFor([begun])
        .ramp.plans.get('A')
        ?.slits.filter(x => x.third === 1) ?? [];
    const marked: Doing = {
      kind: 'slits-marked',
      rail: 'A',
      third: 1,
      first: 1,
      marks_mm: slits.map(x => x.at_mm),
      close_rad: slits[0]?.close_rad ?? 0,
      gap_mm: 0.1,
      kerf_mm: 1.2,
    };
    const s = situationFor([begun, marked, { kind: 'step-ticked', step: sawItemKey('A', 1, 1), basis: {} }]);
    const [outline, first, second] = paths(slitStrip(s, 'A'), 'solid');
    expect(outline).toHaveLength(5);
    expect(first?.[0]?.y).toBeLessThan(second?.[0]?.y ?? 0);
  });
});
