import { padTo, row } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { write } from '../../quantity/write.ts';
import { memberMass } from '../../ramp/mass.ts';
import { sectionName } from '../../ramp/members.ts';
import type { Stage } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import type { PageContext } from './context.ts';
import { echoRow, page, pageRows, ruleRow, stripRow, titleRow } from './frame.ts';
import { pieceName } from './journal-page.ts';
import { figuresOf, stepText } from './step-words.ts';

/** Pieces of one section with equal length and cuts, as one row. */
const groups = (c: PageContext) => {
  const rows = new Map<
    string,
    { section: string; kind: string; long: number; count: number; kg: number; when: string; first: string }
  >();
  for (const m of c.view.ramp.members) {
    const section = sectionName(m.tube);
    const key = `${section} ${m.kind} ${Math.round(m.long_mm * 2) / 2}`;
    const before = rows.get(key);
    rows.set(key, {
      section,
      kind: m.kind,
      long: m.long_mm,
      count: (before?.count ?? 0) + 1,
      kg: (before?.kg ?? 0) + memberMass(m),
      when: m.when,
      first: before?.first ?? m.need,
    });
  }
  return [...rows.values()].sort((a, b) =>
    a.section < b.section ? -1 : a.section > b.section ? 1 : b.long - a.long,
  );
};

/** The order sheet: what to buy, with the spare rail first, and every piece by section. */
export const orderRows = (c: PageContext): Row[] => {
  const buy = c.view.steps.find(s => s.key === 'plan/buy');
  const bought =
    buy === undefined
      ? []
      : (buy.items ?? []).map(i => {
          const value = i.value === undefined ? '' : write(i.value.v, i.value.as, c.voice.system);
          const note = i.note === undefined ? '' : say(c.voice, i.note, figuresOf(c.view, buy));
          const done = c.view.build.ticks.has(i.key);
          return row(
            ' ',
            [done ? 'settled' : 'quiet', done ? '✓ ' : '· '],
            padTo(i.name, 26),
            padTo(value, 12, 'right'),
            '  ',
            ['quiet', note],
          );
        });
  const pieces = groups(c).map(g =>
    row(
      ' ',
      padTo(g.section, 14),
      padTo(String(g.count), 3, 'right'),
      ' x ',
      padTo(write(g.long, 'length', c.voice.system, { fixed: true }), 12, 'right'),
      `  ${g.count === 1 ? pieceName(g.first) : g.kind}`,
      [
        'quiet',
        g.when === 'later' && (g.kind.includes('upright') || g.kind === 'diagonal')
          ? '  cut later, to the rail'
          : '',
      ],
    ),
  );
  return [
    ...(buy === undefined ? [] : [row(' ', ['lead', stepText(c.view, c.voice, buy, 'title') ?? 'To buy'])]),
    ...bought,
    ruleRow(
      c,
      'every piece of steel',
      `${write(c.view.ramp.masses.steel_kg, 'mass', c.voice.system)} in all`,
    ),
    ...pieces,
  ];
};

export const orderPage = (c: PageContext, stage: Stage, from: number, keys: Row): Row[] => {
  const rows = orderRows(c);
  const room = Math.max(1, pageRows(c) - 6);
  const at = Math.max(0, Math.min(from, rows.length - room));
  return page(
    c,
    [
      titleRow(c),
      stripRow(c.view, stage),
      ruleRow(c, 'order sheet', `rows ${at + 1} to ${Math.min(rows.length, at + room)} of ${rows.length}`),
    ],
    rows.slice(at, at + room),
    [[], echoRow(c), keys],
  );
};
