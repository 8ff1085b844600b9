/** Writes entries until the system takes no more (the caller set a limit on the size of files), then says what it knows. */
import fs from 'node:fs';
import { openJournal } from '../../../src/machine/journal-file.ts';
import { act, take } from '../journals.ts';

const [path = ''] = process.argv.slice(2);
const opened = openJournal(path, take);
if (!opened.ok) process.exit(1);
const onDisk: string[] = [];
for (let n = 1; n < 10_000; n++) {
  const done = opened.value.append(act(`e${n}`, n, { text: 'x'.repeat(1000) }));
  if (!done.ok) {
    const size = fs.statSync(path).size;
    fs.writeSync(
      1,
      JSON.stringify({ onDisk, fault: done.fault, waiting: opened.value.waiting().length, size }),
    );
    process.exit(0);
  }
  onDisk.push(`e${n}`);
}
process.exit(3);
