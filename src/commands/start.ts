import { DESIGN_VALUES } from '../build/entries.ts';
import { plainText } from '../build/plain-text.ts';
import { openKeeper } from '../coach/keeper.ts';
import { newBuildEntries } from '../coach/new-build.ts';
import { refusalText } from '../coach/refusal-text.ts';
import { shopNumbers } from '../coach/shop-keeper.ts';
import { createBuild } from '../machine/builds.ts';
import { openSettings } from '../machine/settings.ts';
import type { System } from '../quantity/quantities.ts';
import { DESIGN_FIELDS } from '../ramp/design.ts';
import type { CommandModule, World } from './command.ts';
import { EXIT, SCHEMA_VERSION } from './exit-codes.ts';
import { answersSchema } from './schemas.ts';

/** What is wrong, on the stream and in the form asked for. */
const refused = (world: World, json: boolean, error: Record<string, unknown>, code: number): number => {
  if (json) world.out(`${JSON.stringify({ schemaVersion: SCHEMA_VERSION, error })}\n`);
  else
    world.err(
      `curvewright: ${String(error.message).replace(/\.$/, '')}${error.accepted ? `. ${String(error.accepted)}` : ''}\n`,
    );
  return code;
};

const readAnswers = async (
  from: string,
  world: World,
): Promise<{ text: string } | { code: number; message: string }> => {
  try {
    return { text: from === '-' ? await world.readStdin() : await world.readFile(from) };
  } catch {
    return { code: EXIT.noInput, message: `cannot read ${plainText(from)}` };
  }
};

const isRecord = (raw: unknown): raw is Record<string, unknown> =>
  typeof raw === 'object' && raw !== null && !Array.isArray(raw);

export const run: CommandModule['run'] = async (words, options, world) => {
  const json = options.json === true;
  if (options.schema === true) {
    world.out(`${JSON.stringify(answersSchema(), null, 2)}\n`);
    return EXIT.done;
  }
  const name = plainText(words[0] ?? '').trim();
  if (name === '' || words.length > 1) {
    return refused(
      world,
      json,
      {
        code: 'missing-field',
        field: 'NAME',
        message: 'start takes one name for the build',
        accepted: 'curvewright start "Yard kicker"',
      },
      EXIT.refused,
    );
  }
  let answers: Record<string, unknown> = {};
  if (typeof options.in === 'string') {
    const got = await readAnswers(options.in, world);
    if ('code' in got)
      return refused(
        world,
        json,
        {
          code: 'missing-field',
          field: 'in',
          message: got.message,
          accepted: 'a readable file, or - for standard input',
        },
        got.code,
      );
    try {
      const parsed: unknown = JSON.parse(got.text);
      if (!isRecord(parsed)) throw new Error('not an object');
      answers = parsed;
    } catch {
      return refused(
        world,
        json,
        {
          code: 'not-a-number',
          field: null,
          message: 'the answers are not one JSON object',
          accepted: 'curvewright start --schema shows it',
        },
        EXIT.refused,
      );
    }
  }
  const said =
    options.units ??
    answers.units ??
    openSettings(world.folders.config, world.now()).preferences().units ??
    'metric';
  if (said !== 'metric' && said !== 'us') {
    return refused(
      world,
      json,
      {
        code: 'out-of-range',
        field: 'units',
        message: `units ${plainText(String(said)).slice(0, 20)} are not known`,
        accepted: 'metric or us',
      },
      EXIT.refused,
    );
  }
  const system: System = said;
  const fields = Object.keys(answers).filter(k => k !== 'units');
  const stray = fields.find(k => !Object.hasOwn(DESIGN_VALUES, k));
  if (stray !== undefined) {
    return refused(
      world,
      json,
      {
        code: 'unknown-field',
        field: plainText(stray),
        message: `there is no answer called ${plainText(stray).slice(0, 40)}`,
        accepted: `units, ${DESIGN_FIELDS.join(', ')}`,
      },
      EXIT.refused,
    );
  }
  const made = newBuildEntries(
    name,
    system,
    fields.map(field => ({ field, value: answers[field] })),
    world.now,
    fields.length > 0,
    false,
    shopNumbers(world.folders.builds),
  );
  if (!made.ok) {
    const text = refusalText({ content: world.content(), system }, null, made.refusal);
    return refused(
      world,
      json,
      {
        code: made.refusal.problem ?? made.refusal.code,
        field: made.refusal.field ?? null,
        message: text.says,
        accepted: text.accepted,
      },
      EXIT.refused,
    );
  }
  const written = createBuild(world.folders.builds, name, made.value, world.now);
  if (!written.ok) {
    return refused(
      world,
      json,
      {
        code: written.fault.code,
        field: null,
        message: `cannot make ${written.fault.path}: ${written.fault.message}`,
        accepted: 'another --sessions folder',
      },
      EXIT.cannotCreate,
    );
  }
  const keeper = openKeeper(written.value, { now: world.now });
  if (keeper.ok) keeper.value.open.release();
  const file = written.value.replace(/^.*[\\/]/, '').replace(/\.jsonl$/, '');
  await openSettings(world.folders.config, world.now()).set({ lastBuild: file });
  if (json) {
    world.out(
      `${JSON.stringify({ schemaVersion: SCHEMA_VERSION, build: file, path: written.value, entries: made.value.length, agreed: fields.length > 0 })}\n`,
    );
  } else {
    world.out(`${name}: begun in ${written.value}\nOpen it: curvewright --build ${file}\n`);
  }
  return EXIT.done;
};
