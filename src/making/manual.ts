import { readFileSync, writeFileSync } from 'node:fs';
import { manualPage } from '../commands/manual.ts';
import { TOPICS } from '../commands/reckon/topics.ts';
import { COMMANDS, COMMON } from '../commands/table.ts';

/** The build step that writes the manual page. Run from the project's root, with the file to write as the only argument. */
const target = process.argv[2];
if (target !== undefined) {
  const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
  const topics = await Promise.all(Object.values(TOPICS).map(async load => (await load()).topic));
  writeFileSync(target, manualPage(COMMANDS, COMMON, topics, version));
}
