import type { ShopDoing } from '../../build/shop/entries.ts';
import { learnedKerf, type TimedWork } from '../../build/shop/shop.ts';
import type { ShopKeeper } from '../../coach/shop-keeper.ts';
import { cutTo, padTo, row } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { write } from '../../quantity/write.ts';
import { BAR_SAWS } from '../../ramp/cutting/bar-saw.ts';
import { CUT_AIMS } from '../../ramp/cutting/question.ts';
import type { Stage } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import { fieldRows } from '../fields/field-rows.ts';
import type { FieldSpec } from '../fields/field-spec.ts';
import { openField } from '../fields/number-field.ts';
import { echoRow, page, pageRows, ruleRow, stripRow, titleRow } from '../pages/frame.ts';
import { orderSheet } from '../pages/order-sheet.ts';
import { moneyText, sectionText } from '../pages/order-words.ts';
import { commonAct } from './common.ts';
import type { Desk, Place } from './desk.ts';
import { type Line, minutesLines } from './minutes-lines.ts';

/** No saw, so that the refusal has a place to stand: the choice after the last. */
const WOOD_SAW = 'wood saw';

/** What the yard asks, what it sells, the saw that cuts the bars, what goes home in one piece: typed once, kept in the shop. */
export const pricesPlace = (stage: Stage, shop: ShopKeeper): Place => {
  let lit = 0;

  const keep = (desk: Desk, doing: ShopDoing): boolean => {
    const why = shop.act(doing);
    desk.say(
      say(
        desk.voice,
        why === null ? { words: 'says.prices-kept' } : { words: 'says.order-cannot-keep', fills: { why } },
      ),
    );
    return why === null;
  };

  const ask = (
    spec: Omit<FieldSpec, 'system'>,
    kept: (desk: Desk, value: number, typed: string) => void,
  ): ((desk: Desk) => void) => {
    return desk => {
      place.field = {
        field: openField(),
        spec: { ...spec, system: desk.system },
        keep: (value, typed) => kept(desk, value, typed),
      };
    };
  };

  const logMinutes = (desk: Desk, what: TimedWork, count: number): void =>
    ask(
      {
        quantity: 'time',
        asks: say(desk.voice, { words: `says.prices-minutes-${what}-ask`, fills: { count } }),
        possible: [1, 24 * 3600],
      },
      (d, seconds) => {
        keep(d, { kind: 'minutes-logged', what, count, minutes: seconds / 60 });
      },
    )(desk);

  const sectionLines = (desk: Desk): Line[] => {
    const { voice } = desk;
    return orderSheet(desk.view, shop.shop()).order.sections.flatMap(
      ({ section, question, listed }): Line[] => {
        const name = sectionText(voice, section);
        const longest = Math.max(0, ...question.lumps.map(l => l.length_mm));
        const bars = listed.map((bar): Line => {
          const length = write(bar.length_mm, 'length', voice.system, { feet: true });
          return {
            name: `${padTo(name, 26)}${say(voice, { words: 'says.prices-row', fills: { length } })}`,
            value: bar.price === null ? say(voice, { words: 'says.prices-none' }) : moneyText(bar.price),
            change: ask(
              {
                quantity: 'ratio',
                asks: say(voice, { words: 'says.prices-ask', fills: { section: name, length } }),
                possible: [0, 1e6],
              },
              (d, price, typed) => {
                if (
                  keep(d, { kind: 'price-set', section: section.name, bar_mm: bar.length_mm, price, typed })
                )
                  lit++;
              },
            ),
          };
        });
        const other: Line = {
          name: `${padTo('', 26)}${say(voice, { words: 'says.prices-length' })}`,
          value: '',
          change: ask(
            {
              quantity: 'length',
              asks: say(voice, { words: 'says.prices-length-ask', fills: { section: name } }),
              possible: [100, 25_000],
              expected: [longest, 25_000],
            },
            (d, length_mm) => {
              const listed = question.sold.map(b => b.length_mm);
              const others = listed.filter(l => Math.abs(l - length_mm) > 1);
              // A length typed a second time is dropped, but not the last one.
              const bars_mm =
                others.length < listed.length && others.length > 0 ? others : [...others, length_mm];
              keep(d, { kind: 'bar-sizes-set', section: section.name, bars_mm });
            },
          ),
        };
        return [...bars, other];
      },
    );
  };

  const shopLines = (desk: Desk): Line[] => {
    const { voice } = desk;
    const now = shop.shop();
    const sheet = orderSheet(desk.view, now);
    const planned = { v: sheet.order.kerf_mm, as: 'thickness' } as const;
    const learned = learnedKerf(now, 'bars');
    const choices = [...BAR_SAWS, WOOD_SAW] as const;
    return [
      {
        name: say(voice, { words: 'says.prices-saw' }),
        value: now.barSaw ?? say(voice, { words: 'says.prices-saw-unsaid' }),
        change: d => {
          const next = choices[(choices.findIndex(s => s === (tried ?? now.barSaw)) + 1) % choices.length];
          tried = next ?? null;
          if (next === undefined) return;
          if (next === WOOD_SAW) d.say(say(d.voice, { words: 'says.prices-wood-saw' }));
          else keep(d, { kind: 'machine-set', machine: 'bar saw', saw: next });
        },
      },
      {
        name: say(voice, { words: 'says.prices-kerf' }),
        value: say(
          voice,
          learned.count === 0
            ? { words: 'says.prices-kerf-unread', fills: { kerf: planned } }
            : {
                words: 'says.prices-kerf-learned',
                fills: {
                  kerf: planned,
                  likely: { v: learned.likely, as: 'thickness' },
                  count: learned.count,
                },
              },
        ),
        change: ask(
          {
            quantity: 'thickness',
            asks: say(voice, { words: 'says.prices-kerf-ask' }),
            expected: [0.8, 4],
            possible: [0.2, 8],
          },
          (d, kerf_mm, typed) => {
            keep(d, { kind: 'saw-kerf-read', saw: 'bars', kerf_mm, typed });
          },
        ),
      },
      ...minutesLines(desk, stage, now, logMinutes),
      {
        name: say(voice, { words: 'says.prices-carry' }),
        value: write(sheet.carry_mm, 'length', voice.system, { feet: true }),
        change: ask(
          {
            quantity: 'length',
            asks: say(voice, { words: 'says.prices-carry-ask' }),
            possible: [300, 25_000],
          },
          (d, length_mm, typed) => {
            keep(d, { kind: 'carry-set', length_mm, typed });
          },
        ),
      },
      {
        name: say(voice, { words: 'says.prices-aim' }),
        value: say(voice, { words: `says.prices-aim-${now.aim}` }),
        change: d => {
          const aim = CUT_AIMS[(CUT_AIMS.indexOf(now.aim) + 1) % CUT_AIMS.length] ?? 'price';
          keep(d, { kind: 'aim-set', aim });
        },
      },
    ];
  };

  let tried: string | null = null;
  const linesOf = (desk: Desk): readonly Line[] => [...sectionLines(desk), ...shopLines(desk)];

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
          : [row(' ', ['lead', `▸ ${say(c.voice, { words: 'says.prices-tag' })}`]), []];
      const room = Math.max(1, pageRows(c) - 3 - top.length - 3);
      const from = Math.max(0, Math.min(lit - 3, lines.length - room));
      return page(
        c,
        [
          titleRow(c),
          stripRow(c.view, stage),
          ruleRow(c, say(c.voice, { words: 'says.prices-title' }), `${lit + 1} of ${lines.length}`),
        ],
        [
          ...top,
          ...lines.slice(from, from + room).map((line, i) => {
            const on = from + i === lit;
            return row(
              ' ',
              [on ? 'lead' : 'quiet', on ? '▸ ' : '· '],
              [on ? 'lead' : 'plain', padTo(cutTo(line.name, 51), 52)],
              cutTo(line.value, c.look.columns - 57),
            );
          }),
        ],
        [[], echoRow(c), desk.keyRow(place)],
      );
    },
    keys: () => [
      { act: 'open', words: 'type or change' },
      { act: 'next', words: 'move', shown: '↑ ↓' },
      { act: 'take-back' },
      { act: 'back' },
      { act: 'help' },
    ],
    act: (desk, act, char) => {
      const lines = linesOf(desk);
      if (act === 'next') {
        lit = Math.min(lines.length - 1, lit + 1);
        tried = null;
      } else if (act === 'previous') {
        lit = Math.max(0, lit - 1);
        tried = null;
      } else if (act === 'open') lines[lit]?.change(desk);
      else if (act === 'take-back' && shop.takeBack())
        desk.say(say(desk.voice, { words: 'says.order-taken-back' }));
      else if (act === 'back') desk.pop();
      else return commonAct(desk, act, char, { stage, step: null, item: 0 });
      return true;
    },
  };
  return place;
};
