import { good, type Outcome, refuse } from './outcome.ts';

/** One number has fewer characters than this; a longer text is something pasted by mistake. */
const LONGEST = 64;

const FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** Signs that look alike on paper and differ by keyboard, each with the one that the readers know. */
const LOOK_ALIKES: readonly (readonly [RegExp, string])[] = [
  [/[\u2010-\u2013\u2212\ufe63\uff0d]/g, '-'],
  [/[\ufe62\uff0b]/g, '+'],
  [/[\u2044\u2215]/g, '/'],
  [/[\u2018\u2019\u201b\u2032\u02b9\u00b4`]/g, "'"],
  [/[\u201c\u201d\u201f\u2033\u02ba]/g, '"'],
  [/''/g, '"'],
  [/\u2103/g, '°C'],
  [/\u2109/g, '°F'],
  [/[\u00ba\u02da]/g, '°'],
  [/[\u00b5\u03bc]/g, 'u'],
];

/**
 * The text as it can be shown again in a message: invisible, combining and foreign characters become "?", and a long
 * text is cut. Nothing typed can move the cursor or turn the line around.
 */
export const quoted = (text: string): string => {
  const shown = text.slice(0, LONGEST).replace(/[^\x20-\x7e\u00b0\u00b2-\u00b7\u00bc-\u00be]/gu, '?');
  const cut = shown.length > 24 || text.length > LONGEST ? `${shown.slice(0, 24)}...` : shown;
  return `"${cut}"`;
};

/**
 * What was typed, in the plain signs that the readers know: unicode minus and plus, primes, curly quotes and whole
 * fractions become their keyboard twins. Refuses an empty text, one too long for a number, and control characters.
 *
 * @param accepted what would do instead, for the refusal
 */
export const plainText = (text: string, accepted: string): Outcome<string> => {
  if (text.length > LONGEST) return refuse('not-a-number', null, 'that is too long for one number', accepted);
  if (/\p{C}/u.test(text)) {
    return refuse('not-a-number', null, `${quoted(text)} has characters that cannot be seen`, accepted);
  }
  // A fraction sign stands apart on both sides, or 63½ would become 631/2 and ½5 would become 1/25.
  let plain = text.replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, sign => ` ${FRACTIONS[sign] ?? sign} `);
  for (const [signs, twin] of LOOK_ALIKES) plain = plain.replace(signs, twin);
  plain = plain.replace(/\s+/gu, ' ').trim();
  if (plain === '') return refuse('not-a-number', null, 'nothing was typed', accepted);
  return good(plain);
};
