/** The keys a page can be asked for. Every printable sign is `char` but the space, which is a key of its own and a sign in a field. */
export type KeyName =
  | 'space'
  | 'enter'
  | 'esc'
  | 'tab'
  | 'up'
  | 'down'
  | 'left'
  | 'right'
  | 'back'
  | 'home'
  | 'end'
  | 'page-up'
  | 'page-down'
  | 'ctrl-c'
  | 'ctrl-z'
  | 'char';

export type Key = Readonly<{
  name: KeyName;
  /** The sign to type, for `char` and `space`, and for a line end inside a paste. */
  char?: string;
  /** Came in a paste the terminal announced: text for a field, never an act on a page. */
  pasted?: true;
}>;

/** The keys of one chunk, and whether a paste goes on into the next chunk. */
export type SplitKeys = Readonly<{ keys: readonly Key[]; pasting: boolean }>;

const SEQUENCES: Readonly<Record<string, KeyName>> = {
  '[A': 'up',
  '[B': 'down',
  '[C': 'right',
  '[D': 'left',
  OA: 'up',
  OB: 'down',
  OC: 'right',
  OD: 'left',
  '[H': 'home',
  '[F': 'end',
  OH: 'home',
  OF: 'end',
  '[1~': 'home',
  '[4~': 'end',
  '[7~': 'home',
  '[8~': 'end',
  '[5~': 'page-up',
  '[6~': 'page-down',
  '[3~': 'back',
  OM: 'enter',
};

/** Control characters that are keys. Backspace and Delete cannot be told apart (0x7F is sent by both), so they are one key. */
const CONTROLS: Readonly<Record<string, KeyName>> = {
  '\r': 'enter',
  '\n': 'enter',
  '\t': 'tab',
  '\u0003': 'ctrl-c',
  '\u001A': 'ctrl-z',
  '\b': 'back',
  '\u007F': 'back',
};

const PASTE_STARTS = '[200~';

// Ink takes the escape sign off a sequence it does not know, so the paste marks arrive with and without it.
const PASTE_MARK = /^\u001B?(\[20[01]~)/;
/** A control sequence (CSI), with its doubled form of the kernel's console, or a single-shift one (SS3). */
const SEQUENCE = /^\u001B(\[\[?[0-?]*[ -/]*[@-~]|O[@-~])/;

const typed = (sign: string): Key | null => {
  const control = CONTROLS[sign];
  if (control !== undefined) return { name: control };
  if (sign === ' ') return { name: 'space', char: ' ' };
  return /[\u0000-\u001F\u007F-\u009F]/.test(sign) ? null : { name: 'char', char: sign };
};

/** In a paste a line end or a tab parts two numbers; it is a sign, not the Enter or Tab key. */
const pasted = (sign: string): Key | null => {
  if (sign === '\n' || sign === '\r') return { name: 'char', char: '\n', pasted: true };
  if (sign === '\t' || sign === ' ') return { name: 'space', char: sign, pasted: true };
  return /[\u0000-\u001F\u007F-\u009F]/.test(sign) ? null : { name: 'char', char: sign, pasted: true };
};

/**
 * The keys in one chunk of what the terminal sent. Quick typing, scripts and pastes put several keys in one chunk:
 * "12.5\r" is five. Carriage return, line feed and both together are one Enter. Escape before a letter is two keys, for
 * no key here is a chord. Sequences of keys that mean nothing here (F-keys, mouse) are dropped.
 * @param chunk as it came, or as Ink hands it on (without the escape sign of an unknown sequence).
 * @param pasting whether an announced paste began in an earlier chunk and is not over.
 */
export const splitKeys = (chunk: string, pasting = false): SplitKeys => {
  const keys: Key[] = [];
  let inPaste = pasting;
  let rest = chunk;
  while (rest !== '') {
    const mark = PASTE_MARK.exec(rest);
    if (mark !== null) {
      inPaste = mark[1] === PASTE_STARTS;
      rest = rest.slice(mark[0].length);
      continue;
    }
    const sequence = SEQUENCE.exec(rest);
    if (sequence !== null) {
      const name = SEQUENCES[sequence[1]!];
      if (name !== undefined && !inPaste) keys.push({ name });
      rest = rest.slice(sequence[0].length);
      continue;
    }
    if (rest.startsWith('\u001B')) {
      if (!inPaste) keys.push({ name: 'esc' });
      rest = rest.slice(1);
      continue;
    }
    if (rest.startsWith('\r\n')) rest = rest.slice(1);
    const sign = String.fromCodePoint(rest.codePointAt(0)!);
    const key = inPaste ? pasted(sign) : typed(sign);
    if (key !== null) keys.push(key);
    rest = rest.slice(sign.length);
  }
  return { keys, pasting: inPaste };
};
