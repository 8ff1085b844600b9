import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { newFolder, openBench } from './program.ts';
import type { RealTerminal } from './real-terminal.ts';
import { entryCount, onDisk } from './walker.ts';

/** The metric demo, laid aside in September, opened today. */
const openedLate = async (): Promise<{ bench: RealTerminal; path: string }> => {
  const folder = newFolder();
  const bench = openBench(folder);
  await bench.until(/the bench is empty/);
  bench.press('d', 'enter');
  await bench.until(/days away/);
  return { bench, path: join(folder, readdirSync(folder).find(f => f.endsWith('.jsonl')) ?? '') };
};

const kept = async (bench: RealTerminal, path: string, act: () => void): Promise<void> => {
  const before = entryCount(path);
  act();
  await bench.until(() => entryCount(path) > before, 'an entry more');
};

/** Types the three stations of the rail that the page asks for, each `by` mm from what it read before the pause. */
const readThree = async (bench: RealTerminal, path: string, by: readonly number[]): Promise<string> => {
  const next = (await onDisk(path)).next;
  const asks = next?.asks ?? [];
  expect(asks.map(a => a.ask)).toEqual(['entry', 'middle', 'lip']);
  bench.press('enter');
  for (const [k, ask] of asks.entries()) {
    await bench.until(/ typed {2}_/);
    const [low = 0, high = 0] = ask.expected ?? [];
    const before = entryCount(path);
    bench.type(`${(low + high) / 2 + (by[k] ?? 0)} mm`);
    bench.press('enter');
    // A number that is far from the last is asked for once more.
    await bench.until(
      s => entryCount(path) > before || s.includes('Enter again'),
      'kept, or asked once more',
    );
    if (entryCount(path) === before) await kept(bench, path, () => bench.press('enter'));
  }
  await bench.until(s => !/^ typed /m.test(s), 'the page after the three');
  return next?.key ?? '';
};

test('weeks away: both rails are measured again before anything goes on, the rest looked at or left with a reason', async () => {
  const { bench, path } = await openedLate();
  await bench.until(/look at these before you go on/);
  await bench.until(/measure {2}Rail A after \d+ days: read three stations/);
  await bench.until(/measure {2}Rail B after \d+ days: read three stations/);
  await bench.until(/look {5}Bright metal at the slits of rail B/);
  bench.press('enter');
  await bench.until(/MEASURE {2}Rail A after/);

  // Rail A lies as it did: three numbers, and nothing is said.
  await readThree(bench, path, [0, 0, 0]);
  await bench.until(/MEASURE {2}Rail B after/);

  // The steps of rail B wait, and say for what; every page can be read.
  bench.press('5');
  await bench.until(/5 WELD/);
  bench.press('4');
  await bench.until(/4 TACK/);
  const waiting = (await onDisk(path)).steps.filter(s => s.waitsFor.some(k => k.includes('pause-offsets@B')));
  expect(waiting.map(s => s.key)).toContain('tack/sideways@B');
  bench.press('0');
  await bench.until(/MEASURE {2}Rail B after/);

  // Or a reason is given.
  bench.press('s');
  await bench.until(/Why\?/);
  await kept(bench, path, () => {
    bench.type('it never left the jig');
    bench.press('enter');
  });
  await bench.until(/Bright metal at the slits of rail B/);
  const skipped = (await onDisk(path)).build.skips;
  expect([...skipped].filter(([k]) => k.includes('pause-offsets@B')).map(([, v]) => v.why)).toEqual([
    'it never left the jig',
  ]);

  // One key for the bright metal, one for each thing of the welding set; then the pause is over and gone from the walk.
  await kept(bench, path, () => bench.press('space'));
  await bench.until(/NEXT {2}Look the welding set over/);
  // Solid wire, so the gas is looked at too.
  for (const thing of ['gas', 'wire', 'lens', 'leads']) {
    await bench.until(new RegExp(`▸ next {3}look at ${thing}`));
    await kept(bench, path, () => bench.press('space'));
  }
  await bench.until(s => !s.includes('NEXT  Look the welding set over'), 'the step after the pause');
  const over = await onDisk(path);
  expect(over.steps.filter(s => s.key.includes('/pause-'))).toEqual([]);
  expect(over.next).not.toBeNull();
  expect(over.steps.find(s => s.key === 'tack/sideways@B')?.state).toBe('to do');

  // The journal keeps it in words.
  bench.press('j');
  await bench.until(/skipped: Rail B after \d+ days/);
  bench.press('q');
  expect(await bench.exit).toBe(0);
});

test('a rail that was bent while it was laid aside is found out, and nothing of it goes on until that is decided', async () => {
  const { bench, path } = await openedLate();
  bench.press('enter');
  await bench.until(/MEASURE {2}Rail A after/);
  const key = await readThree(bench, path, [0, 8, 0]);
  const found = (await onDisk(path)).findings.find(f => f.key.startsWith(`pause-moved@${key}`));
  expect(found).toMatchObject({ severity: 'fix', words: 'pause-rail-bent', worst_mm: 8 });
  bench.press('f');
  await bench.until(/Rail A bent by 8 mm since it was laid aside/);
  // The slit of rail B, found before the pause, stands above it.
  bench.press('down', 'enter');
  await bench.until(/what you can do/);
  await bench.until(/Read again, stations/);
  await bench.until(/Lay it anew, read three again/);
  await bench.until(/Go on by the survey as it stands/);
  await kept(bench, path, () => bench.press('down', 'enter'));
  // Laid again: the three are asked once more.
  const again = await onDisk(path);
  expect(again.next?.key).toBe(key);
  expect(again.findings.some(f => f.key.startsWith('pause-moved'))).toBe(false);
  bench.press('q');
  expect(await bench.exit).toBe(0);
});
