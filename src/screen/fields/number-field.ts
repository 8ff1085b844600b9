import type { Fault } from '../../quantity/outcome.ts';
import { write } from '../../quantity/write.ts';
import { keyName } from '../keys.ts';
import type { Key } from '../terminal/split-keys.ts';
import type { FieldSpec } from './field-spec.ts';
import { type NumberSigns, numberSigns } from './number-signs.ts';
import { type Understood, understand } from './understand.ts';

export type { FieldSpec } from './field-spec.ts';

export type NumberField = Readonly<{
  open: boolean;
  /** As typed; the sign of a signed number stands first. Kept, greyed, after Esc. */
  text: string;
  /** Came in a paste: several numbers may be in it. */
  pasted: boolean;
  /** The text of the number kept before this one, for ↑. */
  kept: string | null;
  /** The text is the kept one again: keeping it replaces the old entry. */
  reopened: boolean;
  /** Outside the expected band and asked once: the same Enter again keeps it. */
  askedOnce: boolean;
  /** The answer to the last key, for row 22. */
  said: string | null;
}>;

/** What came of a key. */
export type FieldDone =
  | Readonly<{ is: 'typing' }>
  | Readonly<{ is: 'keep'; value: number; typed: string; replaces: boolean }>
  | Readonly<{ is: 'keep-several'; values: readonly number[]; typed: string }>
  /** Tab, or an empty Enter where it takes the default. */
  | Readonly<{ is: 'other-way' }>
  /** The key means here what it means on a page: no number has its letter. */
  | Readonly<{ is: 'act'; act: FieldAct }>
  | Readonly<{ is: 'close' }>;

/** What can be asked for from within a field; the field stays as it is under the page that opens. */
export type FieldAct = 'why' | 'hurt' | 'help' | 'leave';

/** A field just opened; `text` is what was left in it before, `kept` what was kept last. */
export const openField = (before: { text?: string; kept?: string } = {}): NumberField => ({
  open: true,
  text: before.text ?? '',
  pasted: false,
  kept: before.kept ?? null,
  reopened: false,
  askedOnce: false,
  said: null,
});

/** Longer than any number of the bench in any unit; a paste of many stations is longer. */
const LONGEST_TYPED = 40;
const LONGEST_PASTED = 4000;

/** What is understood of the text now. */
export const understood = (field: NumberField, spec: FieldSpec): Understood =>
  understand(field.text, field.pasted, spec);

type Pressed = { field: NumberField; done: FieldDone };

const TYPING: FieldDone = { is: 'typing' };

const say = (field: NumberField, said: string): Pressed => ({ field: { ...field, said }, done: TYPING });

const typed = (field: NumberField, text: string): Pressed => ({
  field: { ...field, text, askedOnce: false, said: null, pasted: field.pasted && text !== '' },
  done: TYPING,
});

const isSigned = (spec: FieldSpec): boolean => spec.sign !== undefined;

const flipped = (text: string): string => (text.startsWith('-') ? text.slice(1) : `-${text}`);

/** The answer to a minus where no number is below zero. */
const NO_SIDE = '-: this number has no side. Backspace takes it off';

