import { row } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import type { Stage } from '../../stages/sheet.ts';
import { helpRows } from '../help-rows.ts';
import type { LineItem, PageKey } from '../keys.ts';
import { page, stripRow, titleRow } from '../pages/frame.ts';
import { drawingPage, glossaryPage, hurtPage, largePage, whyPage } from '../pages/look-pages.ts';
import type { Lit } from '../pages/stage-page.ts';
import { commonAct } from './common.ts';
import type { Desk, Place } from './desk.ts';

type Drawn = (desk: Desk, at: number, keys: Row) => Row[];

/** A page that is only looked at: up and down roll it, Enter and Esc go back. */
const lookPlace = (lit: Lit, drawn: Drawn, own: readonly PageKey[] = [], step = 1): Place => {
  let at = 0;
  const place: Place = {
    stage: () => lit.stage,
    own,
    rows: desk => drawn(desk, at, desk.keyRow(place)),
    keys: () => [
      { act: 'back' },
      { act: 'next', words: 'move', shown: '↑ ↓' },
      ...own.map(o => ({ act: o.act })),
      { act: 'hurt' },
      { act: 'leave' },
    ],
    act: (desk, act, char) => {
      if (act === 'next') at += step;
      else if (act === 'previous') at = Math.max(0, at - step);
      else if (act === 'open') desk.pop();
      else if (act === 'tick') at += 8;
      else if (act === 'back') desk.pop();
      else return commonAct(desk, act, char, lit);
      return true;
    },
  };
  return place;
};

const WORDS: PageKey = {
  char: 'g',
  act: 'glossary',
  word: 'words',
  help: 'words of the trade',
  writes: false,
};

export const whyPlace = (lit: Lit): Place =>
  lookPlace(lit, (d, at, keys) => whyPage(d.context(), lit, at, keys), [WORDS], 3);
export const drawingPlace = (lit: Lit): Place =>
  lookPlace(lit, (d, _at, keys) => drawingPage(d.context(), lit, keys));
export const glossaryPlace = (stage: Stage): Place =>
  lookPlace(
    { stage, step: null, item: 0 },
    (d, at, keys) => glossaryPage(d.context(), stage, at, keys),
    [],
    3,
  );

/** The large figures keep Space for the tick, so that a person across the garage need not come back for it. */
export const largePlace = (lit: Lit): Place =>
  lookPlace(lit, (d, _at, keys) => largePage(d.context(), lit, keys));

/** The keys of the page that it was opened from first, as its bottom row words them, then those of every page. */
export const helpPlace = (stage: Stage, items: readonly LineItem[], own: readonly PageKey[]): Place =>
  lookPlace({ stage, step: null, item: 0 }, (d, _at, keys) => {
    const c = d.context();
    const rows = helpRows({ ...c.look, rows: c.look.rows - 5 }, items, own);
    return page(c, [titleRow(c), stripRow(c.view, stage)], rows, [row(' ', c.message ?? ''), keys]);
  });

/** "I'm hurt": a list, one page each. */
export const hurtPlace = (lit: Lit): Place => {
  let at = 0;
  let open = false;
  const place: Place = {
    stage: () => lit.stage,
    rows: desk => hurtPage(desk.context(), at, open, desk.keyRow(place)),
    keys: () =>
      open
        ? [{ act: 'back' }]
        : [
            { act: 'open', words: 'what to do' },
            { act: 'next', words: 'move', shown: '↑ ↓' },
            { act: 'back' },
          ],
    act: (desk, act) => {
      const count = Object.keys(desk.around.content.hurt).length;
      if (act === 'next' && !open) at = Math.min(count - 1, at + 1);
      else if (act === 'previous' && !open) at = Math.max(0, at - 1);
      else if (act === 'open' || act === 'tick') open = true;
      else if (act === 'back') {
        if (open) open = false;
        else desk.pop();
      } else return act === 'hurt';
      return true;
    },
  };
  return place;
};
