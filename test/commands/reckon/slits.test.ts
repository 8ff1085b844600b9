import { expect, test } from 'vitest';
import { topic } from '../../../src/commands/reckon/slits.ts';

const job = { hinge_radius_mm: 3056.5, turn_deg: 45, depth_mm: 40, wall_mm: 3, kerf_mm: 1.2 };

const answer = async (input: Record<string, number>) => {
  const outcome = await topic.run(input);
  if (!outcome.ok) throw new Error(outcome.fault.message);
  return outcome.value;
};

test('gap and pull are none when they are not given', async () => {
  const plain = await answer(job);
  expect(plain).toEqual(await answer({ ...job, gap_mm: 0, pull_deg: 0 }));
  expect(plain).toMatchObject({ count: 26 });
  expect(plain.close_deg).toBeCloseTo(45 / 26, 12);
  expect(plain.face_gap_mm).toBeCloseTo(1.2 - (38.5 * 45 * Math.PI) / (180 * 26), 12);
});

test('the bend asked of a slit is less by what its weld pulls', async () => {
  const { count, close_deg } = await answer({ ...job, pull_deg: 0.4 });
  expect((close_deg as number) + 0.4).toBeCloseTo(45 / (count as number), 12);
});

test('a sound plan has no warnings; a wide kerf, a thin wall and short flats have theirs', async () => {
  expect(await answer(job)).not.toHaveProperty('warnings');
  expect((await answer({ ...job, kerf_mm: 2.8 })).warnings).toEqual([
    expect.stringContaining('wider than half the wall'),
  ]);
  expect((await answer({ ...job, wall_mm: 1.5, kerf_mm: 1 })).warnings).toEqual([
    expect.stringContaining('under 2 mm'),
  ]);
  expect((await answer({ ...job, count: 70 })).warnings).toEqual([
    expect.stringContaining('flats are shorter'),
  ]);
});

test('faults name the fields as they are typed here', async () => {
  expect(await topic.run({ ...job, hinge_radius_mm: 30 })).toMatchObject({
    fault: { field: 'hinge_radius_mm' },
  });
  expect(await topic.run({ ...job, pull_deg: 50 })).toMatchObject({ fault: { field: 'pull_deg' } });
  expect(await topic.run({ ...job, count: 4 })).toMatchObject({
    fault: { field: 'count', accepted: 'a whole number from 26' },
  });
});
