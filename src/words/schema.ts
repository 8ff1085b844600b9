import * as z from 'zod/mini';

const line = z.string().check(z.minLength(1), z.maxLength(900));
const short = z.string().check(z.minLength(1), z.maxLength(140));
const lines = z.array(line);
const optional = z.optional(line);

/** A table of published numbers, with where they come from and the mark that says how they were come by. */
const source = z.strictObject({
  title: line,
  mark: z.enum(['found', 'memory', 'practice', 'derived']),
  note: optional,
});

/** Sizes that most yards have, no properties: those are computed for any size. Depth, width, wall of a tube or angle; width, thickness of a flat. */
const sizes = z.strictObject({
  system: z.enum(['metric', 'us']),
  shape: z.enum(['square tube', 'rectangular tube', 'angle', 'flat']),
  /** One unit of the list in mm: 1, or 25.4. */
  mm: z.number().check(z.positive()),
  sizes: z.array(z.array(z.number().check(z.positive())).check(z.minLength(2), z.maxLength(3))),
  source: z.string(),
});

/** The words of one file in content/. Marks in braces name a figure in the step's `uses`, a fill, or the subject. */
export const FILE_SCHEMA = z.strictObject({
  stage: z.optional(z.string()),
  figures: z.optional(z.record(z.string(), z.strictObject({ label: short, why: line, source: z.string() }))),
  steps: z.optional(
    z.record(
      z.string(),
      z.strictObject({
        title: short,
        do: optional,
        posture: optional,
        why: line,
        caution: optional,
        /** The caution in a few words, once it has been read. */
        brief: z.optional(short),
        measure: optional,
        more: optional,
        asks: z.optional(z.record(z.string(), short)),
        /** Answers of an ask that is no measure: the first stands for its least possible number, the next for one more. */
        choices: z.optional(z.record(z.string(), z.array(short).check(z.minLength(2)))),
        /** What one of the repeated things is called. */
        item: z.optional(short),
        /** What Space does, in two or three words. */
        tick: z.optional(short),
        /** What Enter does to all of one group. */
        all: z.optional(short),
      }),
    ),
  ),
  gates: z.optional(z.record(z.string(), z.strictObject({ stop: short, why: line, opens: lines }))),
  findings: z.optional(
    z.record(z.string(), z.strictObject({ title: short, text: lines, sure: optional, not: optional })),
  ),
  remedies: z.optional(z.record(z.string(), z.strictObject({ deed: short, steps: lines, later: short }))),
  cautions: z.optional(z.record(z.string(), z.strictObject({ title: short, text: line }))),
  problems: z.optional(z.record(z.string(), z.strictObject({ says: line, change: line }))),
  refusals: z.optional(z.record(z.string(), z.strictObject({ says: line, accepted: line }))),
  questions: z.optional(
    z.record(
      z.string(),
      z.strictObject({
        ask: short,
        /** What the number is measured to, or what the choice decides, in a line. */
        about: line,
        choices: z.optional(z.record(z.string(), short)),
      }),
    ),
  ),
  hurt: z.optional(z.record(z.string(), z.strictObject({ title: short, now: lines, call: line }))),
  glossary: z.optional(z.record(z.string(), line)),
  rechecks: z.optional(z.record(z.string(), z.strictObject({ title: short, why: line }))),
  sources: z.optional(z.record(z.string(), source)),
  says: z.optional(z.record(z.string(), line)),
  sections: z.optional(z.record(z.string(), sizes)),
});

export type ContentFile = z.infer<typeof FILE_SCHEMA>;

type Part<K extends keyof ContentFile> = NonNullable<ContentFile[K]>;

/** All words, every file joined; steps stand under their stage. */
export type Content = Readonly<{
  figures: Part<'figures'>;
  steps: Record<string, Part<'steps'>>;
  gates: Part<'gates'>;
  findings: Part<'findings'>;
  remedies: Part<'remedies'>;
  cautions: Part<'cautions'>;
  problems: Part<'problems'>;
  refusals: Part<'refusals'>;
  questions: Part<'questions'>;
  hurt: Part<'hurt'>;
  glossary: Part<'glossary'>;
  rechecks: Part<'rechecks'>;
  sources: Part<'sources'>;
  says: Part<'says'>;
  sections: Part<'sections'>;
}>;
