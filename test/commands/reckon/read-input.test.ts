import { describe, expect, test } from 'vitest';
import { readFlags } from '../../../src/commands/reckon/read-flags.ts';
import { readInput } from '../../../src/commands/reckon/read-input.ts';
import { readJson } from '../../../src/commands/reckon/read-json.ts';
import type { FieldSpecs } from '../../../src/commands/reckon/topic.ts';

const FIELDS: FieldSpecs = {
  radius_mm: { is: 'number', above: 0 },
  exit_deg: { is: 'number', above: 0, atMost: 120 },
  count: { is: 'number', whole: true, atLeast: 1, optional: true },
  ratio: { is: 'number', atLeast: -1, below: 1, optional: true },
  from: { is: 'choice', of: ['chord', 'tangent'], optional: true },
  note: { is: 'text', optional: true },
  held: { is: 'flag', optional: true },
  at_mm: { is: 'list', of: { is: 'number' }, least: 1, most: 4, optional: true },
  points_mm: { is: 'list', of: { is: 'tuple', of: [{ is: 'number' }, { is: 'number' }] }, optional: true },
  pieces: {
    is: 'list',
    optional: true,
    of: {
      is: 'record',
      fields: {
        name: { is: 'text', optional: true },
        length_mm: { is: 'number', above: 0 },
        count: { is: 'number', whole: true, atLeast: 1 },
      },
    },
  },
};

const json = (text: string) => {
  const raw = readJson(text);
  return raw.ok ? readInput(FIELDS, raw.value) : raw;
};

const flags = (...args: string[]) => readInput(FIELDS, readFlags(['topic', ...args]).fields);

const faultOf = (outcome: ReturnType<typeof json>) => {
  if (outcome.ok) throw new Error(`was not refused: ${JSON.stringify(outcome.value)}`);
  return [outcome.fault.code, outcome.fault.field];
};

const BASE = '"radius_mm": 3000, "exit_deg": 45';

describe('good input', () => {
  test('gives numbers in the unit each field names', () => {
    expect(json('{"radius_mm": "9 ft 10 in", "exit_deg": 45, "count": "26"}')).toEqual({
      ok: true,
      value: { radius_mm: 2997.2, exit_deg: 45, count: 26 },
    });
  });

  test('reads lists, tuples and records in the unit of the nearest field above', () => {
    expect(
      json(
        `{${BASE}, "points_mm": [[0, "1 in"], [2, 3]], "pieces": [{"length_mm": "1.2 m", "count": 2, "name": "leg"}]}`,
      ),
    ).toMatchObject({
      value: {
        points_mm: [
          [0, 25.4],
          [2, 3],
        ],
        pieces: [{ length_mm: 1200, count: 2, name: 'leg' }],
      },
    });
  });

  test('keeps the order it was given in', () => {
    const read = json('{"exit_deg": 45, "radius_mm": 3000}');
    expect(read.ok && Object.keys(read.value)).toEqual(['exit_deg', 'radius_mm']);
  });

  test('comes from flags as well, lists with commas or as JSON', () => {
    const base = ['--radius_mm=10 ft', '--exit_deg', '45'];
    expect(flags(...base, '--at_mm', '0, -287,1 in', '--held')).toMatchObject({
      value: { radius_mm: 3048, at_mm: [0, -287, 25.4], held: true },
    });
    expect(flags(...base, '--at_mm', '[1, "2 in"]', '--held=false')).toMatchObject({
      value: { at_mm: [1, 50.8], held: false },
    });
    expect(flags(...base, '--pieces', '[{"length_mm": 500, "count": 4}]')).toMatchObject({
      value: { pieces: [{ length_mm: 500, count: 4 }] },
    });
    expect(flags(...base, '--at_mm', '300')).toMatchObject({ value: { at_mm: [300] } });
  });

  test('takes a number where a name is wanted', () => {
    expect(json(`{${BASE}, "note": 7}`)).toMatchObject({ value: { note: '7' } });
  });
});

