import { expect, test } from 'vitest';
import { topic } from '../../../src/commands/reckon/layout.ts';

test('gives a point for each mark, in their order', async () => {
  const outcome = await topic.run({ radius_mm: 3000, exit_deg: 45, from: 'tangent', at_mm: [1800, 600] });
  expect(outcome).toMatchObject({ value: { points: [{ x_mm: 1800, y_mm: 600 }, { x_mm: 600 }] } });
});

test('a mark out of reach is told by its place', async () => {
  expect(await topic.run({ radius_mm: 3000, exit_deg: 45, from: 'chord', at_mm: [0, 1200] })).toMatchObject({
    fault: { code: 'out-of-range', field: 'at_mm.1' },
  });
});
