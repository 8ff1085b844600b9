import { expect, test } from 'vitest';
import { holdConsole } from '../../../src/screen/terminal/held-console.ts';

test('what libraries write to the console is held back and given out afterwards', () => {
  const before = console.warn;
  const release = holdConsole();
  console.warn('a library', { toString: () => 'warns' });
  console.error(new Error('and fails'));
  expect(release()).toEqual(['a library warns', 'and fails']);
  expect(console.warn).toBe(before);
  expect(release()).toEqual([]);
});

test('a library that repeats itself fills no memory', () => {
  const release = holdConsole();
  for (let count = 0; count < 1000; count += 1) console.log(`line ${count}`);
  const held = release();
  expect(held.length).toBeLessThan(100);
  expect(held.at(-1)).toBe('line 999');
});
