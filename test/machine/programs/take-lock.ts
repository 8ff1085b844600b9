/** Says it is ready, waits to be told, tries for a lock, says how it went, and keeps what it got until it is told to end. */
import fs from 'node:fs';
import { takeLock } from '../../../src/machine/lock.ts';

const [path = ''] = process.argv.slice(2);
const waitForWord = (): void => void fs.readSync(0, Buffer.alloc(1));

fs.writeSync(1, 'ready\n');
waitForWord();
const taken = takeLock(path, { now: new Date() });
fs.writeSync(1, taken.ok ? 'won\n' : `${taken.fault.code}\n`);
waitForWord();
fs.writeSync(1, taken.ok ? `${taken.value.lock.holds() ? 'kept' : 'lost'}\n` : 'none\n');
if (taken.ok) taken.value.lock.release();
