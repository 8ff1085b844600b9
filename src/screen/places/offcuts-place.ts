import type { ShopKeeper } from '../../coach/shop-keeper.ts';
import { padTo, row } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { write } from '../../quantity/write.ts';
import type { StockSection } from '../../ramp/cutting/stock-section.ts';
import type { Stage } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import { fieldRows } from '../fields/field-rows.ts';
import { openField } from '../fields/number-field.ts';
import { echoRow, page, pageRows, ruleRow, stripRow, titleRow } from '../pages/frame.ts';
import { buildIdOf, orderSheet } from '../pages/order-sheet.ts';
import { sectionText } from '../pages/order-words.ts';
import { commonAct } from './common.ts';
import type { Desk, Place } from './desk.ts';

type Line = Readonly<{
  section: StockSection;
  offcut: { id: string; length_mm: number; fromBuild: boolean } | null;
}>;

/** Steel that lies in the shop: Enter types another length of the lit section, Space says that the lit one is gone. */
export const offcutsPlace = (stage: Stage, shop: ShopKeeper): Place => {
  let lit = 0;

  const linesOf = (desk: Desk): readonly Line[] => {
    const build = buildIdOf(desk.view);
    const offcuts = shop.shop().offcuts;
    return orderSheet(desk.view, shop.shop()).order.sections.flatMap(({ section }) => [
      { section, offcut: null },
      ...offcuts
        .filter(
          o => o.section === section.name && (o.usedBy === null || o.usedBy === build) && o.from !== build,
        )
        .map(o => ({ section, offcut: { id: o.id, length_mm: o.length_mm, fromBuild: o.from !== null } })),
    ]);
  };

  const add = (desk: Desk, section: StockSection): void => {
    const name = sectionText(desk.voice, section);
    const keepOne = (length_mm: number, typed: string): void => {
      const why = shop.act({ kind: 'offcut-kept', section: section.name, length_mm, typed });
      desk.say(
        say(
          desk.voice,
          why === null ? { words: 'says.prices-kept' } : { words: 'says.order-cannot-keep', fills: { why } },
        ),
      );
    };
    place.field = {
      field: openField(),
      spec: {
        quantity: 'length',
        system: desk.system,
        asks: say(desk.voice, { words: 'says.offcuts-ask', fills: { section: name } }),
        possible: [20, 25_000],
      },
      keep: keepOne,
    };
  };

  const lineRow = (desk: Desk, line: Line, on: boolean): Row => {
    const { voice } = desk;
    const mark = [on ? 'lead' : 'quiet', on ? '▸ ' : '· '] as const;
    const role = on ? 'lead' : 'plain';
    if (line.offcut === null) {
      const none = !linesOf(desk).some(l => l.section.name === line.section.name && l.offcut !== null);
      return row(
        ' ',
        mark,
        [role, padTo(sectionText(voice, line.section), 28)],
        ['quiet', none ? say(voice, { words: 'says.offcuts-none' }) : ''],
      );
    }
    const long = write(line.offcut.length_mm, 'length', voice.system, { feet: true });
    return row(
      ' ',
      mark,
      '    ',
      [role, padTo(long, 24)],
      ['quiet', line.offcut.fromBuild ? say(voice, { words: 'says.offcuts-from' }) : ''],
    );
  };

  const place: Place = {
    stage: () => stage,
    rows: desk => {
      const c = desk.context();
      const lines = linesOf(desk);
      lit = Math.max(0, Math.min(lit, lines.length - 1));
      const field = place.field;
      const top: Row[] =
        field?.field.open === true
          ? fieldRows(field.field, field.spec, { ...c.look, ascii: false })
          : [
              row(' ', ['lead', `▸ ${say(c.voice, { words: 'says.offcuts-tag' })}`]),
              row('   ', ['quiet', say(c.voice, { words: 'says.offcuts-own' })]),
              [],
            ];
      const room = Math.max(1, pageRows(c) - 3 - top.length - 3);
      const from = Math.max(0, Math.min(lit - 3, lines.length - room));
      return page(
        c,
        [titleRow(c), stripRow(c.view, stage), ruleRow(c, say(c.voice, { words: 'says.offcuts-title' }))],
        [...top, ...lines.slice(from, from + room).map((l, i) => lineRow(desk, l, from + i === lit))],
        [[], echoRow(c), desk.keyRow(place)],
      );
    },
    keys: () => [
      { act: 'open', words: 'type a length' },
      { act: 'tick', words: 'it is gone' },
      { act: 'next', words: 'move', shown: '↑ ↓' },
      { act: 'take-back' },
      { act: 'back' },
    ],
    act: (desk, act, char) => {
      const lines = linesOf(desk);
      const line = lines[lit];
      if (act === 'next') lit = Math.min(lines.length - 1, lit + 1);
      else if (act === 'previous') lit = Math.max(0, lit - 1);
      else if (act === 'open') {
        if (line !== undefined) add(desk, line.section);
      } else if (act === 'tick') {
        const id = line?.offcut?.id;
        const why = id === undefined ? null : shop.act({ kind: 'offcut-used', offcut: id });
        desk.say(
          say(
            desk.voice,
            why !== null
              ? { words: 'says.order-cannot-keep', fills: { why } }
              : { words: id === undefined ? 'says.offcuts-pick' : 'says.offcuts-gone' },
          ),
        );
      } else if (act === 'take-back' && shop.takeBack())
        desk.say(say(desk.voice, { words: 'says.order-taken-back' }));
      else if (act === 'back') desk.pop();
      else return commonAct(desk, act, char, { stage, step: null, item: 0 });
      return true;
    },
  };
  return place;
};
