import { distinct } from '../build/join.ts';
import {
  DAMAGE_WORDS,
  HEADER_VERSION,
  type Header,
  type JournalFormat,
  type LineReading,
  LONGEST_LINE,
  readLine,
  type StoredEntry,
} from '../build/journal-line.ts';
import { plainText } from '../build/plain-text.ts';
import type { Understood } from '../build/versions/upcast.ts';

/** A line that does not count, kept in the file as it is. `line` is its number in the file, the first being 1. */
export type SetAside = Readonly<{
  line: number;
  why: 'damaged' | 'newer' | 'unfit' | 'other-build';
  message: string;
  /** The beginning of the line, made safe to show. */
  excerpt: string;
}>;

export type Understand<E extends StoredEntry> = (stored: StoredEntry) => Understood<E>;

/** What a journal holds. Damage is set aside, the rest counts. */
export type JournalReading<E extends StoredEntry> = Readonly<{
  /** Null when the first line is damaged. */
  header: Header | null;
  /** Every whole entry as it stands on disk, once each and in order: what `join` takes. */
  stored: readonly StoredEntry[];
  /** Those this version understands, brought up to date, in order. */
  entries: readonly E[];
  setAside: readonly SetAside[];
  /** Why this journal may be looked at but not written, or null. */
  readOnly: string | null;
  /** The last line was broken off: the next write must begin with a line break. */
  endsTorn: boolean;
}>;

const EXCERPT = 72;
const LINE_BREAK = 0x0a;
const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

/** The lines of a file with their numbers, blank ones left out. A byte order mark that an editor put in front is not text. */
function* linesOf(bytes: Uint8Array): Generator<readonly [line: number, bytes: Uint8Array]> {
  let from = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  for (let line = 1; from < bytes.length; line++) {
    const at = bytes.indexOf(LINE_BREAK, from);
    const to = at === -1 ? bytes.length : at;
    const held = bytes.subarray(from, to);
    if (held.some(b => b !== 0x0d && b !== 0x20)) yield [line, held];
    from = to + 1;
  }
}

const decode = (bytes: Uint8Array): string | null => {
  try {
    return decoder.decode(bytes);
  } catch {
    return null;
  }
};

const readBytes = (bytes: Uint8Array): LineReading => {
  // One byte more: a carriage return that another system's editor left.
  if (bytes.length > LONGEST_LINE + 1) return { is: 'damaged', reason: 'too-long' };
  const text = decode(bytes);
  return text === null ? { is: 'damaged', reason: 'not-text' } : readLine(text);
};

const excerpt = (bytes: Uint8Array): string =>
  [...plainText(Buffer.from(bytes.subarray(0, EXCERPT * 4)).toString('utf8'))].slice(0, EXCERPT).join('');

/**
 * What the bytes of a journal hold. Never throws and changes nothing.
 * @param format the sort of journal asked for
 * @param understand brings a stored entry up to date, or says why it cannot
 * @returns null when nothing in it was written by Curvewright, `'other-format'` when it is the other sort of journal
 */
export const readJournal = <E extends StoredEntry>(
  bytes: Uint8Array,
  format: JournalFormat,
  understand: Understand<E>,
): JournalReading<E> | 'other-format' | null => {
  let header: Header | null = null;
  let foreign = false;
  let readOnly: string | null = null;
  const whole: StoredEntry[] = [];
  const lineOf = new Map<StoredEntry, readonly [number, Uint8Array]>();
  const setAside: SetAside[] = [];
  const aside = (line: number, why: SetAside['why'], message: string, bytes: Uint8Array): void => {
    setAside.push({ line, why, message, excerpt: excerpt(bytes) });
  };
  const newer = (reason: string): void => {
    readOnly ??= `A newer Curvewright wrote in this journal: ${reason}.`;
  };

  for (const [line, held] of linesOf(bytes)) {
    const reading = readBytes(held);
    if (reading.is === 'damaged') aside(line, 'damaged', DAMAGE_WORDS[reading.reason], held);
    else if (reading.is === 'newer') {
      newer(reading.reason);
      aside(line, 'newer', reading.reason, held);
    } else if (reading.is === 'header') {
      // A second first line comes from files strung together: a copy of this build is welcome, another build is not,
      // nor one that cannot be compared because the real first line is damaged.
      if (whole.length === 0) header ??= reading.header;
      foreign = reading.header.build !== header?.build || reading.header.format !== header.format;
      if (foreign) aside(line, 'other-build', 'from here on the lines belong to another build', held);
      if (reading.header.version > HEADER_VERSION) newer('its form is newer than this version knows');
    } else if (foreign) aside(line, 'other-build', 'this line belongs to another build', held);
    else {
      whole.push(reading.entry);
      lineOf.set(reading.entry, [line, held]);
    }
  }

  if (header === null && whole.length === 0) return null;
  if (header !== null && header.format !== format) return 'other-format';

  const stored = distinct(whole);
  const entries: E[] = [];
  for (const e of stored) {
    const understood = understand(e);
    if (understood.is === 'current') {
      entries.push(understood.entry);
      continue;
    }
    if (understood.is === 'newer') newer(understood.reason);
    const [line, held] = lineOf.get(e) ?? [0, new Uint8Array()];
    aside(line, understood.is, understood.reason, held);
  }
  setAside.sort((a, b) => a.line - b.line);
  const endsTorn = bytes.length > 0 && bytes.at(-1) !== LINE_BREAK;
  return { header, stored, entries, setAside, readOnly, endsTorn };
};
