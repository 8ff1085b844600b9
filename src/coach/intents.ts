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

/** The intent that a parsed line holds, or the first thing wrong with it. */
export const asIntent = (
  raw: unknown,
): { ok: true; value: Intent } | { ok: false; at: string; says: string } => {
  const named = typeof raw === 'object' && raw !== null ? (raw as { do?: unknown }).do : undefined;
  const schema =
    typeof named === 'string' && Object.hasOwn(INTENTS, named) ? INTENTS[named as IntentName] : undefined;
  if (schema === undefined) return { ok: false, at: 'do', says: `one of ${Object.keys(INTENTS).join(', ')}` };
  const parsed = schema.safeParse(raw);
  if (parsed.success) return { ok: true, value: parsed.data as Intent };
  const issue = parsed.error.issues[0];
  return {
    ok: false,
    at: issue?.path.join('.') ?? '',
    says: issue?.message ?? issue?.code ?? 'not understood',
  };
};
