import { cleanText } from '../../drawing/clean-text.ts';

/** One line of free text after a key or a paste, and whether Enter came with it. */
export type TypedLine = Readonly<{ text: string; enter: boolean }>;

/**
 * What to make of the text a text input proposes. Quick typing and pastes put line ends and the marks round a paste into
 * it: a line end at its end, typed, is Enter; any other control character is a space.
 * @param proposed the whole text as the input would have it.
 * @param before the text so far.
 */
export const typedLine = (proposed: string, before: string): TypedLine => {
  const isPaste = /\[20[01]~/.test(proposed) && !/\[20[01]~/.test(before);
  const unmarked = isPaste ? proposed.replace(/\u001B?\[20[01]~/g, '') : proposed;
  const enter = !isPaste && /[\r\n]$/.test(unmarked);
  const text = cleanText(unmarked.replace(/[\r\n]+$/, '').replace(/\r\n/g, '\n'));
  return { text, enter };
};
