import type { RawRecord, RawText } from './raw.ts';

/** What the words after `reckon` ask for. Field flags keep the order and number they were typed in. */
export type Flags = Readonly<{
  topic: string | undefined;
  help: boolean;
  json: boolean;
  schema: boolean;
  /** Every `--in` given, its file undefined when none follows. */
  files: readonly (string | undefined)[];
  fields: RawRecord;
}>;

/**
 * Sorts the words of the command line. `--name value` and `--name=value` are the same; a value may begin with one dash
 * (a negative number, standard input) but not with two. A word that belongs to no flag stands as a field without
 * value, to be refused by its own name.
 */
export const readFlags = (args: readonly string[]): Flags => {
  const fields: (readonly [string, RawText])[] = [];
  const files: (string | undefined)[] = [];
  let topic: string | undefined;
  let help = false;
  let json = false;
  let schema = false;

  for (let n = 0; n < args.length; n += 1) {
    const word = args[n] as string;
    if (word === '--help' || word === '-h') help = true;
    else if (word === '--json') json = true;
    else if (word === '--schema') schema = true;
    else if (!word.startsWith('--') && topic === undefined) topic = word;
    else if (!word.startsWith('--')) fields.push([word, { text: undefined }]);
    else {
      const equals = word.indexOf('=');
      const name = word.slice(2, equals < 0 ? undefined : equals);
      const next = args[n + 1];
      const follows = equals < 0 && next !== undefined && !next.startsWith('--');
      const text = equals >= 0 ? word.slice(equals + 1) : follows ? next : undefined;
      if (follows) n += 1;
      if (name === 'in') files.push(text);
      else fields.push([name, { text }]);
    }
  }
  return { topic, help, json, schema, files, fields: { entries: fields } };
};
