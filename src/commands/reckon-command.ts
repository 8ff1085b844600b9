import type { CommandModule } from './command.ts';
import { run as reckon } from './reckon.ts';

/** The number command reads its own line: its fields are not options of the program. */
export const run: CommandModule['run'] = (words, _options, world) => reckon(words, world);
