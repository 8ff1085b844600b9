import { createHash } from 'node:crypto';
import fs from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { writeHeader, writeLine } from '../../src/build/journal-line.ts';
import { live } from '../../src/build/order.ts';
import { understandEntry } from '../../src/build/versions/understand.ts';
import { openJournal } from '../../src/machine/journal-file.ts';

/**
 * A journal of every version that ever landed. A sample is never changed, only added to the list: when one of these fails,
 * builds of people out there would no longer open, and the remedy is a version step, not a new sample.
 */
const path = fileURLToPath(new URL('./build.1.jsonl', import.meta.url));

describe('a build kept from version 1', () => {
  test('is the file that was kept, to the byte', () => {
    expect(createHash('sha256').update(fs.readFileSync(path)).digest('hex')).toBe('b60122a7ac5cab45bb61b0e7ebed013c0ab42772875964759e79a632cb39b091');
  });

  test('still opens whole and writable', () => {
    const opened = openJournal(path, { format: 'curvewright-build', understand: understandEntry });
    if (!opened.ok) throw new Error(opened.fault.message);
    const reading = opened.value.reading();
    expect(reading).toMatchObject({ setAside: [], readOnly: null, endsTorn: false, header: { version: 1 } });
    expect(reading.entries.map(e => e.kind)).toEqual([
      'build-begun',
      'design-set',
      'design-set',
      'design-set',
      'step-ticked',
      'remarked',
      'remarked',
      'entry-struck',
      'stopped',
    ]);
    expect(live(reading.entries)).toMatchObject([
      { kind: 'build-begun', name: 'Kept sample kicker', system: 'metric' },
      { kind: 'design-set', field: 'width', value: 1180 },
      { kind: 'design-set', field: 'shape', value: { height: 900, radius: 2400 } },
      { kind: 'step-ticked', step: 'cut/cut-rail@A', basis: { 'rail-length': 2417.5 } },
      { kind: 'remarked', text: 'Größe 63 ½ in — “cold” evening' },
      { kind: 'stopped' },
    ]);
  });

  test('is still written in the same way', () => {
    const opened = openJournal(path, { format: 'curvewright-build', understand: understandEntry });
    if (!opened.ok) throw new Error(opened.fault.message);
    const { header, stored } = opened.value.reading();
    const again = [writeHeader(header!), ...stored.map(writeLine)].map(line => `${line}\n`).join('');
    expect(again).toBe(fs.readFileSync(path, 'utf8'));
  });
});
