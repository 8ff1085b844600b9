import { describe, expect, test } from 'vitest';
import type { Doing } from '../../../src/build/entries.ts';
import { viewOf } from '../../../src/coach/view.ts';
import { rowText } from '../../../src/drawing/cells.ts';
import type { PageContext } from '../../../src/screen/pages/context.ts';
import { entryText } from '../../../src/screen/pages/journal-page.ts';
import { figureValue } from '../../../src/screen/pages/look-pages.ts';
import { changeRows } from '../../../src/screen/pages/step-rows.ts';
import { begun, read, tick } from '../../stages/doings.ts';
import { entriesOf, NOW } from '../../stages/situation-for.ts';
import { WORDS } from '../../stages/word-gaps.ts';

const machine = (kind: number): Doing[] => [
  read('weld/machine', 'kind', kind),
  read('weld/machine', 'wire', 0.9),
  read('weld/machine', 'most', 180),
  read('weld/machine', 'mains', 230),
];

const contextOf = (doings: readonly Doing[]): PageContext => ({
  view: viewOf(entriesOf(doings), NOW),
  voice: { content: WORDS, system: 'metric' },
  look: { columns: 80, rows: 24, ascii: false },
  disk: { is: 'on disk', at: null },
  message: null,
});

describe('an answer that stands for no measure is told in its words', () => {
  test('a test piece whose round is over: what it showed, not its number', () => {
    const c = contextOf([
      begun(),
      ...machine(1),
      read('weld/coupons', 'tee', 1),
      read('weld/coupons', 'slit', 1),
      read('weld/coupons', 'sawn', 3),
    ]);
    // The round is over: a later one asks again for what did not hold.
    expect(c.view.steps.some(s => s.key === 'weld/coupons')).toBe(false);
    const texts = c.view.build.live.flatMap(e =>
      e.kind === 'reading-logged' && e.step === 'weld/coupons' ? [entryText(c, e)] : [],
    );
    expect(texts.map(t => t.value)).toEqual([
      'bent whole, or the steel itself tore',
      'bent whole, or the steel itself tore',
      'a hole, or sagged through',
    ]);
    expect(texts[2]?.deed).toBe('sawn across, filed, looked at');
  });

  test('a bottle that the welder told since has none of', () => {
    const c = contextOf([begun(), ...machine(1), read('weld/settings', 'bottle', 2), ...machine(3)]);
    const bottle = c.view.build.live.find(e => e.kind === 'reading-logged' && e.ask === 'bottle');
    expect(bottle === undefined ? '' : entryText(c, bottle).value).toMatch(/CO2/);
  });

  test('which welder, as a figure and where it changed since a step was done', () => {
    const c = contextOf([
      begun(),
      ...machine(1),
      tick('weld/settings', { 'weld-kind': 1, 'weld-wire': 0.9, 'weld-wall': 3, 'joint-wall': 2 }),
      ...machine(3),
    ]);
    const kind = c.view.sheets.flatMap(s => s.figures).find(f => f.id === 'weld-kind');
    expect(kind === undefined ? '' : figureValue(c, kind)).toBe('cored wire, no gas');
    const settings = c.view.steps.find(s => s.key === 'weld/settings');
    const rows = settings === undefined ? [] : changeRows(c, settings).map(rowText);
    expect(rows.join('\n')).toMatch(/welder: was solid wire and mixed gas .*, now cored wire, no gas/);
  });
});
