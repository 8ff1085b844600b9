import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { isDecided } from '../../src/coach/walk.ts';
import { read } from '../demo/builds.ts';
import { newFolder, openBench } from './program.ts';
import { entryCount, onDisk, walkUntil } from './walker.ts';

describe('a whole build in a real terminal at 80 by 24', () => {
  test('from the first question to the last tick, resized, killed in the middle, opened again', async () => {
    const folder = newFolder();
    let bench = openBench(folder);
    await bench.until(/the bench is empty/);
    bench.press('enter');
    await bench.until(/A name for the build/);
    bench.type('Walked kicker');
    bench.press('enter');
    await bench.until(/question 1 of/);
    const path = join(folder, 'walked-kicker.jsonl');

    // Every question with what is offered: Enter takes a lit choice, Tab the number.
    for (let i = 0; i < 40; i++) {
      const text = bench.text().join('\n');
      if (/all answered/.test(text)) break;
      bench.press(/typed/.test(text) ? 'tab' : 'enter');
      await bench.until(s => s !== text, 'the next question');
    }
    await bench.until(/agrees to this design/);
    bench.press('enter');
    await bench.until(/1 PLAN/);

    await walkUntil(bench, path, { read }, v => v.build.marks.length > 0);
    bench.resize(120, 40);
    await bench.until(s => s.split('\n').some(l => l.trimEnd().length > 100), 'the wide page');
    bench.resize(60, 15);
    await bench.until(/This window is 60 x 15/);
    bench.resize(80, 24);
    await bench.until(/\d (CUT|TACK)/);

    // A power cut: everything entered is on disk.
    await walkUntil(bench, path, { read }, v => v.build.surveys.length > 0);
    const saved = entryCount(path);
    bench.kill('SIGKILL');
    await bench.exit;
    expect(entryCount(path)).toBe(saved);
    expect(readdirSync(folder)).toContain('walked-kicker.jsonl.lock');
    bench = openBench(folder);
    await bench.until(/Walked kicker/);
    expect((await onDisk(path)).build.all.length).toBe(saved - 1);
    if ((await onDisk(path)).build.surveys.some(s => !s.closed)) {
      // The reading goes on at the first station not read.
      bench.press('0');
      await bench.until(/TACK/);
      bench.press('enter');
      await bench.until(/kept, \d+ to go/);
    }

    await walkUntil(bench, path, { read }, () => false);
    const end = await onDisk(path);
    expect(end.next).toBeNull();
    const undone = end.steps.filter(s => !['done', 'skipped'].includes(s.state));
    expect(undone.map(s => `${s.key} ${s.state}`)).toEqual([]);
    expect(end.findings.filter(f => f.severity === 'stop' && !isDecided(end.build, f))).toEqual([]);
    bench.press('q');
    expect(await bench.exit).toBe(0);
    expect(bench.text().join('\n')).toContain('entries on disk');
  });
});
