/**
 * Input as it was written, before it is held against a topic's fields. A record keeps its entries in the order and
 * number they were written, which a plain object does not: it sorts whole-number names first and drops doubles.
 */
export type Raw = string | number | boolean | null | RawText | RawRecord | readonly Raw[];

/** A flag's text, whose kind only its field can tell; undefined when the flag stands alone. */
export type RawText = Readonly<{ text: string | undefined }>;

export type RawRecord = Readonly<{ entries: readonly (readonly [string, Raw])[] }>;

export const isRecord = (raw: Raw): raw is RawRecord =>
  typeof raw === 'object' && raw !== null && 'entries' in raw && !Array.isArray(raw);

export const isText = (raw: Raw): raw is RawText =>
  typeof raw === 'object' && raw !== null && 'text' in raw && !Array.isArray(raw);
