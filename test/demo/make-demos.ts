import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { createJournal } from '../../src/machine/journal-file.ts';
import { metricDemo, usDemo } from './builds.ts';
import type { Teller } from './tell.ts';

/** Writes the two invented demo builds, made by the program itself. Run from the project's root: npm run demos. */
const write = (name: string, build: string, told: Teller): void => {
  const path = join('sessions', 'demo', `${name}.jsonl`);
  rmSync(path, { force: true });
  const made = createJournal(
    path,
    { format: 'curvewright-build', build, created: told.entries[0]?.at ?? '' },
    told.entries,
  );
  if (!made.ok) throw new Error(made.fault.message);
  process.stdout.write(`${path}: ${told.entries.length} entries\n`);
};

mkdirSync(join('sessions', 'demo'), { recursive: true });
write('orchard-bank-kicker', '3f6c1d2e-77aa-4b0e-9d51-0c8e5b1f4a01', await metricDemo());
write('mill-lane-launch', '3f6c1d2e-77aa-4b0e-9d51-0c8e5b1f4a02', await usDemo());
