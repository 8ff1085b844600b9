import { asciiText } from '../../drawing/ascii-twin.ts';
import { cellWidth, cutRow, cutTo, padTo, row, wrap } from '../../drawing/cells.ts';
import type { Look, Row, Span } from '../../drawing/row.ts';
import { tallDigits } from '../../drawing/tall.ts';
import { inBoth } from '../../quantity/both.ts';
import { isInFeet } from '../../quantity/figure-parts.ts';
import { tall } from '../../quantity/figure-text.ts';
import { usualLabel } from '../../quantity/usual.ts';
import { write } from '../../quantity/write.ts';
import type { FieldSpec, Side } from './field-spec.ts';
import { type NumberField, understood } from './number-field.ts';
import type { Understood } from './understand.ts';

/** Where the words beside the figure begin; a wider figure moves them on. */
const NOTES_AT = 27;
const INDENT = 2;

type Figure = Readonly<{ digits: string; unit: string; isUnderstood: boolean }>;

const isSided = (spec: FieldSpec): boolean => spec.sign !== undefined && spec.sign !== 'plain';

/** A number typed in the build's own unit stands as it was typed, so that the echo never rounds what the hand wrote. */
const BARE = /^[+\-−]?[\d.,/ ½⅓⅔¼¾⅛⅜⅝⅞]+$/;

/** Nothing is typed yet, and Enter takes the default. */
const offersDefault = (field: NumberField, spec: FieldSpec): boolean =>
  field.open && field.text === '' && spec.emptyTakes !== undefined;

/** The lowest and highest expected, before anything is typed. */
const usualRange = ({ expected, quantity, system }: FieldSpec): string => {
  if (expected === undefined || !expected.every(Number.isFinite)) return '';
  const [low, high] = expected.map(v => write(v, quantity, system, { unit: false }));
  const most = write(expected[1], quantity, system);
  return low === high ? `usually ${most}` : `usually ${low} to ${most}`;
};

const figureOf = (field: NumberField, meaning: Understood, spec: FieldSpec): Figure => {
  const { quantity, system } = spec;
  const unit = usualLabel(quantity, system);
  const text = field.text.trim();
  if (offersDefault(field, spec))
    return { ...tall(spec.emptyTakes ?? 0, quantity, system), isUnderstood: false };
  if (meaning.is === 'several')
    return { digits: String(meaning.values.length), unit: 'numbers', isUnderstood: true };
  if (meaning.is !== 'number') return { digits: field.pasted ? '' : text, unit, isUnderstood: false };
  const signed = isSided(spec);
  if (!BARE.test(text)) {
    // A reading typed in inches is shown to a tenth of a millimetre: half a millimetre would change the number that is kept.
    const step = quantity === 'length' && system === 'metric' ? { step: 0.1 } : {};
    return { ...tall(meaning.value, quantity, system, { sign: signed, ...step }), isUnderstood: true };
  }
  const size = text.replace(/^[+\-−] ?/, '').replace(',', '.');
  const sign = meaning.value < 0 ? '-' : meaning.value > 0 && signed ? '+' : '';
  return { digits: sign + size, unit, isUnderstood: true };
};

/** The side a signed number lies on: of its value, or of a sign that stands alone so far. */
const sideOf = (
  field: NumberField,
  meaning: Understood,
  spec: FieldSpec,
): { side: Side; other: Side } | 'line' | null => {
  if (spec.sign === undefined || spec.sign === 'plain') return null;
  const { plus, minus } = spec.sign;
  if (meaning.is === 'several') return null;
  if (meaning.is === 'number' && meaning.value === 0) return 'line';
  return field.text.startsWith('-') || (meaning.is === 'number' && meaning.value < 0)
    ? { side: minus, other: plus }
    : { side: plus, other: minus };
};

const sizeText = ({ digits, unit }: Figure): string =>
  digits.replace(/^[+-]/, '') + (unit === '"' ? unit : '');

/** Inches typed bare, as the tape has them where it counts feet: ten feet meant and ten inches kept are seen at once. */
const inFeet = (field: NumberField, value: number, { quantity, system }: FieldSpec): string => {
  if (system !== 'us' || !BARE.test(field.text.trim())) return '';
  if (quantity !== 'length' && quantity !== 'reach') return '';
  const feet = write(value, quantity, 'us', { feet: true });
  return feet.includes("'") ? `= ${feet} ` : '';
};

