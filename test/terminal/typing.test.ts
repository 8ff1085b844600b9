import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { newFolder, openBench } from './program.ts';

test.each([
  ['in one chunk', (type: (text: string) => void, text: string) => type(text)],
  // Each by itself, and none waits for the page to show the one before it.
  ['faster than the page is drawn', (type: (text: string) => void, text: string) => [...text].forEach(type)],
])('a name typed %s keeps every letter', async (_, how) => {
  const folder = newFolder();
  const bench = openBench(folder);
  await bench.until(/the bench is empty/);
  bench.press('enter');
  await bench.until(/A name for the build/);
  how(bench.type, 'Long kicker behind the barn');
  await bench.until(/A name for the build: Long kicker behind the barn/);
  // A slip in the middle: back to it, taken off, typed again.
  bench.press('left', 'left', 'left', 'left', 'back', 'home', 'end', '!');
  await bench.until(/A name for the build: Long kicker behind thebarn!/);
  bench.press('enter');
  await bench.until(/question 1 of/);
  expect(existsSync(join(folder, 'long-kicker-behind-thebarn.jsonl'))).toBe(true);
  bench.press('q');
  expect(await bench.exit).toBe(0);
});
