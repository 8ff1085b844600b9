import type { Step } from '../../coach/walk.ts';
import { row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import type { Ask } from '../../stages/sheet.ts';
import { echoRow, page, pageRows, ruleRow, stripRow, titleRow } from '../pages/frame.ts';
import type { Lit } from '../pages/stage-page.ts';
import { reasonRows, tagRow } from '../pages/step-rows.ts';
import { askChoices, askLabel } from '../pages/step-words.ts';
import { commonAct } from './common.ts';
import type { Desk, Place } from './desk.ts';

/**
 * A reading that is no measure: a few answers, one lit, or none until an arrow lights the first; Enter keeps the lit one.
 * Each has its number: one key keeps it, but only lights it where a slip to the next key would be dangerous.
 */
export const choicePlace = (lit: Lit, step: Step, ask: Ask, done: () => void): Place => {
  const least = ask.possible?.[0] ?? 0;
  let at: number | null = null;

  /** What was kept before, else the expected one, else the first; none where the answer is to be looked for. */
  const litAnswer = (desk: Desk): number | null => {
    if (ask.unlit === true) return null;
    const before = desk.view.build.readings.get(`${step.key}#${ask.ask}`)?.value;
    const { expected } = ask;
    const usual = before ?? (expected === undefined ? least : Math.round((expected[0] + expected[1]) / 2));
    return Math.max(0, usual - least);
  };

  const place: Place = {
    stage: () => lit.stage,
    rows: desk => {
      const c = desk.context();
      const answers = askChoices(c.view, c.voice, step, ask.ask);
      const lit_at = at ?? litAnswer(desk);
      at = lit_at === null ? null : Math.min(lit_at, answers.length - 1);
      const head = [titleRow(c), stripRow(c.view, lit.stage), ruleRow(c, `${lit.stage}: measuring`)];
      const foot = [[], echoRow(c), desk.keyRow(place)];
      const top: Row[] = [
        tagRow(c, step),
        [],
        ...wrap(askLabel(c.view, c.voice, step, ask.ask), c.look.columns - 2).map(l => row(' ', ['lead', l])),
        ...answers.flatMap((answer, i) =>
          wrap(answer, c.look.columns - 6).map((l, n) =>
            row(
              ' ',
              [i === at ? 'lead' : 'quiet', n > 0 ? '  ' : i === at ? '▸ ' : '· '],
              ['quiet', n > 0 ? '  ' : `${i + 1} `],
              [i === at ? 'lead' : 'plain', l],
            ),
          ),
        ),
        [],
      ];
      const room = pageRows(c) - head.length - foot.length - top.length;
      return page(c, head, [...top, ...reasonRows(c, step, room)], foot);
    },
    keys: () => [
      ...(at === null && ask.unlit === true
        ? [
            { act: 'next' as const, words: 'light one', shown: '↑ ↓ 1 2' },
            { act: 'open' as const, words: 'keep the lit one' },
          ]
        : [
            { act: 'open' as const, words: 'keep the lit one' },
            { act: 'next' as const, words: 'move', shown: '↑ ↓' },
            { act: 'stage' as const, words: 'keep that one', shown: '1 2 …' },
          ]),
      { act: 'back' },
      { act: 'why' },
      { act: 'hurt' },
      { act: 'help' },
    ],
    act: (desk, act, char) => {
      const answers = askChoices(desk.view, desk.voice, step, ask.ask);
      const now = at ?? litAnswer(desk);
      const keep = (chosen: number): void => {
        if (desk.act({ do: 'read', step: step.key, ask: ask.ask, value: String(chosen + least) })) {
          desk.pop();
          done();
        }
      };
      const numbered = act === 'stage' ? Number(char) - 1 : null;
      if (numbered !== null && numbered < answers.length) {
        if (ask.unlit === true) at = numbered;
        else keep(numbered);
      } else if (numbered !== null) desk.say(`${char}: only 1 to ${answers.length} here`);
      else if (act === 'next') at = now === null ? 0 : Math.min(answers.length - 1, now + 1);
      else if (act === 'previous') at = now === null ? 0 : Math.max(0, now - 1);
      else if (act === 'open' && now === null) desk.say('Enter: choose one first, ↑ or ↓ lights it');
      else if (act === 'open' && now !== null) keep(now);
      else if (act === 'tick') desk.say('Space: Enter keeps the lit one');
      else return commonAct(desk, act, char, lit);
      return true;
    },
  };
  return place;
};
