import { expect, test } from 'vitest';
import { topic as dew } from '../../../src/commands/reckon/dew.ts';
import { topic as paint } from '../../../src/commands/reckon/paint.ts';
import { readFlags } from '../../../src/commands/reckon/read-flags.ts';
import { readInput } from '../../../src/commands/reckon/read-input.ts';
import type { Topic } from '../../../src/commands/reckon/topic.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const asked = async (topic: Topic, line: string) => {
  const input = readInput(topic.fields, readFlags(line.split(' ')).fields);
  return input.ok ? topic.run(input.value) : input;
};

test('the examples give what is promised', async () => {
  expect(kept(await asked(dew, dew.example))).toMatchObject({
    dew_C: expect.any(Number),
    margin_C: expect.any(Number),
    paint: true,
    why: expect.any(String),
  });
  expect(kept(await asked(paint, paint.example))).toEqual({
    litres: expect.any(Number),
    m2_per_litre: expect.any(Number),
  });
});

test('without the steel paint is null', async () => {
  expect(kept(await asked(dew, 'dew --air_C 61F --humidity_pct 70'))).toMatchObject({
    paint: null,
    margin_C: null,
  });
});

test('impossible values are refused by name', async () => {
  expect(refused(await asked(dew, 'dew --air_C 16 --humidity_pct 0'))).toMatchObject({
    code: 'out-of-range',
    field: 'humidity_pct',
  });
  expect(refused(await asked(dew, 'dew --air_C 16 --humidity_pct 101'))).toMatchObject({
    code: 'out-of-range',
    field: 'humidity_pct',
  });
  expect(refused(await asked(paint, paint.example.replace('--coats 2', '--coats 1.5')))).toMatchObject({
    code: 'out-of-range',
    field: 'coats',
  });
  expect(refused(await asked(paint, paint.example.replace('--loss_pct 8', '--loss_pct 100')))).toMatchObject({
    code: 'out-of-range',
    field: 'loss_pct',
  });
});
