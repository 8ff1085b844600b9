import type { Content, ContentFile } from './schema.ts';

const PARTS = [
  'figures',
  'gates',
  'findings',
  'remedies',
  'cautions',
  'problems',
  'refusals',
  'questions',
  'hurt',
  'glossary',
  'rechecks',
  'sources',
  'says',
  'sections',
] as const;

/** The files of content/ as one; a name said twice is a fault of the build, named with its file. */
export const joinFiles = (files: readonly { name: string; content: ContentFile }[]): Content => {
  const all: Record<string, Record<string, unknown>> = { steps: {} };
  for (const part of PARTS) all[part] = {};
  for (const { name, content } of files) {
    for (const part of PARTS) {
      const into = all[part] as Record<string, unknown>;
      for (const [key, value] of Object.entries(content[part] ?? {})) {
        if (key in into) throw new Error(`content/${name}: ${part}.${key} is said twice`);
        into[key] = value;
      }
    }
    if (content.steps !== undefined) {
      if (content.stage === undefined) throw new Error(`content/${name}: steps without a stage`);
      const steps = all.steps as Record<string, unknown>;
      steps[content.stage] = { ...(steps[content.stage] as object | undefined), ...content.steps };
    }
  }
  return all as unknown as Content;
};
