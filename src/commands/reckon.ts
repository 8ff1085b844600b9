import { type Fault, good, type Outcome, refuse } from '../quantity/outcome.ts';
import { jsonSchema } from './reckon/json-schema.ts';
import { nearest } from './reckon/nearest.ts';
import { answerText, faultText, topicHelp, topicList } from './reckon/print.ts';
import type { Raw } from './reckon/raw.ts';
import { type Flags, readFlags } from './reckon/read-flags.ts';
import { readInput } from './reckon/read-input.ts';
import { readJson } from './reckon/read-json.ts';
import type { Topic } from './reckon/topic.ts';
import { TOPICS } from './reckon/topics.ts';

/** What the command needs of the world. Reading rejects when there is nothing to read. */
export type ReckonIo = Readonly<{
  out: (text: string) => void;
  err: (text: string) => void;
  readStdin: () => Promise<string>;
  readFile: (path: string) => Promise<string>;
}>;

const DONE = 0;
const REFUSED = 2;
const NO_INPUT = 66;

const SCHEMA_VERSION = 1;

/**
 * The number command. `args` are the words after `reckon`. Gives the exit code: 0 answered, 2 refused, 66 when the file
 * of `--in` cannot be read. With `--json` exactly one JSON object goes to `out` and nothing else anywhere.
 */
export const run = async (args: readonly string[], io: ReckonIo): Promise<number> => {
  const flags = readFlags(args);
  const json = (record: Readonly<Record<string, unknown>>) =>
    io.out(`${jsonText({ schemaVersion: SCHEMA_VERSION, ...record })}\n`);
  const refused = (fault: Fault, code = REFUSED): number => {
    if (flags.json) json({ error: fault });
    else io.err(`${faultText(fault)}\n`);
    return code;
  };

  const bare = flags.fields.entries.length === 0 && flags.files.length === 0;
  if (flags.topic === undefined && (flags.help || bare)) {
    const topics = await Promise.all(Object.values(TOPICS).map(async load => (await load()).topic));
    if (flags.json)
      json({ topics: topics.map(({ name, summary, example }) => ({ name, summary, example })) });
    else io.out(`${topicList(topics)}\n`);
    return DONE;
  }

  const found = await topicNamed(flags.topic);
  if (!found.ok) return refused(found.fault);
  const topic = found.value;
  if (flags.schema) {
    io.out(`${JSON.stringify(jsonSchema(topic), null, 2)}\n`);
    return DONE;
  }
  if (flags.help) {
    if (flags.json)
      json({ name: topic.name, summary: topic.summary, example: topic.example, schema: jsonSchema(topic) });
    else io.out(`${topicHelp(topic)}\n`);
    return DONE;
  }

  const source = await rawInput(flags, io);
  if (!source.ok) return refused(source.fault.fault, source.fault.exit);
  const input = readInput(topic.fields, source.value);
  if (!input.ok) return refused(input.fault);
  const answer = await topic.run(input.value);
  if (!answer.ok) return refused(answer.fault);

  mustBeFinite(answer.value, topic.name);
  if (flags.json) json(answer.value);
  else io.out(`${answerText(answer.value)}\n`);
  return DONE;
};

const topicNamed = async (name: string | undefined): Promise<Outcome<Topic>> => {
  const names = Object.keys(TOPICS);
  const load = name !== undefined && Object.hasOwn(TOPICS, name) ? TOPICS[name] : undefined;
  if (load !== undefined) return good((await load()).topic);
  if (name === undefined) return refuse('unknown-topic', null, 'No topic is named.', names.join(', '));
  const meant = nearest(name, names);
  const hint = meant === undefined ? '' : ` Did you mean ${meant}?`;
  return refuse('unknown-topic', null, `There is no topic "${name}".${hint}`, names.join(', '));
};

type NoInput = Readonly<{ exit: number; fault: Fault }>;

/** The input as written: the flags, or the one file of `--in`. */
const rawInput = async (flags: Flags, io: ReckonIo): Promise<Outcome<Raw, NoInput>> => {
  const stop = (refusal: Readonly<{ fault: Fault }>, exit = REFUSED) =>
    ({ ok: false, fault: { exit, ...refusal } }) as const;
  if (flags.files.length === 0) return good(flags.fields);
  const [file] = flags.files;
  if (flags.files.length > 1)
    return stop(refuse('too-many-values', null, '--in is given twice.', 'one file, or - for standard input'));
  if (flags.fields.entries.length > 0)
    return stop(
      refuse('contradiction', null, '--in and field flags cannot go together.', 'either --in FILE or fields'),
    );
  if (file === undefined || file === '')
    return stop(refuse('missing-field', null, '--in is given no file.', 'a file, or - for standard input'));
  const text = await (file === '-' ? io.readStdin() : io.readFile(file)).catch(() => undefined);
  if (text === undefined) {
    const what = file === '-' ? 'Standard input' : file;
    return stop(
      refuse('missing-field', null, `${what} cannot be read.`, 'a file that can be read'),
      NO_INPUT,
    );
  }
  const json = readJson(text);
  return json.ok ? json : stop(json);
};

/** A number that is none, or without end, is a bug of the topic and must never reach a person or a script. */
const mustBeFinite = (value: unknown, place: string): void => {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${place} came out as ${value}`);
  if (typeof value === 'object' && value !== null)
    for (const [name, part] of Object.entries(value)) mustBeFinite(part, `${place}.${name}`);
};

const jsonText = (record: Readonly<Record<string, unknown>>): string => JSON.stringify(record);