const pressSign = (field: NumberField, sign: '+' | '-', spec: FieldSpec): Pressed => {
  const { text } = field;
  if (isSigned(spec)) {
    if (sign === '+' && !text.startsWith('-')) return say(field, '+ is what a bare number has');
    return typed(field, flipped(text));
  }
  // 5'-3 1/2" and 63-1/2 in: a hyphen inside a number joins its parts.
  if (sign === '-' && /['t\d]$/.test(text)) return typed(field, `${text}-`);
  // A minus that was dropped would make of -700 a 700 that nobody typed: it stays, and Enter refuses it.
  if (sign === '-' && text === '') return { field: { ...field, text: '-', said: NO_SIDE }, done: TYPING };
  return say(field, `${sign}: this number has no side`);
};

/** What is typed would be lost: asked once, and any other key withdraws it. */
const LEAVES_WITHOUT = 'q: what is typed is not kept. q again leaves without it, Enter keeps it';

/** Letters that act from within a field. Those of units (km/h, in) act only where nothing is typed: units follow a digit. */
const ACTS: Readonly<Record<string, FieldAct>> = { w: 'why', q: 'leave', i: 'hurt', h: 'help', '?': 'help' };

const actOf = (field: NumberField, char: string, signs: NumberSigns): Pressed | null => {
  const act = ACTS[char];
  if (act === undefined) return null;
  if (act === 'leave' && field.text !== '' && field.said !== LEAVES_WITHOUT)
    return say(field, LEAVES_WITHOUT);
  if (field.text !== '' && signs.any.has(char)) return null;
  return { field: { ...field, said: null }, done: { is: 'act', act } };
};

const pressChar = (field: NumberField, char: string, spec: FieldSpec): Pressed => {
  if (char === '+' || char === '-' || char === '−') return pressSign(field, char === '+' ? '+' : '-', spec);
  // 40x40x3: left out, the numbers would run together into one that nobody typed.
  if (/[x×*]/i.test(char) && /\d/.test(field.text)) return typed(field, field.text + char);
  const signs = numberSigns(spec.quantity);
  const act = actOf(field, char, signs);
  if (act !== null) return act;
  const known = /\d/.test(field.text) ? signs.any : signs.first;
  if (!known.has(char.toLowerCase()))
    return say(field, `${char}: a number is typed in digits. Esc closes the field`);
  if (field.text.length >= LONGEST_TYPED)
    return say(field, 'long enough for one number. Backspace takes the last sign off');
  return typed(field, field.text + char);
};

const pressSpace = (field: NumberField): Pressed => {
  if (!/\d/.test(field.text)) return say(field, 'Space: nothing in an empty field');
  return field.text.endsWith(' ') ? typed(field, field.text) : typed(field, `${field.text} `);
};

const pressPasted = (field: NumberField, char: string): Pressed => {
  if (field.text.length >= LONGEST_PASTED) return say(field, 'the paste is too long: the rest is left out');
  const text = field.text === '' && /\s/.test(char) ? '' : field.text + char;
  return { field: { ...field, text, pasted: true, askedOnce: false, said: null }, done: TYPING };
};

/** "24 more than expected (14 to 17). Enter again keeps it." */
const surprise = (value: number, spec: FieldSpec): string => {
  const [low, high] = spec.expected ?? [value, value];
  const { quantity, system } = spec;
  const short = (number: number): string => write(number, quantity, system, { unit: false });
  const by = value > high ? value - high : low - value;
  const more = value > high ? 'more' : 'less';
  return `${write(by, quantity, system)} ${more} than expected (${short(low)} to ${short(high)}). Enter again keeps it.`;
};

const faultText = ({ message, accepted }: Fault): string =>
  accepted === '' ? message : `${message}. Would do: ${accepted}`;

const pressEnter = (field: NumberField, spec: FieldSpec): Pressed => {
  const meaning = understood(field, spec);
  switch (meaning.is) {
    case 'empty':
      if (spec.emptyTakes !== undefined && field.text === '')
        return { field: { ...field, said: null }, done: { is: 'other-way' } };
      return say(field, spec.whenEmpty ?? 'nothing typed, so nothing is kept');
    case 'fault':
      return say(field, faultText(meaning.fault));
    case 'several':
      return {
        field: { ...field, said: null },
        done: { is: 'keep-several', values: meaning.values, typed: field.text },
      };
    case 'number':
      if (meaning.surprising && !field.askedOnce) {
        return { field: { ...field, askedOnce: true, said: surprise(meaning.value, spec) }, done: TYPING };
      }
      return {
        field: { ...field, said: null },
        done: { is: 'keep', value: meaning.value, typed: field.text.trim(), replaces: field.reopened },
      };
  }
};

const pressUp = (field: NumberField): Pressed =>
  field.kept === null
    ? say(field, '↑: nothing was kept before this one')
    : {
        field: { ...field, text: field.kept, pasted: false, reopened: true, askedOnce: false, said: null },
        done: TYPING,
      };

/**
 * One key in a number field. Nothing is kept before Enter, and a number outside the expected band only after a second one.
 * Letters of a unit are taken after a digit; of the others only those act that no number has. Enter goes past the leaning-glove guard first.
 */
export const press = (field: NumberField, key: Key, spec: FieldSpec): Pressed => {
  if (key.pasted === true) return pressPasted(field, key.char ?? '');
  switch (key.name) {
    case 'char':
      return pressChar(field, key.char ?? '', spec);
    case 'space':
      return pressSpace(field);
    case 'back': {
      // A sign without a number left is no sign.
      const shorter = Array.from(field.text).slice(0, -1).join('');
      return typed(field, shorter === '-' ? '' : shorter);
    }
    case 'enter':
      return pressEnter(field, spec);
    case 'esc':
    case 'ctrl-c':
      return { field: { ...field, open: false, said: null }, done: { is: 'close' } };
    case 'tab':
      return spec.otherWay === undefined
        ? say(field, 'Tab: no other way is offered here')
        : { field: { ...field, said: null }, done: { is: 'other-way' } };
    case 'up':
      return pressUp(field);
    default:
      return say(field, `${keyName(key)}: nothing in a number. Backspace takes the last sign off`);
  }
};
