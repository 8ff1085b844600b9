import { REFUSED_USES } from '../../coach/decide/answer.ts';
import { preview } from '../../coach/decide/decide.ts';
import { openFindings, type View } from '../../coach/view.ts';
import { row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import type { DesignField } from '../../ramp/design.ts';
import { THINNEST_SLIT_WALL } from '../../ramp/problems.ts';
import { say } from '../../words/say.ts';
import { fieldRows } from '../fields/field-rows.ts';
import { openField, understood } from '../fields/number-field.ts';
import { agreeRows, effectRows, givesRows } from '../pages/begin-rows.ts';
import { designInBoth } from '../pages/design-words.ts';
import { echoRow, page, ruleRow, titleRow } from '../pages/frame.ts';
import { findingText, stepText } from '../pages/step-words.ts';
import { beginField } from './begin-field.ts';
import { answerFor, isAnswered, PARTS } from './begin-parts.ts';
import { CHANGE_DESIGN, commonAct, goNow } from './common.ts';
import type { Part, Said } from './design-part.ts';
import type { Desk, Place } from './desk.ts';

/** Those of the beginning. */
const QUESTIONS = [...new Set(PARTS.filter(p => p.later !== true).map(p => p.question))];

/** The second size in words, for the question that asks how much it is. */
const WHICH: Readonly<Record<string, string>> = {
  exit: 'exit angle at the lip',
  run: 'run along the ground',
  radius: 'radius of the deck top',
  arc: 'length along the deck',
};

/** What an answer would make of the build that is there: asked once, and only when it makes something of it. */
type Waiting = Readonly<{ answer: { field: string; value: unknown }; effects: readonly string[] }>;

/**
 * The questions of a build's beginning; each answer is on disk as it is given. With `only`, one of them again: what a change
 * does to steel that is cut is said before it is kept.
 */
export const beginPlace = (desk: Desk, only?: string): Place => {
  let said: Said = {};
  let at = 0;
  let lit = 0;
  let waiting: Waiting | null = null;

  const shown = (d: Desk): readonly Part[] =>
    PARTS.filter(
      p =>
        (only === undefined ? p.later !== true : p.question === only) &&
        (p.when === undefined || p.when(said, d.view)),
    );

  /** The ramp as it would be with what is typed: the drawing bends along. */
  const trial = (d: Desk): View => {
    const part = shown(d)[at];
    if (part?.is !== 'number' || place.field == null) return d.view;
    const typed = understood(place.field.field, place.field.spec);
    if (typed.is !== 'number') return d.view;
    const answer = answerFor(part, { ...said, [part.id]: `${typed.value} ${part.inner}` }, d.view);
    if (answer === null) return d.view;
    const seen = preview(d.view, { do: 'answer', ...answer });
    return seen.ok ? seen.value : d.view;
  };

  const openPart = (d: Desk): void => {
    const part = shown(d)[at];
    place.field = null;
    lit = 0;
    if (part?.is === 'choice') {
      const now = part.now(d.view);
      lit = Math.max(0, part.choices(said, d.view).indexOf(now));
      return;
    }
    if (part?.is !== 'number') return;
    const { spec, parts, usual } = beginField(part, said, d.view, d.system);
    place.field = {
      field: openField(),
      spec,
      whyWords: 'words',
      keep: (_v, typed) => given(d, part, d.typedFor(typed, part.as)),
      several: values =>
        givenAll(
          d,
          parts,
          values.map((v, i) => `${v} ${parts[i]?.inner ?? ''}`),
        ),
      otherWay: () => givenAll(d, parts, usual),
      before: () => back(d),
      escape: { words: only !== undefined && at === 0 ? 'back' : 'one back', go: () => back(d) },
    };
  };

  /** One part is answered, or all the numbers of one answer at once. Refused, the first of them is asked again. */
  const givenAll = (d: Desk, all: readonly Part[], values: readonly string[]): void => {
    const last = all.at(-1);
    if (last === undefined) return;
    const now = { ...said, ...Object.fromEntries(all.map((p, i) => [p.id, values[i] ?? ''])) };
    const answer = answerFor(last, now, d.view);
    if (answer !== null && only !== undefined && isAsItWas(d, answer)) {
      d.pop();
      d.say('As it was: nothing is changed.');
      return;
    }
    if (answer !== null && only !== undefined) {
      const effects = effectsOf(d, answer);
      if (effects.length > 0) {
        said = now;
        at += all.length - 1;
        place.field = null;
        waiting = { answer, effects };
        return;
      }
    }
    if (answer !== null && !d.act({ do: 'answer', ...answer })) {
      const why = d.message;
      openPart(d);
      d.say(why);
      return;
    }
    if (answer !== null && only === undefined) d.say(`Kept: ${keptAnswer(d, last)}.`);
    said = now;
    at += all.length;
    if (only !== undefined && shown(d)[at] === undefined) {
      d.pop();
      return;
    }
    openPart(d);
  };

  const given = (d: Desk, part: Part, value: string): void => givenAll(d, [part], [value]);

  /** The answer just kept, in both systems. */
  const keptAnswer = (d: Desk, part: Part): string => {
    const value = d.view.build.answers[part.field];
    const words = designInBoth(part.field, value, d.system);
    return words.startsWith(part.question) || part.field === 'shape' ? words : `${part.question} ${words}`;
  };

  /** An answer given once more as it stands is no change, and no entry. */
  const isAsItWas = (d: Desk, answer: Waiting['answer']): boolean => {
    const seen = preview(d.view, { do: 'answer', ...answer });
    const kept = (view: View): string | undefined =>
      JSON.stringify(view.build.answers[answer.field as DesignField]);
    return seen.ok && kept(d.view) !== undefined && kept(seen.value) === kept(d.view);
  };

  /** What would be new to fix, and which ticks would turn stale: the real thing without the append. */
  const effectsOf = (d: Desk, answer: Waiting['answer']): readonly string[] => {
    const seen = preview(d.view, { do: 'answer', ...answer });
    if (!seen.ok) return [];
    const known = new Set(d.view.findings.map(f => f.key));
    const stale = new Set(d.view.steps.filter(s => s.state === 'stale').map(s => s.key));
    return [
      ...openFindings(seen.value)
        .filter(f => !known.has(f.key) && f.severity !== 'watch')
        .map(f => findingText(d.voice, f, 'title') ?? f.key),
      ...seen.value.steps
        .filter(s => s.state === 'stale' && !stale.has(s.key))
        .map(s => `stale: ${stepText(seen.value, d.voice, s, 'title') ?? s.key}`),
    ];
  };

  const back = (d: Desk): void => {
    if (at === 0 && only !== undefined) {
      d.pop();
      return;
    }
    if (at === 0) {
      openPart(d);
      d.say('This is the first question. q leaves; what you answered is kept.');
      return;
    }
    at--;
    openPart(d);
  };

  const rows = (d: Desk): Row[] => {
    const c = d.context();
    const parts = shown(d);
    const part = parts[at];
    const view = trial(d);
    const question = part === undefined ? QUESTIONS.length : QUESTIONS.indexOf(part.question) + 1;
    const asked = only === undefined || QUESTIONS.includes(only) ? QUESTIONS : [only];
    const trail = row(
      only === undefined ? ' beginning: ' : ' design: ',
      ...asked.flatMap((q, i) => [
        [part?.question === q ? 'lit' : 'quiet', part?.question === q ? q.toUpperCase() : q] as const,
        i === asked.length - 1 ? '' : ', ',
      ]),
    );
    const head = [
      titleRow(c),
      trail,
      ruleRow(
        c,
        part === undefined
          ? 'all answered'
          : asked === QUESTIONS
            ? `question ${question} of ${QUESTIONS.length}`
            : 'asked only here',
        only === undefined ? 'answers can be changed until you cut' : 'what a change does is said first',
      ),
    ];
    const top: Row[] = [];
    if (waiting !== null) {
      top.push(...effectRows(waiting.effects));
    } else if (part === undefined) {
      top.push(...agreeRows(c));
    } else {
      const which = WHICH[said.second ?? 'exit'] ?? 'exit angle';
      top.push(row(' ', ['lead', say(c.voice, { words: `questions.${part.words}.ask`, fills: { which } })]));
      top.push(
        ...wrap(
          say(c.voice, {
            words: `questions.${part.words}.about`,
            fills: { least: { v: THINNEST_SLIT_WALL, as: 'thickness' } },
          }),
          c.look.columns - 4,
        ).map(l => row('   ', ['quiet', l])),
      );
      if (part.is === 'number' && place.field != null)
        top.push(...fieldRows(place.field.field, place.field.spec, c.look));
      if (part.is === 'choice') {
        const choices = part.choices(said, d.view);
        top.push(
          ...choices.map((choice, i) =>
            row(' ', [
              i === lit ? 'lead' : 'plain',
              `${i === lit ? '▸' : '·'} ${say(c.voice, { words: `questions.${part.words}.choices.${choice}` })}`,
            ]),
          ),
        );
      }
    }
    const side = givesRows(c, view, c.look.rows - 1 - head.length - top.length - 3);
    return page(
      c,
      head,
      [...top, ruleRow(c, 'what that gives', 'drawn to scale'), ...side],
      [echoRow(c), d.textRow() ?? d.keyRow(place)],
    );
  };

  const place: Place = {
    field: null,
    /** Once all is answered any answer can be changed, and what is not asked at the beginning is looked over. */
    get own() {
      return only === undefined && shown(desk)[at] === undefined ? [CHANGE_DESIGN] : [];
    },
    rows,
    keys: d => {
      const part = shown(d)[at];
      if (waiting !== null)
        return [
          { act: 'open', words: 'change it' },
          { act: 'back', words: 'leave it as it was' },
        ];
      if (part === undefined)
        return [
          { act: 'open', words: 'agree, open the plan' },
          { act: 'back', words: 'change an answer' },
          { act: 'leave' },
        ];
      return [
        { act: 'open', words: 'take the lit one' },
        { act: 'next', words: 'move', shown: '↑ ↓' },
        { act: 'back', words: 'one back' },
        { act: 'why', words: 'words' },
        { act: 'leave' },
      ];
    },
    act: (d, act, char) => {
      const part = shown(d)[at];
      if (waiting !== null) {
        const { answer } = waiting;
        if (act === 'open') {
          waiting = null;
          if (d.act({ do: 'answer', ...answer })) d.pop();
          else openPart(d);
          return true;
        }
        if (act === 'back') {
          waiting = null;
          openPart(d);
          return true;
        }
        return false;
      }
      if (act === 'back') {
        back(d);
        return true;
      }
      if (part === undefined) {
        if (act === 'open') {
          if (d.act({ do: 'agree' })) goNow(d);
          return true;
        }
        if (act === 'design') {
          d.push(d.around.ways.design());
          return true;
        }
        if (act === 'hurt' || act === 'help' || act === 'units' || act === 'journal')
          return commonAct(d, act, char, { stage: 'plan', step: null, item: 0 });
        return false;
      }
      if (part.is === 'number') {
        // The field was closed: the keys of the page act until it is opened again.
        if (act === 'open') openPart(d);
        else if (act === 'leave') return false;
        // Why it is asked stands under the question; what a word means is told on a page.
        else if (act === 'why') d.push(d.around.ways.glossary('plan'));
        else return commonAct(d, act, char, { stage: 'plan', step: null, item: 0 });
        return true;
      }
      const choices = part.choices(said, d.view);
      if (act === 'next') lit = Math.min(choices.length - 1, lit + 1);
      else if (act === 'previous') lit = Math.max(0, lit - 1);
      // Who types the answer would choose the lit one with the space between two words.
      else if (act === 'tick') d.say('Space: Enter takes the lit one');
      else if (act === 'open') {
        const choice = choices[lit] ?? '';
        if (REFUSED_USES.includes(choice)) d.act({ do: 'answer', field: 'use', value: choice });
        else given(d, part, choice);
      } else if (act === 'why') d.push(d.around.ways.glossary('plan'));
      else if (act === 'hurt' || act === 'units' || act === 'help')
        return commonAct(d, act, char, { stage: 'plan', step: null, item: 0 });
      else return false;
      return true;
    },
  };

  // Takes up where the answers end: a question whose field is answered is not asked again.
  const start = shown(desk);
  const open = start.findIndex(p => !isAnswered(p, desk.view.build.answers));
  at = only !== undefined ? 0 : open < 0 ? start.length : open;
  openPart(desk);
  return place;
};
