import { toAscii } from '../../drawing/ascii-twin.ts';
import { drawScene } from '../../drawing/braille.ts';
import { besideRows, cutRow, joinSides, padTo, row, rule } from '../../drawing/cells.ts';
import type { Look, Row } from '../../drawing/row.ts';
import type { System } from '../../quantity/quantities.ts';
import { write } from '../../quantity/write.ts';
import type { Scene } from '../../scene/scene.ts';
import { counted } from '../../words/counted.ts';
import { wholeFoot } from './frame.ts';

/** A build, or a demo, that the opening page lists. */
export type Listed = Readonly<{
  name: string;
  path: string;
  lastAt: string | null;
  count: number;
  demo: boolean;
  note?: string;
}>;

export type Choice =
  | Readonly<{ is: 'begin' }>
  | Readonly<{ is: 'units' }>
  | Readonly<{ is: 'open'; build: Listed }>;

export type OpeningContext = Readonly<{
  look: Look;
  system: System;
  builds: readonly Listed[];
  demos: readonly Listed[];
  folder: string;
  message: string | null;
  scene: Scene | null;
}>;

/** What can be chosen, in order: the builds, a new one, the demos, the units. */
export const openingChoices = (c: OpeningContext): readonly Choice[] => [
  ...c.builds.map(build => ({ is: 'open', build }) as const),
  { is: 'begin' },
  ...c.demos.map(build => ({ is: 'open', build }) as const),
  { is: 'units' },
];

const date = (iso: string | null): string => {
  if (iso === null) return '';
  const d = new Date(iso);
  return Number.isNaN(d.getTime())
    ? ''
    : d.toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
};

const FIFTY_INCHES = 1270;

const choiceRows = (c: OpeningContext, choice: Choice, lit: boolean): Row[] => {
  const sign = row(' ', [lit ? 'lead' : 'quiet', lit ? '▸ ' : '· ']);
  const role = lit ? 'lead' : 'plain';
  switch (choice.is) {
    case 'begin':
      return [
        [...sign, { text: 'Begin a build', role }],
        row('     ', 'About ten questions, ten minutes. You need a rough idea of how high the'),
        row('     ', 'lip should be. Everything can be changed until you cut steel.'),
      ];
    case 'units':
      return [
        [
          ...sign,
          { text: `Units of a new build: ${c.system === 'us' ? 'feet and inches' : 'metric'}`, role },
        ],
        row(
          '     ',
          c.system === 'us'
            ? `A length reads ${write(FIFTY_INCHES, 'length', 'us', { feet: true })}. Press u for metric: 1270 mm.`
            : `A length reads 1270 mm. Press u for feet and inches: ${write(FIFTY_INCHES, 'length', 'us', { feet: true })}.`,
        ),
      ];
    case 'open': {
      const b = choice.build;
      const what = b.demo
        ? 'demo, invented: you get a copy'
        : `${counted(b.count, 'entry', 'entries')}, last ${date(b.lastAt)}`;
      return [
        [...sign, { text: padTo(b.name, 30), role }, { text: what, role: 'quiet' }],
        ...(b.note === undefined ? [] : [row('     ', ['attention', b.note])]),
      ];
    }
  }
};

/** The first page: builds to open, a new one, the demos. */
export const openingPage = (c: OpeningContext, lit: number, keys: Row): Row[] => {
  const choices = openingChoices(c);
  const head = [
    joinSides(
      row(' ', ['lead', 'Curvewright']),
      row(['quiet', c.builds.length === 0 ? 'no builds yet' : counted(c.builds.length, 'build')]),
      c.look.columns,
    ),
    row(' ', 'coach for welded frames with curved rails'),
    rule(c.builds.length === 0 ? 'the bench is empty' : 'on the bench', '', c.look.columns),
    [],
  ];
  const foot = wholeFoot(
    [
      row(' ', 'Have beside you: a tape, a caliper, a note of your grinder disc.'),
      row(' ', ['quiet', `Builds live in ${c.folder}`]),
      row(' ', c.message ?? ''),
      keys,
    ],
    c.look.columns,
  );
  const rows = Math.max(3, c.look.rows - 1 - head.length - foot.length);
  const blocks = choices.map((choice, i) => choiceRows(c, choice, i === lit));
  // The lit choice stays in sight however many builds there are.
  let from = 0;
  const heightTo = (end: number): number => blocks.slice(from, end + 1).reduce((n, b) => n + b.length, 0);
  while (from < lit && heightTo(lit) > rows) from++;
  const list = blocks.slice(from).flat().slice(0, rows);
  const spare = rows - list.length;
  const drawing =
    c.scene !== null && spare >= 5
      ? drawScene(c.scene, { columns: 44, rows: Math.min(8, spare), ascii: c.look.ascii })
      : [];
  const pad: Row[] = Array.from({ length: Math.max(0, spare - drawing.length) }, () => []);
  const body = [...list, ...pad, ...besideRows([], drawing, c.look.columns - 45)];
  const all = [...head, ...body, ...foot].slice(0, c.look.rows - 1);
  return (c.look.ascii ? toAscii(all, c.look.columns) : all).map(r =>
    cutRow(r, c.look.columns, c.look.ascii),
  );
};
