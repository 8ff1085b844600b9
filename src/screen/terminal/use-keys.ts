import { type Key as InkKey, useInput } from 'ink';
import { useRef } from 'react';
import { type Key, splitKeys } from './split-keys.ts';

const NAMED: readonly (readonly [keyof InkKey, Key['name']])[] = [
  ['upArrow', 'up'],
  ['downArrow', 'down'],
  ['leftArrow', 'left'],
  ['rightArrow', 'right'],
  ['pageUp', 'page-up'],
  ['pageDown', 'page-down'],
  ['home', 'home'],
  ['end', 'end'],
  ['return', 'enter'],
  ['backspace', 'back'],
  ['delete', 'back'],
];

/** A control sequence Ink did not know, without its escape sign. */
const BARE_SEQUENCE = /^\[[0-?]+[ -/]*[@-~]$|^\[[A-Z]$/;

/** What Ink made of a chunk, back as the text a terminal would send for it, so that one splitter reads everything. */
const asSent = (input: string, key: InkKey): string => {
  if (key.ctrl && /^[a-z]$/.test(input)) return String.fromCharCode(input.charCodeAt(0) - 96);
  if (key.escape) return '\u001B';
  if (key.tab) return key.shift ? '' : '\t';
  // Alt and a letter is Escape and the letter in one chunk; both are keys of their own here.
  if ((key.meta && input !== '') || BARE_SEQUENCE.test(input)) return `\u001B${input}`;
  return input;
};

/**
 * Hands on every key of the terminal, several at once when they came in one chunk. To be mounted once, at the root: Ink
 * gives each key to every listener. Two calls may come before the next drawing, so what `onKeys` changes must be changed
 * by a reducer, not from what it saw when it was made.
 */
export const useKeys = (onKeys: (keys: readonly Key[]) => void): void => {
  const pasting = useRef(false);
  useInput((input, key) => {
    const named = NAMED.find(([flag]) => key[flag] === true);
    if (named !== undefined) {
      // A bare line end is Enter to Ink; inside a paste it parts two lines.
      if (!pasting.current) onKeys([{ name: named[1] }]);
      else if (named[1] === 'enter') onKeys([{ name: 'char', char: '\n', pasted: true }]);
      return;
    }
    const { keys, pasting: goesOn } = splitKeys(asSent(input, key), pasting.current);
    pasting.current = goesOn;
    if (keys.length > 0) onKeys(keys);
  });
};
