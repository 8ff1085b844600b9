import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parse } from 'yaml';
import { joinFiles } from '../words/join-files.ts';
import { FILE_SCHEMA } from '../words/schema.ts';

/**
 * The build step that turns content/ into one checked JSON file: reading YAML at the bench would cost as much as starting Ink.
 * Run from the project's root, with the file to write as the only argument.
 */
export const compileContent = (root: string): string => {
  const names = readdirSync(join(root, 'content'), { recursive: true, encoding: 'utf8' })
    .map(name => name.replaceAll('\\', '/'))
    .filter(name => name.endsWith('.yaml'))
    .sort();
  const files = names.map(name => {
    const parsed = FILE_SCHEMA.safeParse(parse(readFileSync(join(root, 'content', name), 'utf8')));
    if (!parsed.success) {
      const first = parsed.error.issues[0];
      throw new Error(`content/${name}: ${first?.path.join('.')}: ${first?.message} (${first?.code})`);
    }
    return { name, content: parsed.data };
  });
  return JSON.stringify(joinFiles(files));
};

const target = process.argv[2];
if (target?.endsWith('content.json')) {
  mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, compileContent(process.cwd()));
}
