import { expect, test } from 'vitest';
import { topic } from '../../../src/commands/reckon/lift.ts';
import { readFlags } from '../../../src/commands/reckon/read-flags.ts';
import { readInput } from '../../../src/commands/reckon/read-input.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const asked = async (line: string) => {
  const input = readInput(topic.fields, readFlags(line.split(' ')).fields);
  return input.ok ? topic.run(input.value) : input;
};

test('the example gives six multipliers, limit and index', async () => {
  const answer = kept(await asked(topic.example));
  expect(Object.keys(answer)).toEqual([
    'horizontal',
    'vertical',
    'distance',
    'twist',
    'frequency',
    'coupling',
    'limit_kg',
    'index',
  ]);
  expect(answer.twist).toBeCloseTo(1 - 0.0032 * 20, 12);
});

test('a lift nobody should make has limit 0 and no index', async () => {
  const far = topic.example.replace('--hands_from_body_mm 350', '--hands_from_body_mm 700');
  expect(kept(await asked(far))).toMatchObject({ horizontal: 0, limit_kg: 0, index: null });
});

test('impossible values are refused by name', async () => {
  for (const [bad, field] of [
    ['--load_kg 0', 'load_kg'],
    ['--hours 9', 'hours'],
    ['--twist_deg 200', 'twist_deg'],
    ['--grip firm', 'grip'],
  ] as const) {
    const line = topic.example.replace(new RegExp(`--${field} \\S+`), bad);
    expect(refused(await asked(line))).toMatchObject({ code: 'out-of-range', field });
  }
});
