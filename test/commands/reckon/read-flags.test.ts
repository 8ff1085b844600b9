import { expect, test } from 'vitest';
import { readFlags } from '../../../src/commands/reckon/read-flags.ts';

const entries = (args: readonly string[]) => readFlags(args).fields.entries;

test('a value follows its flag or stands behind an equals sign', () => {
  const read = readFlags(['arc', '--height_mm', '700', '--run_mm=4 ft 6 1/2 in']);
  expect(read.topic).toBe('arc');
  expect(read.fields.entries).toEqual([
    ['height_mm', { text: '700' }],
    ['run_mm', { text: '4 ft 6 1/2 in' }],
  ]);
});

test('a value may be negative or hold an equals sign', () => {
  expect(entries(['x', '--pull_deg', '-0.2', '--name=a=b'])).toEqual([
    ['pull_deg', { text: '-0.2' }],
    ['name', { text: 'a=b' }],
  ]);
});

test('a flag before another flag has no value, and an empty one is kept', () => {
  expect(entries(['arc', '--run_mm', '--height_mm='])).toEqual([
    ['run_mm', { text: undefined }],
    ['height_mm', { text: '' }],
  ]);
});

test('doubles and stray words are kept, to be refused in their order', () => {
  expect(entries(['arc', '--run_mm', '1', '--run_mm', '2', '3000'])).toEqual([
    ['run_mm', { text: '1' }],
    ['run_mm', { text: '2' }],
    ['3000', { text: undefined }],
  ]);
});

test('the flags of the command itself stand anywhere', () => {
  const read = readFlags(['--json', 'arc', '--in', '-', '--schema', '-h']);
  expect(read).toMatchObject({ topic: 'arc', json: true, schema: true, help: true, files: ['-'] });
  expect(readFlags(['arc', '--in=a.json', '--in']).files).toEqual(['a.json', undefined]);
});
