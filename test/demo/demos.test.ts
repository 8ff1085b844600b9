import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/build/entries.ts';
import { understandEntry } from '../../src/build/versions/understand.ts';
import { viewOf } from '../../src/coach/view.ts';
import { openJournal } from '../../src/machine/journal-file.ts';
import { metricDemo, usDemo } from './builds.ts';

const FOLDER = join(import.meta.dirname, '../../sessions/demo');

const kept = (name: string) => {
  const file = openJournal<Entry>(join(FOLDER, `${name}.jsonl`), {
    format: 'curvewright-build',
    understand: understandEntry,
  });
  if (!file.ok) throw new Error(file.fault.message);
  return file.value.reading();
};

describe('the demo builds', () => {
  test.each([
    ['orchard-bank-kicker', metricDemo],
    ['mill-lane-launch', usDemo],
  ])('%s is what the program makes: npm run demos makes it anew', async (name, make) => {
    const told = await make();
    const reading = kept(name);
    expect(reading.setAside).toEqual([]);
    expect(reading.entries).toEqual(told.entries);
  });

  test('both say that they are invented', () => {
    for (const name of ['orchard-bank-kicker', 'mill-lane-launch']) {
      expect(viewOf(kept(name).entries, 0).build.invented).toBe(true);
      expect(readFileSync(join(FOLDER, `${name}.jsonl`), 'utf8')).toContain('"invented":true');
    }
  });

  test('the metric one has rail A welded and read cold, rail B tacked, read, and not yet decided on', () => {
    const { build } = viewOf(kept('orchard-bank-kicker').entries, 0);
    const closed = (rail: string) =>
      build.surveys.filter(s => s.rail === rail && s.kind === 'curve' && s.closed).map(s => s.phase);
    expect(closed('A')).toContain('cold');
    expect(closed('B')).toEqual(['tacked']);
    expect(build.chosen.filter(c => c.plan.rail === 'B')).toEqual([]);
  });
});
