import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { tour, withTour } from './tour.ts';

test("README's screens are what the program shows: npm run tour makes them anew", async () => {
  const readme = readFileSync(join(import.meta.dirname, '../../README.md'), 'utf8');
  expect(withTour(readme, await tour())).toBe(readme);
});
