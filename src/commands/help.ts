import type { CommandSpec, OptionSpec } from './command.ts';
import { COMMANDS, COMMON } from './table.ts';

const optionLine = ([name, spec]: readonly [string, OptionSpec]): string =>
  `  ${`--${name}${spec.value === undefined ? '' : ` ${spec.value}`}`.padEnd(22)}${spec.about}`;

/** The help of the whole program: examples first, one screen. */
export const helpText = (): string =>
  [
    'curvewright: a coach for welded steel frames with curved rails',
    '',
    'Examples',
    '  curvewright                             open the bench',
    '  curvewright start "Yard kicker"         begin a build with the usual answers',
    '  curvewright sheet cut                   print the page of a stage',
    '  curvewright reckon slits --help         the numbers, without a build',
    '',
    'Commands',
    ...COMMANDS.map(c => `  ${c.name.padEnd(12)}${c.summary}`),
    '',
    'Options',
    ...Object.entries(COMMON).map(optionLine),
    '',
    'Your builds are in the folder of --sessions, else of CURVEWRIGHT_SESSIONS, else of your account.',
    'curvewright COMMAND --help says more of one command.',
  ].join('\n');

export const commandHelp = (c: CommandSpec): string =>
  [
    `curvewright ${c.name} ${c.usage}`.trimEnd(),
    c.summary,
    '',
    'Examples',
    ...c.examples.map(e => `  ${e}`),
    '',
    'Options',
    ...Object.entries({ ...c.options, ...COMMON }).map(optionLine),
  ].join('\n');
