import { expect, test } from 'vitest';
import { pullWays } from '../../src/stages/plan/pull-ways.ts';
import { planSheet } from '../../src/stages/plan/sheet.ts';
import { begun, DEG, set } from './doings.ts';
import { situationFor } from './situation-for.ts';

const REF = set('shape', { radius: 3000, exit: 45 * DEG });
const situation = (...doings: ReturnType<typeof set>[]) => situationFor([begun(), REF, ...doings]);

test("the three ways to take the next rail's pull stand side by side, and each alone brings the rail home", () => {
  const s = situation();
  const plan = s.ramp.plans.get('A')!;
  const v = new Map(pullWays(s).map(f => [f.id, f.value.is === 'exact' ? f.value.v : Number.NaN] as const));
  const h = 38.5;
  const kerf = plan.kerf_mm;
  const full = kerf / h;
  // Fewer slits: so many closed to the stop and pulled reach the bend, one fewer does not.
  const fewer = v.get('way-slits')!;
  expect(fewer * (full + plan.pull.rad)).toBeGreaterThanOrEqual(plan.turn_rad);
  expect((fewer - 1) * (full + plan.pull.rad)).toBeLessThan(plan.turn_rad);
  // As many as without the pull, each left open: what it closes and what its weld adds make its share of the bend.
  const without = Math.ceil(plan.turn_rad / full);
  const closed = (kerf - v.get('way-gap')!) / h;
  expect(without * (closed + plan.pull.rad)).toBeCloseTo(plan.turn_rad, 9);
  // The same slits, as the radius the jig is set to on the back wall.
  const back = v.get('way-radius')! - plan.tube.wall_mm / 2;
  expect(plan.bend_mm / back).toBeCloseTo(without * closed, 9);
  expect(fewer).toBeLessThan(without);
});

test('the page of slits shows them, and a rolled rail has none', () => {
  const step = planSheet(situation()).steps.find(x => x.key === 'plan/slits');
  expect(step?.uses).toEqual(expect.arrayContaining(['way-slits', 'way-radius', 'way-gap']));
  expect(pullWays(situation(set('route', 'rolled')))).toEqual([]);
});