describe('a fault is told with its code and its path', () => {
  test.each([
    ['an unknown field', `{${BASE}, "lenght_mm": 3}`, ['unknown-field', 'lenght_mm']],
    ['a name that every object carries', `{${BASE}, "constructor": 3}`, ['unknown-field', 'constructor']],
    ['the name of the prototype', `{${BASE}, "__proto__": {"count": 1}}`, ['unknown-field', '__proto__']],
    [
      'an unknown field in a list',
      `{${BASE}, "pieces": [{"length_mm": 1, "count": 1, "kind": 2}]}`,
      ['unknown-field', 'pieces.0.kind'],
    ],
    ['a missing field', '{"radius_mm": 3000}', ['missing-field', 'exit_deg']],
    [
      'a missing field in a list',
      `{${BASE}, "pieces": [{"length_mm": 1, "count": 1}, {"count": 2}]}`,
      ['missing-field', 'pieces.1.length_mm'],
    ],
    ['a text that is no number', `{${BASE}, "count": "many"}`, ['not-a-number', 'count']],
    ['the text NaN', '{"radius_mm": "NaN", "exit_deg": 45}', ['not-a-number', 'radius_mm']],
    ['NaN bare', '{"radius_mm": NaN, "exit_deg": 45}', ['not-a-number', 'radius_mm']],
    ['the text Infinity', '{"radius_mm": "Infinity", "exit_deg": 45}', ['not-a-number', 'radius_mm']],
    ['a number past all numbers', '{"radius_mm": 1e999, "exit_deg": 45}', ['out-of-range', 'radius_mm']],
    ['a number past all frames', '{"radius_mm": 1e200, "exit_deg": 45}', ['out-of-range', 'radius_mm']],
    ['an empty text', '{"radius_mm": "", "exit_deg": 45}', ['not-a-number', 'radius_mm']],
    ['nothing', '{"radius_mm": null, "exit_deg": 45}', ['not-a-number', 'radius_mm']],
    ['true', '{"radius_mm": true, "exit_deg": 45}', ['not-a-number', 'radius_mm']],
    ['a list for a number', '{"radius_mm": [3], "exit_deg": 45}', ['not-a-number', 'radius_mm']],
    ['a unit of another kind', '{"radius_mm": "3 kg", "exit_deg": 45}', ['wrong-unit', 'radius_mm']],
    ['a length for an angle', '{"radius_mm": 3, "exit_deg": "45 mm"}', ['wrong-unit', 'exit_deg']],
    [
      'a number on a limit that is left out',
      '{"radius_mm": 0, "exit_deg": 45}',
      ['out-of-range', 'radius_mm'],
    ],
    [
      'a number past a limit that is let in',
      '{"radius_mm": 1, "exit_deg": 120.0001}',
      ['out-of-range', 'exit_deg'],
    ],
    ['half a slit', `{${BASE}, "count": 2.5}`, ['out-of-range', 'count']],
    ['half a slit as text', `{${BASE}, "count": "2.5"}`, ['out-of-range', 'count']],
    ['a ratio at its upper end', `{${BASE}, "ratio": 1}`, ['out-of-range', 'ratio']],
    ['a choice that is none', `{${BASE}, "from": "cord"}`, ['out-of-range', 'from']],
    ['a list for a text', `{${BASE}, "note": []}`, ['out-of-range', 'note']],
    ['a word for yes or no', `{${BASE}, "held": "yes"}`, ['out-of-range', 'held']],
    ['a number for a list', `{${BASE}, "at_mm": 3}`, ['out-of-range', 'at_mm']],
    ['an empty list', `{${BASE}, "at_mm": []}`, ['out-of-range', 'at_mm']],
    ['a list too long', `{${BASE}, "at_mm": [1,2,3,4,5]}`, ['too-large', 'at_mm']],
    ['a fault in a list', `{${BASE}, "at_mm": [1,"x",3]}`, ['not-a-number', 'at_mm.1']],
    ['a point with one number', `{${BASE}, "points_mm": [[1, 2], [3]]}`, ['missing-field', 'points_mm.1.1']],
    ['a point with three numbers', `{${BASE}, "points_mm": [[1, 2, 3]]}`, ['too-many-values', 'points_mm.0']],
    ['a record that is none', `{${BASE}, "pieces": [5]}`, ['out-of-range', 'pieces.0']],
    [
      'a field given twice',
      `{"radius_mm": 1, "radius_mm": 2, "exit_deg": 45}`,
      ['too-many-values', 'radius_mm'],
    ],
    ['a list instead of an object', '[1, 2]', ['missing-field', null]],
  ])('%s', (_, text, expected) => {
    expect(faultOf(json(text))).toEqual(expected);
  });

  test.each([
    [
      'a field given twice',
      ['--radius_mm', '1', '--radius_mm=2', '--exit_deg=4'],
      ['too-many-values', 'radius_mm'],
    ],
    ['a flag without its value', ['--radius_mm', '--exit_deg', '4'], ['missing-field', 'radius_mm']],
    ['a stray word', ['--radius_mm', '1', '--exit_deg', '4', '7'], ['unknown-field', '7']],
    ['dashes for underscores', ['--radius-mm', '1'], ['unknown-field', 'radius-mm']],
    ['JSON that is none', ['--pieces', '{"length_mm": }'], ['missing-field', 'pieces']],
    ['commas where records are wanted', ['--pieces', '500,600'], ['out-of-range', 'pieces.0']],
    ['an empty value', ['--radius_mm='], ['not-a-number', 'radius_mm']],
  ])('%s on the command line', (_, args, expected) => {
    expect(faultOf(flags(...args))).toEqual(expected);
  });

  test('the first in the order of the input, before what is missing', () => {
    expect(faultOf(json('{"5": 1, "radius_mm": -3}'))).toEqual(['unknown-field', '5']);
    expect(faultOf(json('{"radius_mm": -3, "5": 1}'))).toEqual(['out-of-range', 'radius_mm']);
    expect(faultOf(json('{"exit_deg": 500, "radius_mm": -3}'))).toEqual(['out-of-range', 'exit_deg']);
    expect(faultOf(json('{"exit_deg": 4, "pieces": [{"count": 0}], "bogus": 1}'))).toEqual([
      'out-of-range',
      'pieces.0.count',
    ]);
    expect(faultOf(flags('--exit_deg', 'steep', '--bogus', '1'))).toEqual(['not-a-number', 'exit_deg']);
  });

  test('a near name is offered, and what would do is said', () => {
    const unknown = json(`{${BASE}, "pieces": [{"lenght_mm": 3}]}`);
    expect(!unknown.ok && unknown.fault.message).toBe(
      'There is no field pieces.0.lenght_mm. Did you mean length_mm?',
    );
    const range = json('{"radius_mm": 3, "exit_deg": 130}');
    expect(!range.ok && range.fault).toMatchObject({
      message: 'exit_deg cannot be 130.',
      accepted: expect.stringContaining('above 0°, at most 120°'),
    });
  });
});
