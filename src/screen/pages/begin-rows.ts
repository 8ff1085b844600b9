import { EMPTY_SHOP } from '../../build/shop/shop.ts';
import { minutesLeft } from '../../coach/hours-left.ts';
import type { View } from '../../coach/view.ts';
import { drawScene } from '../../drawing/braille.ts';
import { padTo, row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { write } from '../../quantity/write.ts';
import { sideView } from '../../stages/side-view.ts';
import { say } from '../../words/say.ts';
import type { PageContext } from './context.ts';
import { spanText } from './span-text.ts';

/** What a change reaches that is cut or done. */
export const effectRows = (effects: readonly string[]): Row[] => [
  row(' ', ['lead', 'This change reaches steel that is cut, or work that is done:']),
  [],
  ...effects.slice(0, 10).map(e => row(' ', ['attention', '▲ '], e)),
  ...(effects.length > 10 ? [row('   ', `and ${effects.length - 10} more`)] : []),
  [],
  row(' ', 'Enter changes it, Esc leaves it as it was. Nothing is lost either way.'),
];

/** All is answered: agree to it, or what of it cannot or should not be built. */
export const agreeRows = (c: PageContext): Row[] => {
  const top: Row[] = [];
  const refuse = c.view.ramp.problems.filter(p => p.severity === 'refuse');
  const all = [...refuse, ...c.view.ramp.problems.filter(p => p.severity === 'warn')];
  top.push(
    row(' ', [
      'lead',
      refuse.length === 0
        ? '▸ Enter agrees to this design and opens the plan.'
        : '■ This cannot be built like this yet.',
    ]),
  );
  top.push(
    row(' ', [
      'quiet',
      `Strength will be judged by ${say(c.voice, { words: `questions.standard.choices.${c.view.ramp.design.standard}` })}.`,
    ]),
    row(' ', ['quiet', 'c changes that or any answer; it also asks ground, uprights and rails.']),
  );
  if (refuse.length === 0) {
    const { masses } = c.view.ramp;
    const hours = spanText(minutesLeft(c.view, c.shop ?? EMPTY_SHOP, null));
    const fills = {
      hours,
      frame: { v: masses.steel_kg, as: 'mass' },
      all: { v: masses.all_kg, as: 'mass' },
    } as const;
    // What it asks of evenings and backs is known before anything is agreed to.
    for (const words of ['says.agree-work', 'says.agree-mass'])
      top.push(row(' ', say(c.voice, { words, fills })));
  }
  for (const p of all.slice(0, 4)) {
    top.push(
      ...wrap(
        `${say(c.voice, { words: `problems.${p.code}.says`, fills: p.fills })} ${say(c.voice, { words: `problems.${p.code}.change`, fills: p.fills })}`,
        c.look.columns - 6,
      ).map((l, i) =>
        row(
          ' ',
          [
            p.severity === 'refuse' ? 'halt' : 'attention',
            i === 0 ? (p.severity === 'refuse' ? '■ ' : '◇ ') : '  ',
          ],
          l,
        ),
      ),
    );
  }
  return top;
};

const resultRows = (c: PageContext, view: View): Row[] => {
  const arc = view.ramp.design.arc;
  const given = Object.keys(view.build.answers.shape ?? {});
  const line = (name: string, value: string, key: string): Row =>
    row(padTo(name, 14), padTo(value, 13, 'right'), [
      'quiet',
      given.includes(key) ? '  you said' : '  follows',
    ]);
  const len = (v: number): string => write(v, 'length', c.voice.system, { fixed: true, feet: true });
  const problem = view.ramp.problems[0];
  return [
    line('lip height', len(arc.height_mm), 'height'),
    line('run', len(arc.run_mm), 'run'),
    line('radius', len(arc.radius_mm), 'radius'),
    line('exit angle', write(arc.exit_rad, 'angle', c.voice.system), 'exit'),
    line('arc, deck', len(arc.arc_mm), 'arc'),
    row(
      padTo('rails, slits', 14),
      padTo(`${view.ramp.rails.length} x ${view.ramp.plans.get('A')?.slits.length ?? 0}`, 13, 'right'),
      ['quiet', '  follow'],
    ),
    row(
      padTo('bare frame', 14),
      padTo(write(view.ramp.masses.steel_kg, 'mass', c.voice.system), 13, 'right'),
      ['quiet', '  follows'],
    ),
    ...(problem === undefined
      ? []
      : wrap(say(c.voice, { words: `problems.${problem.code}.says`, fills: problem.fills }), 38)
          .slice(0, 3)
          .map(l => row(['attention', l]))),
  ];
};

const padded = (r: Row, columns: number): Row => {
  const width = r.reduce((n, s) => n + s.text.length, 0);
  return [...r, { text: ' '.repeat(Math.max(0, columns - width)) }];
};

/** What the answers give: the side view drawn, the sizes beside it. `room` rows are left for it. */
export const givesRows = (c: PageContext, view: View, room: number): Row[] => {
  const drawRows = Math.max(4, room);
  const scene = sideView(view.situation);
  const drawing = drawScene(scene, {
    columns: Math.max(30, c.look.columns - 44),
    rows: Math.min(drawRows, 14),
    ascii: c.look.ascii,
  });
  const results = resultRows(c, view);
  return Array.from(
    { length: Math.max(drawing.length, results.length) },
    (_, i): Row => [
      ...padded(drawing[i] ?? [], Math.max(30, c.look.columns - 44) + 2),
      ...(results[i] ?? []),
    ],
  );
};
