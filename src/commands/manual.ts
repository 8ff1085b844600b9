import type { CommandSpec, OptionSpec } from './command.ts';
import { EXIT } from './exit-codes.ts';

/** What each way of ending means; a new one has no page until it is said here. */
const ENDS: Readonly<Record<keyof typeof EXIT, string>> = {
  done: 'done',
  no: 'done, and the answer is no',
  refused: 'the line or a value of it is refused; what would be taken is said',
  noInput: 'a build or a file to read from is not there or cannot be read',
  bug: 'a fault of the program; builds on disk are whole',
  cannotCreate: 'a file or folder cannot be made',
  cannotWrite: 'an entry cannot be written',
  heldByOther: 'the build is open elsewhere',
};

type Named = Readonly<{ name: string; summary: string }>;

/**
 * Plain text as roff takes it: a backslash is its sign of orders, a dot in front an order; hyphens and quotes would be set as a printer's, which
 * nobody can paste.
 */
const said = (text: string): string =>
  text
    .replaceAll('\\', '\\e')
    .replaceAll('-', '\\-')
    .replaceAll('"', '\\(dq')
    .replaceAll("'", '\\(aq')
    .replaceAll('`', '\\(ga')
    .replace(/^\./, '\\&.');

const term = (name: string, about: string): string[] => ['.TP', name, said(about)];

const option = ([name, { value, about }]: readonly [string, OptionSpec]): string[] =>
  term(`.BR \\-\\-${said(name)}${value === undefined ? '' : ` " " ${said(value)}`}`, about);

const command = ({ name, usage, summary, options, examples }: CommandSpec): string[] => [
  `.SS curvewright ${said(`${name} ${usage}`.trimEnd())}`,
  said(summary),
  ...Object.entries(options).flatMap(option),
  '.PP',
  '.nf',
  '.RS 4',
  ...examples.map(said),
  '.RE',
  '.fi',
];

/**
 * The manual page, section 1, as roff of the man macros: made from the table that the help is made from.
 * `version` of the program; `topics` are the number command's.
 */
export const manualPage = (
  commands: readonly CommandSpec[],
  common: Readonly<Record<string, OptionSpec>>,
  topics: readonly Named[],
  version: string,
): string =>
  [
    `.TH CURVEWRIGHT 1 "" "curvewright ${version}" "General Commands Manual"`,
    '.SH NAME',
    'curvewright \\- a coach for welded steel frames with curved rails',
    '.SH SYNOPSIS',
    ...commands.flatMap(({ name, usage }, n) => [
      ...(n === 0 ? [] : ['.br']),
      `.B curvewright ${said(name)}`,
      ...(usage === '' ? [] : [said(usage)]),
    ]),
    '.SH DESCRIPTION',
    'Leads a first\\-time welder, key by key, through a welded steel frame with matched curved rails: plan, cut, prep,',
    'tack, weld, brace, assemble, finish. Without a command it opens the bench, where the keys are shown at the foot of',
    'each page and',
    '.B h',
    'lists them all.',
    '.PP',
    'Strength, ride and weld results are guidance, never approval. Local codes and licensed people come first.',
    '.SH COMMANDS',
    ...commands.flatMap(command),
    '.SH TOPICS OF RECKON',
    'Lengths and other amounts count in the unit a field ends in; a text with a unit is taken as well.',
    '.B curvewright reckon',
    '.I TOPIC',
    '.B \\-\\-help',
    'lists what a topic takes.',
    ...topics.flatMap(({ name, summary }) => term(`.B ${said(name)}`, summary)),
    '.SH OPTIONS OF EVERY COMMAND',
    'The number command reads its own line and takes of these only',
    '.BR \\-\\-help .',
    ...Object.entries(common).flatMap(option),
    '.SH FILES',
    'A build is one file of lines of JSON, which only ever grows. Builds are in the folder of',
    '.BR \\-\\-sessions ,',
    'else of',
    '.BR CURVEWRIGHT_SESSIONS ,',
    "else in the account's data folder.",
    '.SH ENVIRONMENT',
    ...term('.B CURVEWRIGHT_SESSIONS', 'the folder of your builds'),
    ...term('.B NO_COLOR', 'no colours when it is set'),
    '.SH EXIT STATUS',
    ...Object.entries(EXIT).flatMap(([name, code]) => term(`.B ${code}`, ENDS[name as keyof typeof EXIT])),
    '',
  ].join('\n');
