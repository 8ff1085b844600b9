#!/usr/bin/env node
import process from 'node:process';
import { parseArgs } from 'node:util';
import { EXIT, SCHEMA_VERSION } from './commands/exit-codes.ts';
import { commandHelp, helpText } from './commands/help.ts';
import { nearest } from './commands/reckon/nearest.ts';
import { COMMANDS, COMMON } from './commands/table.ts';
import { realWorld, version } from './commands/world.ts';

/** Where the word that names the command stands; the value of --sessions is no command. */
const commandAt = (args: readonly string[]): number => {
  for (let i = 0; i < args.length; i++) {
    const word = args[i] ?? '';
    if (word === '--sessions' || word === '--build') i++;
    else if (!word.startsWith('-')) return i;
  }
  return -1;
};

/** A word of the line as it may stand in an answer: short, and no control signs. */
const printable = (word: string): string => word.slice(0, 40).replace(/[^\x20-\x7e]/g, '?');

/** A line that is no command: in words, or as the one object that `--json` promises whatever happens. */
const wrong = (code: string, message: string, json: boolean): number => {
  if (json)
    process.stdout.write(
      `${JSON.stringify({ schemaVersion: SCHEMA_VERSION, error: { code, field: null, message, accepted: 'curvewright --help lists commands and options' } })}\n`,
    );
  else process.stderr.write(`curvewright: ${message}\nSee curvewright --help.\n`);
  return EXIT.refused;
};

const main = async (args: readonly string[]): Promise<number> => {
  const at = commandAt(args);
  const name = at < 0 ? 'bench' : (args[at] ?? 'bench');
  const command = COMMANDS.find(c => c.name === name);
  if (command === undefined) {
    const near = nearest(
      name,
      COMMANDS.map(c => c.name),
    );
    return wrong(
      'unknown-command',
      `there is no command "${printable(name)}"${near === undefined ? '' : `; did you mean ${near}?`}`,
      args.includes('--json'),
    );
  }
  const rest = at < 0 ? [...args] : [...args.slice(0, at), ...args.slice(at + 1)];
  if (name === 'reckon') {
    const module = await command.load();
    return module.run(rest, {}, realWorld({}));
  }
  const options = Object.fromEntries(
    Object.entries({ ...COMMON, ...command.options }).map(([key, spec]) => [key, { type: spec.type }]),
  );
  let parsed: ReturnType<typeof parseArgs>;
  try {
    parsed = parseArgs({ args: rest, options, allowPositionals: true, strict: true });
  } catch (error) {
    const message = String((error as Error).message).split('. ')[0] ?? 'that line is not understood';
    return wrong('unknown-field', message, args.includes('--json'));
  }
  const values = parsed.values as Readonly<Record<string, string | boolean | undefined>>;
  if (values.version === true) {
    process.stdout.write(`curvewright ${version()}\n`);
    return EXIT.done;
  }
  if (values.help === true) {
    process.stdout.write(`${at < 0 ? helpText() : commandHelp(command)}\n`);
    return EXIT.done;
  }
  const stray = parsed.positionals[command.most];
  if (stray !== undefined) {
    // An order for another build than the one meant would cut steel wrong: no word is passed over.
    const way =
      'build' in command.options
        ? '; a build is named by --build NAME'
        : name === 'start'
          ? '; a name of several words stands in quotes'
          : '';
    return wrong(
      'unknown-field',
      `${name} does not take the word "${printable(stray)}"${way}`,
      values.json === true,
    );
  }
  const module = await command.load();
  return module.run(parsed.positionals, values, realWorld(values));
};

main(process.argv.slice(2)).then(
  code => {
    // Set, not called: what is still in a pipe's buffer must get out first.
    process.exitCode = code;
  },
  (error: unknown) => {
    const closed = (error as { code?: unknown } | null)?.code === 'EPIPE';
    if (!closed) {
      process.stderr.write(`curvewright: a fault of the program, not of yours. Builds on disk are whole.\n`);
      process.stderr.write(
        `${process.env.DEBUG ? String((error as Error)?.stack ?? error) : String((error as Error)?.message ?? error)}\n`,
      );
    }
    process.exitCode = closed ? EXIT.done : EXIT.bug;
  },
);
