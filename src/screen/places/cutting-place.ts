import { endsToKeep } from '../../build/shop/ends-to-keep.ts';
import type { ShopKeeper } from '../../coach/shop-keeper.ts';
import { isSteel } from '../../ramp/cutting/totals.ts';
import type { PieceAsk } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import { fieldRows } from '../fields/field-rows.ts';
import { openField } from '../fields/number-field.ts';
import type { PageKey } from '../keys.ts';
import { cuttingPage, firstOpenCut, type ListedCut, listedCuts } from '../pages/cutting-page.ts';
import { buildIdOf, type OrderSheet, orderSheet } from '../pages/order-sheet.ts';
import type { Lit } from '../pages/stage-page.ts';
import { pieceField } from './ask-field.ts';
import { commonAct } from './common.ts';
import type { Desk, Place } from './desk.ts';

const KEEP: PageKey = {
  char: 'k',
  act: 'keep-ends',
  word: 'keep the ends',
  help: 'keep the ends left over',
  writes: true,
};

/** Cutting bar by bar: move from cut to cut, Enter logs the real length, m the minutes. */
export const cuttingPlace = (from: Lit, shop: ShopKeeper): Place => {
  let lit: number | null = null;

  const sheetOf = (desk: Desk): OrderSheet => orderSheet(desk.view, shop.shop());

  const litCut = (desk: Desk): ListedCut | undefined => {
    const cuts = listedCuts(sheetOf(desk));
    lit = Math.max(0, Math.min(lit ?? firstOpenCut(cuts), cuts.length - 1));
    return cuts[lit];
  };

  const logLength = (desk: Desk): void => {
    const l = litCut(desk);
    if (l === undefined || !l.cut.piece.known || l.cut.piece.when === 'spare')
      return desk.say(say(desk.voice, { words: 'says.cutting-not-now' }));
    const { need, ends } = l.cut.piece;
    const { members, entry } = desk.view.ramp;
    // As drawn, where it is a member: the list's own length is what a tape shows of it.
    const long_mm = [...members, ...entry.pieces].find(m => m.need === need)?.long_mm ?? l.cut.piece.long_mm;
    if (desk.refuses({ do: 'cut-piece', need, length: `${long_mm} mm` })) return;
    const piece: PieceAsk = {
      need,
      section: l.section.section.name,
      long_mm,
      ends_rad: [ends.first_rad, ends.second_rad],
    };
    place.field = pieceField(desk, piece, () => {
      lit = null;
    });
  };

  const logMinutes = (desk: Desk): void => {
    const since = shop.shop().minutesAt.cut;
    const count = desk.view.build.pieces.filter(p => since === null || p.at > since).length;
    if (count === 0) return desk.say(say(desk.voice, { words: 'says.cutting-minutes-none' }));
    place.field = {
      field: openField(),
      spec: {
        quantity: 'time',
        system: desk.system,
        asks: say(desk.voice, { words: 'says.cutting-minutes-ask', fills: { count } }),
        possible: [1, 24 * 3600],
      },
      keep: seconds => {
        const why = shop.act({ kind: 'minutes-logged', what: 'cut', count, minutes: seconds / 60 });
        desk.say(
          say(
            desk.voice,
            why === null
              ? { words: 'says.cutting-minutes-kept' }
              : { words: 'says.order-cannot-keep', fills: { why } },
          ),
        );
      },
    };
  };

  /** What is left of the bars once nothing more is cut from them, for the next build. */
  const keepEnds = (desk: Desk): void => {
    const { order } = sheetOf(desk);
    const open = order.sections.some(
      s => isSteel(s) && s.bars.some(b => b.cuts.some(c => c.piece.when !== 'spare')),
    );
    if (open) return desk.say(say(desk.voice, { words: 'says.cutting-keep-open' }));
    const left = [...order.sections.filter(isSteel), ...order.sawn.filter(isSteel)].map(s => ({
      section: s.section.name,
      worked: s.worked,
    }));
    const doings = endsToKeep(left, shop.shop(), buildIdOf(desk.view));
    const count = doings.filter(d => d.kind === 'offcut-kept').length;
    for (const doing of doings) {
      const why = shop.act(doing);
      if (why !== null) return desk.say(say(desk.voice, { words: 'says.order-cannot-keep', fills: { why } }));
    }
    if (count === 0) return desk.say(say(desk.voice, { words: 'says.cutting-keep-none' }));
    desk.say(say(desk.voice, { words: 'says.cutting-keep', fills: { count } }));
  };

  const place: Place = {
    stage: () => from.stage,
    own: [KEEP],
    rows: desk => {
      litCut(desk);
      const field = place.field;
      const c = desk.context();
      const shown =
        field?.field.open === true ? fieldRows(field.field, field.spec, { ...c.look, ascii: false }) : null;
      return cuttingPage(c, sheetOf(desk), from.stage, lit ?? 0, desk.keyRow(place), shown);
    },
    keys: () => [
      { act: 'open', words: 'log real length' },
      { act: 'next', words: 'move', shown: '↑ ↓' },
      { act: 'measure', words: 'minutes' },
      { act: 'keep-ends' },
      { act: 'take-back' },
      { act: 'back' },
    ],
    act: (desk, act, char) => {
      const cuts = listedCuts(sheetOf(desk));
      litCut(desk);
      if (act === 'next') lit = Math.min(cuts.length - 1, (lit ?? 0) + 1);
      else if (act === 'previous') lit = Math.max(0, (lit ?? 0) - 1);
      else if (act === 'open' || act === 'tick') logLength(desk);
      else if (act === 'measure') logMinutes(desk);
      else if (act === 'keep-ends') keepEnds(desk);
      else if (act === 'take-back' && shop.takeBack())
        desk.say(say(desk.voice, { words: 'says.order-taken-back' }));
      else if (act === 'back') desk.pop();
      // A length typed before Enter must not lead to another page, and on to its next key.
      else if (act === 'stage') desk.say(say(desk.voice, { words: 'says.cutting-digit' }));
      else return commonAct(desk, act, char, from);
      return true;
    },
  };
  return place;
};