/** The words beside the three rows of the figure. */
const notes = (field: NumberField, meaning: Understood, figure: Figure, spec: FieldSpec): readonly Span[] => {
  const { quantity, system } = spec;
  if (meaning.is === 'several' && spec.together !== undefined) {
    const said = meaning.values.map((v, i) => `${spec.together?.[i]?.name} ${write(v, quantity, system)}`);
    return [
      { text: said.slice(0, 2).join(', '), role: 'lead' },
      { text: said.slice(2).join(', '), role: 'lead' },
      { text: 'Enter takes them.' },
    ];
  }
  if (meaning.is === 'several') {
    const question = `${meaning.values.length} numbers: ${spec.several ?? ''}?`;
    return [{ text: question, role: 'lead' }, { text: 'Enter takes them, Esc leaves them.' }];
  }
  const asks: Span = { text: spec.asks ?? '' };
  if (offersDefault(field, spec)) {
    const takes =
      spec.emptyWords ??
      write(spec.emptyTakes ?? 0, quantity, system, {
        feet: isInFeet(spec.emptyTakes ?? 0, quantity, system),
      });
    const other = spec.emptyWords === undefined ? ` ${inBoth(spec.emptyTakes ?? 0, quantity, system)}` : '';
    return [asks, { text: `Enter takes ${takes}${other}`.trimEnd(), role: 'quiet' }, { text: '' }];
  }
  if (field.text === '') return [asks, { text: usualRange(spec), role: 'quiet' }, { text: '' }];
  // Where the side is named in words, the size alone follows.
  const shown = (value: number): number => (isSided(spec) ? Math.abs(value) : value);
  const echo: Span = {
    text:
      meaning.is === 'number'
        ? `${inFeet(field, shown(meaning.value), spec)}${inBoth(shown(meaning.value), quantity, system)}`
        : '',
  };
  const fault: Span = { text: meaning.is === 'fault' ? meaning.fault.message : '', role: 'quiet' };
  const side = sideOf(field, meaning, spec);
  if (side === null || field.text === '') return [asks, fault, echo];
  if (side === 'line') return [{ text: 'ON THE LINE', role: 'lead' }, asks, echo];
  // The size as it stands beside it, so that one number is not shown in two roundings.
  const size = meaning.is === 'number' ? sizeText(figure) : '';
  const seen = size === '' ? fault : { text: side.side.seen.replace('{v}', size) };
  return [{ text: side.side.name, role: 'lead' }, seen, echo];
};

/** Three notes in the three rows of the figure: the first goes on below where it is long, for two of the others are seldom both said. */
const inThree = (said: readonly Span[], columns: number): readonly Span[] => {
  const [first, ...others] = said;
  if (first === undefined || cellWidth(first.text) <= columns) return said;
  const lines = wrap(first.text, columns).map(text => ({ ...first, text }));
  const rest = others.filter(({ text }) => text !== '');
  return lines.length + rest.length > 3 ? said : [...lines, ...rest];
};

/** Units that are said, not signed, in a sentence. */
const NAMED: Readonly<Record<string, string>> = { in: 'inches', ft: 'feet', '°': 'degrees', lb: 'pounds' };

const hint = (field: NumberField, meaning: Understood, spec: FieldSpec): string => {
  const side = sideOf(field, meaning, spec);
  if (side !== null && side !== 'line' && field.text !== '')
    return `press - if ${side.other.when}: ${side.other.name}`;
  const unit = usualLabel(spec.quantity, spec.system);
  return unit === '' ? '' : `bare numbers are ${NAMED[unit] ?? unit} in this build`;
};

const shownText = (field: NumberField, columns: number, ascii: boolean): string => {
  const text = field.text.replace(/\s+/g, ' ');
  if (cellWidth(text) <= columns) return text;
  // The end is where the hand is.
  return field.pasted ? cutTo(text, columns, ascii) : `${ascii ? '..' : '…'}${text.slice(-(columns - 2))}`;
};

/**
 * The four rows of a number field: the figure tall with what it means beside it (its side, what the eye sees, the other
 * system), and below it what was typed. A field that was closed is greyed.
 */
export const fieldRows = (field: NumberField, spec: FieldSpec, look: Look): Row[] => {
  const { ascii, columns } = look;
  const plain = (text: string): string => (ascii ? asciiText(text) : text);
  const meaning = understood(field, spec);
  const figure = figureOf(field, meaning, spec);
  const digits = tallDigits(plain(figure.digits), ascii);
  const role = field.open && figure.isUnderstood ? 'plain' : 'quiet';
  const unit = plain(figure.unit);
  const wide = INDENT + cellWidth(digits[0]) + 2 + cellWidth(unit) + 2;
  const at = Math.max(NOTES_AT, wide);
  const beside = inThree(
    notes(field, meaning, figure, spec).map(note => ({ ...note, text: plain(note.text) })),
    columns - at,
  );

  const figureRows = digits.map((line, index) => {
    const left = `${' '.repeat(INDENT)}${line}${index === 2 && unit !== '' ? `  ${unit}` : ''}`;
    return row([role, padTo(left, at)], beside[index] ?? '');
  });

  const room = NOTES_AT - ' typed  '.length - 2;
  const cursor = field.open ? '_' : '';
  const left = padTo(` typed  ${plain(shownText(field, room, ascii))}${cursor}`, NOTES_AT);
  const words = field.open ? hint(field, meaning, spec) : 'closed, not kept. Enter opens it again';
  const typedRow = row([field.open ? 'plain' : 'quiet', left], ['quiet', plain(words)]);
  return [...figureRows, typedRow].map(line => cutRow(line, columns, ascii));
};
