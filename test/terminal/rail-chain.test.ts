import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { offset, read } from '../demo/builds.ts';
import type { Hand } from '../walk/hand.ts';
import { newFolder, openBench, run } from './program.ts';
import { onDisk, walkUntil } from './walker.ts';

test('rail B of the metric demo: found wrong, a remedy chosen, its steps done, measured true, uprights cut to it, spring-back said before a clamp comes off', async () => {
  const folder = newFolder();
  const bench = openBench(folder);
  await bench.until(/the bench is empty/);
  // d lights the demo with most in it.
  bench.press('d', 'enter');
  await bench.until(/days away/);
  const file = readdirSync(folder).find(f => f.endsWith('.jsonl')) ?? '';
  const path = join(folder, file);
  bench.press('enter');
  await bench.until(s => !/days away/.test(s), 'the page after the pause');

  // What is wrong with rail B, in words.
  bench.press('f');
  await bench.until(/findings: \d+ open/);
  await bench.until(/Slit 5 of rail B is closed too far/);
  bench.press('esc');

  const before = await onDisk(path);
  const found = before.findings.find(f => f.key.startsWith('rail-off@B'));
  expect(found?.worst_mm).toBeGreaterThan(4);
  const recut = found?.offers.find(o => o.remedy === 're-cut');
  expect(recut?.after?.within).toBe(true);
  const uprights = (view: typeof before) =>
    view.ramp.members.filter(m => m.rail === 'B' && m.kind === 'upright').map(m => m.long_mm);

  // The re-cut is chosen where it is offered; once re-cut, rail B lies on its line.
  const hand: Hand = {
    // Rail B is pulled 3 mm onto its line by the clamps before its uprights go in.
    read: (view, step, ask) => (step.key === 'brace/forced@B' ? 3 : read(view, step, ask)),
    choose: (_view, f) =>
      f.offers.some(o => o.remedy === 're-cut') ? 're-cut' : (f.offers[0]?.remedy ?? 'leave'),
    offset: (view, step, station, index) => {
      const done = view.build.chosen.some(c => c.remedy === 're-cut' && c.plan.rail === 'B');
      if (!done) return offset(view, step, station, index);
      // Welded, it has curled in a little more than planned: 3 mm at the lip, within what a first build may be off.
      return step.survey?.phase === 'cold' ? Math.round(6 * (station / 1650) ** 2) / 2 : 0;
    },
  };
  await walkUntil(bench, path, hand, v =>
    v.build.chosen.some(c => c.remedy === 're-cut' && c.plan.rail === 'B'),
  );
  const chosen = await onDisk(path);
  const steps = chosen.steps.filter(s => s.key.includes('re-cut@'));
  expect(steps.length).toBeGreaterThan(0);
  expect(steps[0]?.stage).toBe('tack');

  await walkUntil(bench, path, hand, v =>
    v.build.surveys.some(
      s => s.rail === 'B' && s.phase === 'tacked' && s.kind === 'curve' && s.closed && !s.retired,
    ),
  );
  const again = await onDisk(path);
  expect(again.findings.filter(f => f.key.startsWith('rail-off@B') && f.severity !== 'watch')).toEqual([]);
  expect(uprights(again)).not.toEqual(uprights(before));

  await walkUntil(bench, path, hand, v => v.next?.key.startsWith('brace/clamps@B') === true);
  const brace = JSON.parse(
    (await run(folder, ['sheet', 'brace', '--build', file.replace('.jsonl', ''), '--json'])).out,
  );
  const spring = brace.figures.find((f: { id: string }) => f.id === 'springs-back@B');
  // Some of the 3 mm comes back, less than all of it.
  expect(spring?.value.v).toBeGreaterThan(0);
  expect(spring?.value.v).toBeLessThan(3);
  bench.press('q');
  expect(await bench.exit).toBe(0);
});
