import { describe, expect, test } from 'vitest';
import type { Doing } from '../../../src/build/entries.ts';
import { EMPTY_SHOP } from '../../../src/build/shop/shop.ts';
import { viewOf } from '../../../src/coach/view.ts';
import { rowText } from '../../../src/drawing/cells.ts';
import type { PageContext } from '../../../src/screen/pages/context.ts';
import { cuttingPage, listedCuts } from '../../../src/screen/pages/cutting-page.ts';
import { orderText } from '../../../src/screen/pages/order-files.ts';
import { orderSheet } from '../../../src/screen/pages/order-sheet.ts';
import { begun, read } from '../../stages/doings.ts';
import { entriesOf, NOW } from '../../stages/situation-for.ts';
import { WORDS } from '../../stages/word-gaps.ts';

/** Said at the bench: the second answer is the saw with a blade, the third a band saw. */
const saw = (kind: number, ...more: Doing[]) => [read('cut/saw', 'saw', kind), ...more];

/** Every page of the cutting list, 80 by 24, and the order on paper. */
const listOf = (system: 'metric' | 'us', ...doings: Doing[]) => {
  const view = viewOf(entriesOf([begun(system), ...doings]), NOW);
  const c: PageContext = {
    view,
    voice: { content: WORDS, system },
    look: { columns: 80, rows: 24, ascii: false },
    disk: { is: 'on disk', at: null },
    message: null,
  };
  const sheet = orderSheet(view, EMPTY_SHOP);
  const cuts = listedCuts(sheet);
  const pages = cuts.map((_, i) => cuttingPage(c, sheet, 'cut', i, [], null).map(rowText).join('\n'));
  return {
    pages,
    pageOf: (need: string) => pages[cuts.findIndex(l => l.cut.piece.need === need)] ?? '',
    paper: orderText(view, c.voice, sheet, '2026-10-03').replaceAll(/\n {3}/g, ' '),
  };
};

describe('what is said of a cut', () => {
  test.each(['metric', 'us'] as const)('no sentence is broken off, whatever the saw: %s', system => {
    for (const kind of [1, 3, 5]) {
      for (const page of listOf(system, ...saw(kind, read('cut/saw', 'through', 35))).pages)
        expect(page.replace(/^.*\n.*\n/, '')).not.toContain('…');
    }
  });

  test('at a band saw the hands are bare; at another saw that is not asked', () => {
    expect(listOf('metric', ...saw(3)).pages[0]).toContain('No gloves at a running blade');
    expect(listOf('metric', ...saw(1)).pages[0]).not.toContain('No gloves');
  });

  test('a bar is squared before its first cut, by a grinder as by a saw', () => {
    for (const kind of [1, 5]) {
      const { pages } = listOf('metric', ...saw(kind));
      expect(pages[0]).toContain('Square the end: 12 mm off in all.');
    }
    expect(listOf('metric', ...saw(5)).pages[0]?.replaceAll(/\s+/g, ' ')).toContain('One wall a cut');
  });

  test('a mitre steeper than the saw turns, and a tube wider than it cuts, are told where they come', () => {
    const through = listOf('metric', ...saw(2, read('cut/saw', 'through', 35)));
    expect(through.pageOf('curved rail@A')).toMatch(
      /Wider at this angle than your saw cuts in one pass \(35/,
    );
    expect(listOf('metric', ...saw(2)).pageOf('curved rail@A')).not.toContain('Wider');
  });
});

describe('mitres on the list', () => {
  test('stand with short points and leans, parallel for a diagonal, toward each other for a rear diagonal', () => {
    const { paper, pageOf } = listOf('metric');
    expect(paper).toMatch(/rear diagonal [\d.]+ to [\d.]+, \\[\d.]+ deg \/[\d.]+ deg/);
    const diagonal = /diagonal \w+ A [\d.]+ to [\d.]+, ([\\/])[\d.]+ deg ([\\/])[\d.]+ deg/.exec(
      paper.replace(/rear diagonal/g, ''),
    );
    expect(diagonal?.[1]).toBe(diagonal?.[2]);
    expect(paper).toMatch(/upright \w+ A [\d.]+ to [\d.]+, \| [\\/][\d.]+ deg/);
    expect(pageOf('lip upright@A')).toMatch(
      /LIP UPRIGHT A +[\d.]+ +[\d.]+ +(\| [\\/][\d.]+°|[\\/][\d.]+° \|)/,
    );
  });
});
