import { expect, test } from 'vitest';
import { topic } from '../../../src/commands/reckon/heat.ts';
import { readFlags } from '../../../src/commands/reckon/read-flags.ts';
import { readInput } from '../../../src/commands/reckon/read-input.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const asked = async (line: string) => {
  const input = readInput(topic.fields, readFlags(line.split(' ')).fields);
  return input.ok ? topic.run(input.value) : input;
};

test('the example gives heat and efficiency', async () => {
  expect(kept(await asked(topic.example))).toEqual({ kJ_mm: (0.8 * 18 * 110) / 6 / 1000, efficiency: 0.8 });
});

test('travel in inches a minute', async () => {
  const line = 'heat --volts 18 --amps 110 --process smaw --travel_mm_s';
  const us = kept(await asked(`${line} 10ipm`));
  expect(us.kJ_mm).toBeCloseTo(kept(await asked(`${line} ${254 / 60}`)).kJ_mm as number, 12);
});

test('impossible values are refused by name', async () => {
  expect(refused(await asked('heat --volts 18 --amps 110 --travel_mm_s 0 --process gmaw'))).toMatchObject({
    code: 'out-of-range',
    field: 'travel_mm_s',
  });
  expect(refused(await asked('heat --volts 18 --amps 110 --travel_mm_s 6 --process tig'))).toMatchObject({
    code: 'out-of-range',
    field: 'process',
  });
  expect(refused(await asked('heat --amps 110 --travel_mm_s 6 --process gmaw'))).toMatchObject({
    code: 'missing-field',
    field: 'volts',
  });
});
