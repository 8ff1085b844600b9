import { describe, expect, test } from 'vitest';
import type { Doing } from '../../../src/build/entries.ts';
import { viewOf } from '../../../src/coach/view.ts';
import { rowText, rowWidth } from '../../../src/drawing/cells.ts';
import { slitStripRows } from '../../../src/screen/pages/slit-strip-rows.ts';
import { begun, set } from '../../stages/doings.ts';
import { entriesOf, NOW } from '../../stages/situation-for.ts';
import { WORDS } from '../../stages/word-gaps.ts';

const strip = (system: 'metric' | 'us', ...doings: Doing[]) => {
  const view = viewOf(entriesOf([begun(system), ...doings]), NOW);
  const rows = slitStripRows({
    view,
    voice: { content: WORDS, system },
    look: { columns: 80, rows: 24, ascii: false },
    disk: { is: 'on disk', at: null },
    message: null,
  });
  return { view, rows, text: rows.map(rowText).join('\n') };
};

/** A length as it is printed: 78.5 mm, 3 5/32 in. */
const read = (text: string): number =>
  text
    .replace(/ (mm|in)$/, '')
    .split(' ')
    .reduce((sum, part) => {
      const [over = 0, under = 1] = part.split('/').map(Number);
      return sum + over / under;
    }, 0);

describe.each(['metric', 'us'] as const)('the strip of marks as it is printed, %s', system => {
  const { view, rows, text } = strip(system);

  test('one slit a row, none broken, every mark filled', () => {
    const slits = [...view.ramp.plans.values()].reduce((n, plan) => n + plan.slits.length, 0);
    expect(rows.filter(r => /^ +\d+ +\d.*°/.test(rowText(r)))).toHaveLength(slits);
    expect(Math.max(...rows.map(rowWidth))).toBeLessThanOrEqual(80);
    expect(text).not.toMatch(/says\.|\{|NaN|undefined/);
    expect(text).toMatch(/rail A LEFT[\s\S]*rail B RIGHT/);
  });

  test('its check adds up to the blank on paper', () => {
    const figure = String.raw`([\d./ ]+ (?:mm|in))`;
    const check = new RegExp(
      `Check: entry to slit 1 ${figure}, slit 1 to \\d+ ${figure}, slit \\d+ to the lip mark ${figure}, past it to trim ${figure}: blank ${figure}\\.`,
    ).exec(text.replaceAll(/\s+/g, ' '));
    const [first = 0, span = 0, lip = 0, trim = 0, blank = 0] = (check ?? []).slice(1).map(read);
    expect(first + span + lip + trim).toBeCloseTo(blank, 9);
    expect(blank).toBeGreaterThan(10);
  });
});

test('a disc is never sent down through the tube; a band saw is', () => {
  const tool = (kind: string) =>
    strip('metric', set('cutter', { kind, kerf_mm: 1.2 })).text.replaceAll(/\s+/g, ' ');
  expect(tool('thin disc')).toContain('the top through its wall alone');
  expect(tool('thin disc')).not.toContain('the saw goes down');
  expect(tool('band saw')).toContain('From the slit face the saw goes down 34 mm');
});
