/** Writes entries into a build for ever, and says the id of each only when it is on disk. */
import fs from 'node:fs';
import { openBuild } from '../../../src/machine/open-build.ts';
import { act, understand } from '../journals.ts';

const [path = '', first = '1'] = process.argv.slice(2);
const opened = openBuild(path, { understand, now: () => new Date() });
if (!opened.ok || opened.value.barred() !== null) process.exit(1);
for (let n = Number(first); ; n++) {
  const entry = act(`e${n}`, n, { text: 'slit '.repeat(n % 400) });
  if (!opened.value.journal.append(entry).ok) process.exit(2);
  fs.writeSync(1, `${entry.id}\n`);
}
