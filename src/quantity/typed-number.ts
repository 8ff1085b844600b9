import { good, type Outcome, refuse } from './outcome.ts';
import { quoted } from './typed-text.ts';

/**
 * An amount as it was typed: top ÷ bottom (63.5 is 635/10, exact in both), whether it was a whole number, and where the
 * text goes on after it.
 */
export type Amount = Readonly<{ top: number; bottom: number; whole: boolean; end: number }>;

/** No figure of a frame is near it; past it a key was stuck. */
const LARGEST = 1e12;

const RUN = /(?:\d[\d.,]*|[.,]\d[\d.,]*)(?:[eE][+-]?\d+)?/y;
const FRACTION = /(?:(\d+)(?: |-))?(\d+) ?\/ ?(\d+)/y;

/** The refusal of a value that is past all sizes, or was so small that it became 0; else null. */
const beyond = (value: number, typed: string, accepted: string): Outcome<never> | null => {
  if (!(Math.abs(value) <= LARGEST)) {
    return refuse('out-of-range', null, `${quoted(typed)} is too large`, accepted);
  }
  if (value === 0 && /^[0.,]*[1-9]/.test(typed)) {
    return refuse('out-of-range', null, `${quoted(typed)} is too small to tell from 0`, accepted);
  }
  return null;
};

/** A decimal as a fraction of whole numbers, or over 1 where it has more digits than a float keeps. */
const asFraction = (digits: string): { top: number; bottom: number } => {
  const [whole = '', places = ''] = digits.split('.');
  const exact = /^[\d.]+$/.test(digits) && whole.length + places.length <= 15;
  return exact
    ? { top: Number(`${whole}${places}`), bottom: 10 ** places.length }
    : { top: Number(digits), bottom: 1 };
};

/** The digits with a point as the decimal sign, or a refusal where two readings are possible. */
const decimal = (run: string, accepted: string): Outcome<string> => {
  const [mantissa = '', exponent] = run.split(/[eE]/);
  const marks = [...mantissa.replace(/\d/g, '')];
  const joined = (digits: string) => good(exponent === undefined ? digits : `${digits}e${exponent}`);
  if (marks.length === 0) return joined(mantissa);

  const [before = '', after = ''] = mantissa.split(/[.,]/);
  if (marks.length === 1) {
    // A point is always the decimal sign: 1.125 in is a common size. A comma before three digits may be a thousands mark.
    if (marks[0] === ',' && /^[1-9]\d{0,2}$/.test(before) && after.length === 3) {
      const point = Number(`${before}.${after}`);
      return refuse(
        'not-a-number',
        null,
        `${mantissa} has two readings: ${before}${after} or ${point}?`,
        `${before}${after} or ${point}, without a mark for thousands`,
      );
    }
    return joined(`${before}.${after}`);
  }

  const last = mantissa.lastIndexOf(marks.at(-1) ?? '');
  const lastOnce = marks.filter(mark => mark === marks.at(-1)).length === 1;
  const groups = mantissa.split(/[.,]/).slice(1, lastOnce ? -1 : undefined);
  if (groups.every(group => group.length === 3)) {
    const whole = mantissa.slice(0, lastOnce ? last : undefined).replace(/[.,]/g, '');
    const plain = lastOnce ? `${whole}.${mantissa.slice(last + 1)}` : whole;
    return refuse(
      'not-a-number',
      null,
      `${quoted(mantissa)} has a mark for thousands: ${plain}?`,
      `${plain}, without a mark for thousands`,
    );
  }
  return refuse('not-a-number', null, `${quoted(mantissa)} has more than one decimal sign`, accepted);
};

/**
 * The amount that begins at `start`: `63`, `63.5`, `63,5`, `.5`, `5/8`, `63 1/2`, `63-1/2`. No sign.
 * Null where no amount begins; a refusal where one begins that cannot be meant.
 *
 * @param text plain text, see plainText
 * @param accepted what would do instead, for the refusal
 */
export const amountAt = (text: string, start: number, accepted: string): Outcome<Amount> | null => {
  FRACTION.lastIndex = start;
  const fraction = FRACTION.exec(text);
  if (fraction !== null) {
    const [typed, whole, top = '', bottom = ''] = fraction;
    const end = start + typed.length;
    if (Number(bottom) === 0) {
      return refuse('not-a-number', null, `${quoted(typed)} divides by 0`, accepted);
    }
    if (/^ ?\/|^[.,\d]/.test(text.slice(end))) {
      return refuse('not-a-number', null, `${quoted(text)} is not one fraction`, accepted);
    }
    if (whole !== undefined && Number(top) >= Number(bottom)) {
      return refuse('not-a-number', null, `${quoted(typed)}: ${top}/${bottom} is a whole or more`, accepted);
    }
    const amount = { top: Number(whole ?? 0) * Number(bottom) + Number(top), bottom: Number(bottom) };
    return beyond(amount.top / amount.bottom, typed, accepted) ?? good({ ...amount, whole: false, end });
  }

  RUN.lastIndex = start;
  const run = RUN.exec(text)?.[0];
  if (run === undefined) return null;
  const digits = decimal(run, accepted);
  if (!digits.ok) return digits;
  const amount = asFraction(digits.value);
  const whole = /^\d+$/.test(run);
  return beyond(Number(digits.value), run, accepted) ?? good({ ...amount, whole, end: start + run.length });
};
