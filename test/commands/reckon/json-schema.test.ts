import { describe, expect, test } from 'vitest';
import * as z from 'zod';
import { topic as arc } from '../../../src/commands/reckon/arc.ts';
import { jsonSchema } from '../../../src/commands/reckon/json-schema.ts';
import { topic as layout } from '../../../src/commands/reckon/layout.ts';
import { topic as slits } from '../../../src/commands/reckon/slits.ts';
import type { Topic } from '../../../src/commands/reckon/topic.ts';

/** A general-purpose checker reads the schema, so that the test does not judge it by our own reading. */
const accepts = (topic: Topic, input: unknown): boolean =>
  z.fromJSONSchema(jsonSchema(topic) as Parameters<typeof z.fromJSONSchema>[0]).safeParse(input).success;

const table: Topic = {
  name: 'table',
  summary: 'every kind of field',
  example: 'table',
  fields: {
    ends_mm: { is: 'list', least: 1, most: 2, of: { is: 'tuple', of: [{ is: 'number' }, { is: 'number' }] } },
    joints: {
      is: 'list',
      of: { is: 'record', fields: { id: { is: 'text' }, held: { is: 'flag', optional: true } } },
    },
  },
  run: () => ({ ok: true, value: {} }),
};

describe('the schema of an input', () => {
  test.each([
    ['two numbers', arc, { height_mm: 700, run_mm: 1900 }],
    ['a text with a unit', arc, { height_mm: '2 ft 4 in', exit_deg: '40°' }],
    ['a choice and a list', layout, { radius_mm: 3000, exit_deg: 45, from: 'chord', at_mm: [0, '1 ft'] }],
    [
      'a whole count',
      slits,
      { hinge_radius_mm: 3056.5, turn_deg: 45, depth_mm: 40, wall_mm: 3, kerf_mm: 1.2, count: 30 },
    ],
    ['tuples and records', table, { ends_mm: [[0, '1 in']], joints: [{ id: 'a', held: true }, { id: 7 }] }],
  ])('takes %s', (_, topic, input) => {
    expect(accepts(topic, input)).toBe(true);
  });

  test.each([
    ['a field that is not there', arc, { height_mm: 700, width_mm: 3 }],
    ['a number out of range', arc, { height_mm: 0, run_mm: 1900 }],
    ['a wrong kind', arc, { height_mm: true, run_mm: 1900 }],
    ['a choice that is none', layout, { radius_mm: 3000, exit_deg: 45, from: 'lip', at_mm: [0] }],
    ['a missing field', layout, { radius_mm: 3000, exit_deg: 45, from: 'chord' }],
    ['an empty list', layout, { radius_mm: 3000, exit_deg: 45, from: 'chord', at_mm: [] }],
    [
      'half a slit',
      slits,
      { hinge_radius_mm: 3056.5, turn_deg: 45, depth_mm: 40, wall_mm: 3, kerf_mm: 1.2, count: 30.5 },
    ],
    [
      'a list too long',
      table,
      {
        ends_mm: [
          [0, 1],
          [0, 1],
          [0, 1],
        ],
        joints: [],
      },
    ],
    ['a record without its name', table, { ends_mm: [[0, 1]], joints: [{ held: true }] }],
  ])('turns away %s', (_, topic, input) => {
    expect(accepts(topic, input)).toBe(false);
  });

  test('says what each field is', () => {
    expect(jsonSchema(arc)).toMatchObject({
      $schema: 'http://json-schema.org/draft-07/schema#',
      properties: { exit_deg: { description: expect.stringContaining('slope at the lip: an angle') } },
    });
  });
});
