import { expect, test } from 'vitest';
import { topic } from '../../../src/commands/reckon/lines.ts';

test('gives the four lines with the fields of each', async () => {
  const outcome = await topic.run({ radius_mm: 3000, exit_deg: 45, deck_mm: 18, depth_mm: 40, wall_mm: 3 });
  const { lines } = (outcome.ok ? outcome.value : {}) as { lines: Record<string, unknown>[] };
  expect(lines.map(line => line.name)).toEqual([
    'deck top',
    'rail top face',
    'hinge line',
    'rail bottom face',
  ]);
  expect(Object.keys(lines[0] ?? {})).toEqual([
    'name',
    'offset_mm',
    'radius_mm',
    'arc_mm',
    'lip_x_mm',
    'lip_y_mm',
  ]);
});

test('a wall too thick for the tube is refused at its field', async () => {
  expect(
    await topic.run({ radius_mm: 3000, exit_deg: 45, deck_mm: 18, depth_mm: 40, wall_mm: 20 }),
  ).toMatchObject({
    fault: { code: 'contradiction', field: 'wall_mm' },
  });
});
