import type { View } from '../../coach/view.ts';
import { padTo, row } from '../../drawing/cells.ts';
import { write } from '../../quantity/write.ts';
import { say, type Voice } from '../../words/say.ts';
import { listWindow } from '../fields/list-window.ts';
import { sectionWords } from '../pages/design-words.ts';
import { echoRow, page, ruleRow, stripRow, titleRow } from '../pages/frame.ts';
import { PARTS } from './begin-parts.ts';
import { beginPlace } from './begin-place.ts';
import { commonAct } from './common.ts';
import type { Place } from './desk.ts';

const QUESTIONS = [...new Set(PARTS.map(p => p.question))];

/** What a question is answered with now, in words. */
const answerNow = (view: View, voice: Voice, question: string): string => {
  const d = view.ramp.design;
  const { system } = voice;
  const len = (v: number): string => write(v, 'length', system, { feet: true });
  const thick = (v: number): string => write(v, 'thickness', system);
  switch (question) {
    case 'purpose':
      return d.use;
    case 'lip':
      return len(d.arc.height_mm);
    case 'shape':
      return `exit ${write(d.arc.exit_rad, 'angle', system)}, run ${len(d.arc.run_mm)}, radius ${len(d.arc.radius_mm)}`;
    case 'width':
      return len(d.width);
    case 'tube':
      return sectionWords(d.tube, system);
    case 'slits':
      return `${d.cutter.kind}, ${thick(d.cutter.kerf_mm)}`;
    case 'rider':
      return write(d.rider, 'mass', system);
    case 'door':
      return `${len(d.door.width_mm)} x ${len(d.door.height_mm)}`;
    case 'deck':
      return d.deck.kind === 'sheet'
        ? `${d.deck.layers} layers of ${thick(d.deck.layer_mm)} sheet`
        : `boards ${thick(d.deck.thickness_mm)} x ${len(d.deck.board_mm)}`;
    case 'first':
      return d.first ? 'yes' : 'no';
    case 'ground':
      return d.ground;
    case 'straight':
      return d.straight === 0 ? 'none' : len(d.straight);
    case 'uprights':
      return `at most ${len(d.spacing)} apart`;
    case 'diagonals':
      return `in bays of ${len(d.diagonals)} and more`;
    case 'rails':
      return String(view.ramp.rails.length);
    case 'posts':
      return sectionWords(d.post, system);
    case 'bending':
      return say(voice, { words: `questions.route.choices.${d.route}` });
    case 'order':
      return say(voice, { words: `questions.sequence.choices.${d.sequence}` });
    case 'tolerance':
      return say(voice, { words: `questions.tolerance.choices.${d.tolerance}` });
    case 'disc':
      return len(d.grinder);
    case 'clamps':
      return String(d.clamps);
    case 'standard':
      return say(voice, { words: `questions.standard.choices.${d.standard}` });
    default:
      return '';
  }
};

/** The answers of the beginning, each to be changed: what a change does to steel that is cut is said first. */
export const designPlace = (): Place => {
  let lit = 0;
  const place: Place = {
    stage: () => 'plan',
    rows: desk => {
      const c = desk.context();
      // Head, note and foot take nine rows.
      const { from, to } = listWindow(QUESTIONS.length, lit, c.look.rows - 9);
      const rows = QUESTIONS.slice(from, to).map((q, k) =>
        row(
          ' ',
          [from + k === lit ? 'lead' : 'quiet', from + k === lit ? '▸ ' : '· '],
          [from + k === lit ? 'lead' : 'plain', padTo(q, 12)],
          answerNow(c.view, c.voice, q),
        ),
      );
      const more = to < QUESTIONS.length ? ', more below' : '';
      return page(
        c,
        [
          titleRow(c),
          stripRow(c.view, 'plan'),
          ruleRow(c, 'the design, as it was answered', `${lit + 1} of ${QUESTIONS.length}${more}`),
        ],
        [
          ...rows,
          [],
          row(' ', ['quiet', 'Before a change is kept, it is said what it does to steel that is cut.']),
        ],
        [[], echoRow(c), desk.keyRow(place)],
      );
    },
    keys: () => [
      { act: 'open', words: 'change the lit one' },
      { act: 'next', words: 'move', shown: '↑ ↓' },
      { act: 'back' },
      { act: 'leave' },
    ],
    act: (desk, act, char) => {
      if (act === 'next') lit = Math.min(QUESTIONS.length - 1, lit + 1);
      else if (act === 'previous') lit = Math.max(0, lit - 1);
      else if (act === 'open') desk.push(beginPlace(desk, QUESTIONS[lit] ?? 'lip'));
      else return commonAct(desk, act, char, { stage: 'plan', step: null, item: 0 });
      return true;
    },
  };
  return place;
};
