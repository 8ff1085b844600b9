import * as z from 'zod/mini';
import { FACES, SURVEY_KINDS, SURVEY_LINES, SURVEY_PHASES } from '../build/entries.ts';

/** A number as typed ("63 1/2 in", "12.5 mm", a bare number in the build's unit) or as a number in the inner unit (mm, rad, kg, °C …). */
const amount = z.union([z.string(), z.number()]);
const name = z.string().check(z.minLength(1), z.maxLength(200));
const words = z.string().check(z.minLength(1), z.maxLength(2000));

/** What a person, or a script, can do to a build. The bench and `log` go through the same refusals. */
export const INTENTS = {
  answer: z.strictObject({ do: z.literal('answer'), field: name, value: z.unknown() }),
  agree: z.strictObject({ do: z.literal('agree') }),
  tick: z.strictObject({ do: z.literal('tick'), step: name }),
  skip: z.strictObject({ do: z.literal('skip'), step: name, why: words }),
  override: z.strictObject({ do: z.literal('override'), step: name, gate: name, why: words }),
  read: z.strictObject({ do: z.literal('read'), step: name, ask: name, value: amount }),
  'open-survey': z.strictObject({
    do: z.literal('open-survey'),
    step: z.optional(name),
    kind: z.optional(z.enum(SURVEY_KINDS)),
    rail: z.optional(name),
    phase: z.optional(z.enum(SURVEY_PHASES)),
    edge: z.optional(z.enum(FACES)),
    to: z.optional(z.enum(SURVEY_LINES)),
    stations: z.optional(z.array(amount)),
    read_to: z.optional(amount),
  }),
  offsets: z.strictObject({
    do: z.literal('offsets'),
    survey: z.optional(name),
    from: z.optional(z.int()),
    /** One for each station from `from` (1 when absent). */
    values: z.array(amount),
    /** Replace what was read at these stations instead of reading them a second time. */
    correct: z.optional(z.boolean()),
  }),
  'close-survey': z.strictObject({ do: z.literal('close-survey'), survey: z.optional(name) }),
  'cut-piece': z.strictObject({ do: z.literal('cut-piece'), need: name, length: amount }),
  'piece-fate': z.strictObject({
    do: z.literal('piece-fate'),
    piece: name,
    fate: z.enum(['fitted', 'welded', 'spoiled']),
    need: z.optional(name),
  }),
  'note-slit': z.strictObject({
    do: z.literal('note-slit'),
    rail: name,
    slit: z.int(),
    note: z.enum(['nicked', 'shallow', 'moved', 'missed']),
    at: z.optional(amount),
  }),
  choose: z.strictObject({
    do: z.literal('choose'),
    finding: name,
    remedy: name,
    /** The sentence by which a danger is taken on, where the remedy asks for one. */
    typed: z.optional(words),
  }),
  caution: z.strictObject({ do: z.literal('caution'), caution: name }),
  remark: z.strictObject({ do: z.literal('remark'), text: words, step: z.optional(name) }),
  stop: z.strictObject({ do: z.literal('stop'), step: z.optional(name) }),
  strike: z.strictObject({ do: z.literal('strike'), entry: z.optional(name) }),
  'put-back': z.strictObject({ do: z.literal('put-back'), entry: name }),
} as const;

export type IntentName = keyof typeof INTENTS;
export type Intent = { [K in IntentName]: Readonly<z.infer<(typeof INTENTS)[K]>> }[IntentName];

type Issue = Readonly<{
  code?: string | undefined;
  expected?: string;
  values?: readonly unknown[];
  minimum?: unknown;
  maximum?: unknown;
}>;

/** What would do in place of a value that does not, in words. */
const acceptedFor = (issue: Issue): string => {
  if (issue.code === 'invalid_union') return 'a number, or text with a number and its unit';
  if (issue.code === 'invalid_value') return `one of ${(issue.values ?? []).join(', ')}`;
  if (issue.code === 'too_small') return 'a few words: it is empty';
  if (issue.code === 'too_big') return `at most ${String(issue.maximum)} signs`;
  const of: Record<string, string> = {
    string: 'some text',
    int: 'a whole number',
    number: 'a number',
    array: 'a list',
  };
  return (
    of[issue.expected ?? ''] ?? (issue.expected === 'boolean' ? 'true or false' : 'a value that fits there')
  );
};

/** The intent that a parsed line holds, or the first thing wrong with it: where, what, and what would do. */
export const asIntent = (
  raw: unknown,
): { ok: true; value: Intent } | { ok: false; code: string; at: string; wrong: string; says: string } => {
  const no = (code: string, at: string, wrong: string, says: string) =>
    ({ ok: false, code, at, wrong, says }) as const;
  const named = typeof raw === 'object' && raw !== null ? (raw as { do?: unknown }).do : undefined;
  const schema =
    typeof named === 'string' && Object.hasOwn(INTENTS, named) ? INTENTS[named as IntentName] : undefined;
  if (schema === undefined)
    return no('unknown-field', 'do', 'do is not understood', `one of ${Object.keys(INTENTS).join(', ')}`);
  const parsed = schema.safeParse(raw);
  if (parsed.success) return { ok: true, value: parsed.data as Intent };
  const [issue] = parsed.error.issues;
  const [strange] = issue?.code === 'unrecognized_keys' ? issue.keys : [];
  if (strange !== undefined)
    return no(
      'unknown-field',
      strange,
      `${String(named)} has no ${strange}`,
      Object.keys(schema.shape).join(', '),
    );
  const at = issue?.path.join('.') ?? '';
  // Only a field of the line itself can be missing: lists hold plain values.
  return issue?.path.length === 1 && !Object.hasOwn(raw as object, at)
    ? no('missing-field', at, `${at} is missing`, acceptedFor(issue))
    : no('unknown-field', at, `${at} is not understood`, acceptedFor(issue ?? {}));
};
