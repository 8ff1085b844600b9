import { describe, expect, test } from 'vitest';
import type { ShopEntry } from '../../../src/build/shop/entries.ts';
import { foldShop, type Shop } from '../../../src/build/shop/shop.ts';
import { viewOf } from '../../../src/coach/view.ts';
import { rowText } from '../../../src/drawing/cells.ts';
import { stagePage } from '../../../src/screen/pages/stage-page.ts';
import { deedWithin } from '../../../src/screen/pages/step-rows.ts';
import type { Stage } from '../../../src/stages/sheet.ts';
import { begun } from '../../stages/doings.ts';
import { entriesOf, NOW } from '../../stages/situation-for.ts';
import { WORDS } from '../../stages/word-gaps.ts';

const view = viewOf(entriesOf([begun()]), NOW);

const pageOf = (stage: Stage, step: string): string =>
  stagePage(
    {
      view,
      voice: { content: WORDS, system: 'metric' },
      look: { columns: 80, rows: 24, ascii: false },
      disk: { is: 'on disk', at: null },
      message: null,
    },
    { stage, step, item: 0 },
    [],
  )
    .map(rowText)
    .join('\n');

describe('the drawing of a stage page', () => {
  test.each(['A', 'B'])('is of the rail that the step is about: %s', rail => {
    expect(pageOf('weld', `weld/cool@${rail}`)).toContain(`rail ${rail}, back wall down`);
  });
});

describe('the hours at the head of a stage page', () => {
  const view = viewOf(entriesOf([begun()]), NOW);
  const head = (stage: 'cut' | 'weld', shop?: Shop): string =>
    rowText(
      stagePage(
        {
          view,
          voice: { content: WORDS, system: 'metric' },
          look: { columns: 80, rows: 24, ascii: false },
          disk: { is: 'on disk', at: null },
          message: null,
          ...(shop === undefined ? {} : { shop }),
        },
        { stage, step: null, item: 0 },
        [],
      )[2] ?? [],
    );
  const band = (text: string, where: string): number[] =>
    new RegExp(`(\\d+) to (\\d+) h ${where}`).exec(text)?.slice(1).map(Number) ?? [];

  test('are a band for the stage and one for the build, the same build on every page', () => {
    const [low, high] = band(head('cut'), 'left here');
    const all = band(head('cut'), 'in all');
    expect(low).toBeLessThan(high ?? 0);
    expect(all[0]).toBeGreaterThan(high ?? 0);
    expect(band(head('weld'), 'in all')).toEqual(all);
  });

  test('are counted with the minutes that the person logged', () => {
    const slow = {
      id: 'e',
      n: 1,
      v: 1,
      at: '2026-10-03T18:00:00.000Z',
      kind: 'minutes-logged',
      what: 'slit',
      count: 4,
      minutes: 480,
    } as ShopEntry;
    const usual = band(head('cut'), 'in all')[1] ?? 0;
    expect(band(head('cut', foldShop([slow])), 'in all')[1]).toBeGreaterThan(usual);
  });
});

test('a step that waits says what for, and nothing whose numbers are not there', () => {
  const page = pageOf('plan', 'plan/flight');
  expect(page).toContain('Say how fast it will be ridden');
  expect(page).not.toContain('not known yet');
});

describe('a step’s sentence in a narrow list', () => {
  test.each([
    ['Pair the rails, then mark them', 40, 'Pair the rails, then mark them'],
    ['Pair the rails for the build, then mark them', 30, 'Pair the rails for the build'],
    ['Anchor the ramp and pull each of 4 anchors before riding', 40, 'Anchor the ramp and pull each'],
    ['Break three test welds before you trust any', 40, 'Break three test welds'],
    ['Rail A after 61 days: read three stations', 30, 'Rail A after 61 days'],
    ['Weld the sides of 6 slits of rail A', 25, 'Weld the sides, rail A'],
    ['Weld the sides of 6 slits of rail A', 18, 'Weld the sides, A'],
    ['Weld', 3, 'Weld'],
  ])('%s in %s columns', (title, room, told) => {
    expect(deedWithin(title, room)).toBe(told);
  });
});
