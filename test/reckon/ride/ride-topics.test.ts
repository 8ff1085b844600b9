import { describe, expect, test } from 'vitest';
import { topic as climb } from '../../../src/commands/reckon/climb.ts';
import { topic as flight } from '../../../src/commands/reckon/flight.ts';
import { readFlags } from '../../../src/commands/reckon/read-flags.ts';
import { readInput } from '../../../src/commands/reckon/read-input.ts';
import { topic as runIn } from '../../../src/commands/reckon/run-in.ts';
import type { Topic } from '../../../src/commands/reckon/topic.ts';
import type { Outcome } from '../../../src/quantity/outcome.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const asked = async (topic: Topic, line: string): Promise<Outcome<Readonly<Record<string, unknown>>>> => {
  const input = readInput(topic.fields, readFlags(line.split(' ')).fields);
  return input.ok ? topic.run(input.value) : input;
};

describe.each([
  [flight, ['time_s', 'distance_m', 'landing_speed_m_s', 'landing_deg', 'rise_m', 'fall_height_m']],
  [climb, ['exit_speed_m_s', 'load_factor_start', 'load_factor_end']],
  [runIn, ['drop_m', 'slope_length_m']],
] as const)('$name', (topic, promised) => {
  test('its example gives every promised field, all finite', async () => {
    const answer = kept(await asked(topic, topic.example));
    for (const field of promised) expect(Number.isFinite(answer[field])).toBe(true);
  });

  test('every field is needed or optional, and an unknown one is refused', async () => {
    expect(refused(await asked(topic, `${topic.example} --wind_m_s 3`))).toMatchObject({
      code: 'unknown-field',
    });
    const first = topic.example.split(' ')[1]?.slice(2) ?? '';
    const without = topic.example.replace(/ --\S+ \S+/, '');
    expect(refused(await asked(topic, without))).toMatchObject({
      code: 'missing-field',
      field: first,
    });
  });
});

test('a jump in inches and miles an hour is the same jump', async () => {
  const metric = kept(await asked(flight, 'flight --speed_m_s 8.04672 --exit_deg 45 --drop_m 0'));
  const us = kept(await asked(flight, 'flight --speed_m_s 18mph --exit_deg 45 --drop_m 0in'));
  expect(us.distance_m).toBeCloseTo(metric.distance_m as number, 12);
});

test('a short landing says by how much, one that clears does not', async () => {
  const line = 'flight --exit_deg 30 --drop_m 0 --gap_m 3 --slope_deg 25';
  expect(kept(await asked(flight, `${line} --speed_m_s 5`)).short_m).toBeCloseTo(0.792, 3);
  expect(kept(await asked(flight, `${line} --speed_m_s 6`))).not.toHaveProperty('short_m');
});

test('faults name the field as it is typed here', async () => {
  expect(refused(await asked(flight, 'flight --speed_m_s 0 --exit_deg 30 --drop_m 0'))).toMatchObject({
    code: 'out-of-range',
    field: 'speed_m_s',
  });
  expect(refused(await asked(flight, 'flight --speed_m_s 6 --exit_deg 90 --drop_m 0'))).toMatchObject({
    code: 'out-of-range',
    field: 'exit_deg',
  });
  expect(
    refused(await asked(flight, 'flight --speed_m_s 6 --exit_deg 30 --drop_m 0 --drag_area_m2 0.5')),
  ).toMatchObject({ code: 'missing-field', field: 'mass_kg' });
  expect(refused(await asked(flight, 'flight --speed_m_s 3 --exit_deg 30 --drop_m -1'))).toMatchObject({
    code: 'no-solution',
    field: 'speed_m_s',
  });
  expect(refused(await asked(climb, 'climb --speed_m_s 6 --radius_m 3 --exit_deg 0'))).toMatchObject({
    code: 'out-of-range',
    field: 'exit_deg',
  });
  expect(refused(await asked(climb, 'climb --speed_m_s 2 --radius_m 3 --exit_deg 45'))).toMatchObject({
    code: 'no-solution',
    field: 'speed_m_s',
  });
  expect(
    refused(await asked(runIn, runIn.example.replace('--slope_deg 10', '--slope_deg 0.2'))),
  ).toMatchObject({ code: 'no-solution', field: 'slope_deg' });
});
