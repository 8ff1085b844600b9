import { expect, test } from 'vitest';
import { crashMessage } from '../../../src/screen/terminal/crash-message.ts';

test('a crash says whose fault it is, where the data is, and the first lines of the trace', () => {
  const error = new Error('no such rail');
  error.stack = [
    'Error: no such rail',
    ...Array.from({ length: 30 }, (_, line) => `    at place ${line}`),
  ].join('\n');
  const said = crashMessage(error, 'Your build is on disk.');
  expect(said).toContain('not of your work');
  expect(said).toContain('Your build is on disk.');
  expect(said).toContain('Error: no such rail');
  expect(said).not.toContain('place 20');
  expect(said.endsWith('\n')).toBe(true);
});

test('what was thrown need not be an error, and cannot steer the terminal', () => {
  expect(crashMessage('odd\u001B[2J', 'On disk.')).toContain('odd [2J');
  expect(crashMessage(undefined, 'On disk.')).toContain('undefined');
});
