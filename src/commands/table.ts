import type { CommandSpec, OptionSpec } from './command.ts';

const json: OptionSpec = { type: 'boolean', about: 'one JSON object on standard output, nothing else' };
const input: OptionSpec = { type: 'string', value: 'FILE', about: 'read from FILE, - for standard input' };
const schema: OptionSpec = { type: 'boolean', about: 'print the JSON Schema of what is taken' };

/** Options that every command takes. */
export const COMMON: Readonly<Record<string, OptionSpec>> = {
  sessions: { type: 'string', value: 'DIR', about: 'the folder of your builds' },
  ascii: { type: 'boolean', about: 'only 7-bit signs' },
  help: { type: 'boolean', about: 'this help' },
  version: { type: 'boolean', about: 'the version' },
};

/** All commands: help, completion and the manual page are made from this. */
export const COMMANDS: readonly CommandSpec[] = [
  {
    name: 'bench',
    usage: '[--build NAME]',
    summary: 'open the bench (the default): where you stopped, and the next step',
    most: 1,
    options: { build: { type: 'string', value: 'NAME', about: 'open this build' } },
    examples: ['curvewright', 'curvewright --build kicker'],
    load: () => import('./bench.ts'),
  },
  {
    name: 'start',
    usage: 'NAME [--in FILE]',
    summary: 'begin a build, with the set-up answers as one JSON object or with defaults',
    most: 1,
    options: {
      in: input,
      json,
      schema,
      units: { type: 'string', value: 'metric|us', about: 'the units of the build' },
    },
    examples: [
      'curvewright start "Yard kicker" --units metric',
      'curvewright start Kicker --in answers.json --json',
    ],
    load: () => import('./start.ts'),
  },
  {
    name: 'builds',
    usage: '',
    summary: 'list your builds and the demo builds',
    most: 0,
    options: { json },
    examples: ['curvewright builds', 'curvewright builds --json'],
    load: () => import('./builds.ts'),
  },
  {
    name: 'sheet',
    usage: 'STAGE [--build NAME]',
    summary: 'print the page of a stage: its numbers, steps, findings',
    most: 1,
    options: { build: { type: 'string', value: 'NAME', about: 'of this build' }, json },
    words: async () => (await import('../stages/sheet.ts')).STAGES,
    examples: ['curvewright sheet tack', 'curvewright sheet cut --build kicker --json'],
    load: () => import('./sheet.ts'),
  },
  {
    name: 'order',
    usage: '[--build NAME] [--json | --csv]',
    summary: 'print what to buy and how to cut it: bars, spares, what goes with them, the cutting list',
    most: 0,
    options: {
      build: { type: 'string', value: 'NAME', about: 'of this build' },
      json,
      csv: { type: 'boolean', about: 'comma-separated values: one line a bar, a piece, a thing' },
    },
    examples: ['curvewright order', 'curvewright order --build kicker --csv > order.csv'],
    load: () => import('./order.ts'),
  },
  {
    name: 'log',
    usage: 'BUILD --in FILE',
    summary: 'do what the lines say, one JSON object a line, through the same refusals as the bench',
    most: 1,
    options: { in: input, json, schema },
    examples: [`echo '{"do":"tick","step":"plan/curve"}' | curvewright log kicker --in -`],
    load: () => import('./log.ts'),
  },
  {
    name: 'join',
    usage: 'COPY COPY [--out FILE]',
    summary: 'join two copies of one build that were worked on apart',
    most: 2,
    options: { out: { type: 'string', value: 'FILE', about: 'write the joined build here' }, json },
    words: 'files',
    examples: ['curvewright join kicker.jsonl usb/kicker.jsonl --out joined.jsonl'],
    load: () => import('./join.ts'),
  },
  {
    name: 'reckon',
    usage: 'TOPIC [--field value]',
    summary: 'the calculators behind the coach, without a build',
    most: 1,
    options: { in: input, json, schema },
    words: async () => Object.keys((await import('./reckon/topics.ts')).TOPICS),
    examples: ['curvewright reckon arc --height_mm 600 --exit_deg 30', 'curvewright reckon --help'],
    load: () => import('./reckon-command.ts'),
  },
  {
    name: 'completion',
    usage: 'bash|zsh|fish',
    summary: 'print a script that lets a shell finish these commands for you',
    most: 1,
    options: {},
    words: async () => (await import('./completion/shells.ts')).SHELLS,
    examples: ['source <(curvewright completion bash)', 'curvewright completion fish | source'],
    load: async () => (await import('./completion.ts')).completionOf(COMMANDS, COMMON),
  },
];
