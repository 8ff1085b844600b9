import { expect, test } from 'vitest';
import { topic } from '../../../src/commands/reckon/arc.ts';

const answer = async (input: Record<string, number>) => {
  const outcome = await topic.run(input);
  if (!outcome.ok) throw new Error(outcome.fault.message);
  return outcome.value;
};

test('gives all seven numbers, and what was given unchanged', async () => {
  expect(Object.keys(await answer({ radius_mm: 3000, exit_deg: 45 }))).toEqual([
    'height_mm',
    'run_mm',
    'radius_mm',
    'exit_deg',
    'arc_mm',
    'chord_mm',
    'sagitta_mm',
  ]);
  // By way of radians and back, 33.3° would come out as 33.300000000000004°.
  for (let exit_deg = 0.1; exit_deg <= 120; exit_deg += 1.1)
    expect((await answer({ height_mm: 700, exit_deg })).exit_deg).toBe(exit_deg);
});

test('the steeper arc stands under other, in degrees as well', async () => {
  const { exit_deg, other } = await answer({ run_mm: 2800, radius_mm: 3000 });
  expect(exit_deg).toBeCloseTo(68.9605, 4);
  expect((other as { exit_deg: number }).exit_deg).toBeCloseTo(111.0395, 4);
});

test('run with arc length is answered with a warning, other pairs without', async () => {
  const { warnings } = await answer({ run_mm: 2121.32, arc_mm: 2356.19 });
  expect(warnings).toEqual([expect.stringContaining('1 mm in the run moves it by 6.6 mm')]);
  expect(await answer({ height_mm: 878.68, arc_mm: 2356.19 })).not.toHaveProperty('warnings');
});

test('a fault names the field as it is typed here', async () => {
  expect(await topic.run({ radius_mm: 3000, exit_deg: 45, arc_mm: 2356 })).toMatchObject({
    ok: false,
    fault: { code: 'too-many-values', field: 'arc_mm' },
  });
  expect(await topic.run({ radius_mm: 3000, arc_mm: 2356, exit_deg: 45 })).toMatchObject({
    fault: { field: 'exit_deg' },
  });
});
