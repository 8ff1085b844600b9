import { graphemes } from '../../drawing/cells.ts';
import { cleanText } from '../../drawing/clean-text.ts';
import type { Key } from '../terminal/split-keys.ts';

/** One line of free text being typed (a reason, a remark, a name), and how many of its signs stand before the cursor. */
export type TypedLine = Readonly<{ text: string; at: number }>;

/** As long as an entry takes. */
const LONGEST = 2000;

export const typedLine = (text = ''): TypedLine => ({ text, at: graphemes(text).length });

/** What stands before the cursor, under it and after it. */
export const parts = ({ text, at }: TypedLine): readonly [string, string, string] => {
  const signs = graphemes(text);
  return [signs.slice(0, at).join(''), signs[at] ?? '', signs.slice(at + 1).join('')];
};

const insert = (line: TypedLine, sign: string): TypedLine => {
  const [before, under, after] = parts(line);
  const start = before + cleanText(sign);
  const text = `${start}${under}${after}`;
  // An accent that joins the sign before it moves no cursor.
  return text.length > LONGEST ? line : { text, at: graphemes(start).length };
};

const rubOut = (line: TypedLine): TypedLine => {
  const [before, under, after] = parts(line);
  const shorter = graphemes(before).slice(0, -1);
  return { text: `${shorter.join('')}${under}${after}`, at: shorter.length };
};

/**
 * The line after a key, or null for a key that is none of the line's own (Enter, Esc, Ctrl-C, Ctrl-Z belong to who opened
 * it). Every key counts, however many came in one chunk.
 */
export const typeInto = (line: TypedLine, key: Key): TypedLine | null => {
  switch (key.name) {
    case 'char':
    case 'space':
      return insert(line, key.char ?? ' ');
    case 'back':
      return rubOut(line);
    case 'left':
      return { ...line, at: Math.max(0, line.at - 1) };
    case 'right':
      return { ...line, at: Math.min(graphemes(line.text).length, line.at + 1) };
    case 'home':
      return { ...line, at: 0 };
    case 'end':
      return typedLine(line.text);
    case 'enter':
    case 'esc':
    case 'ctrl-c':
    case 'ctrl-z':
      return null;
    default:
      return line;
  }
};
