import type { Folders } from '../machine/folders.ts';
import type { Content } from '../words/schema.ts';

/** What a command needs of the world. */
export type World = Readonly<{
  out: (text: string) => void;
  err: (text: string) => void;
  readStdin: () => Promise<string>;
  readFile: (path: string) => Promise<string>;
  folders: Folders;
  content: () => Content;
  now: () => Date;
  columns: number;
  ascii: boolean;
}>;

/** Options of a command line after reading: texts, and flags that were set. */
export type Options = Readonly<Record<string, string | boolean | undefined>>;

export type CommandModule = Readonly<{
  run: (words: readonly string[], options: Options, world: World) => Promise<number>;
}>;

export type OptionSpec = Readonly<{ type: 'string' | 'boolean'; about: string; value?: string }>;

export type CommandSpec = Readonly<{
  name: string;
  /** As it is typed after `curvewright`. */
  usage: string;
  summary: string;
  /** How many words it takes at most besides its options: one too many is refused, never passed over. */
  most: number;
  options: Readonly<Record<string, OptionSpec>>;
  /** What may stand as its first word, where that is a short list; or that its words are files. */
  words?: 'files' | (() => Promise<readonly string[]>);
  examples: readonly string[];
  load: () => Promise<CommandModule>;
}>;
