import { plainText } from '../build/plain-text.ts';
import { asIntent } from '../coach/intents.ts';
import { refusalText } from '../coach/refusal-text.ts';
import { settleAnswers } from '../coach/tasks.ts';
import { counted } from '../words/counted.ts';
import type { CommandModule } from './command.ts';
import { EXIT, SCHEMA_VERSION } from './exit-codes.ts';
import { keeperOf } from './find-build.ts';
import { intentSchema } from './schemas.ts';

export const run: CommandModule['run'] = async (words, options, world) => {
  const json = options.json === true;
  if (options.schema === true) {
    world.out(`${JSON.stringify(intentSchema(), null, 2)}\n`);
    return EXIT.done;
  }
  const say = (
    error: { code: string; field: string | null; message: string; accepted: string; line?: number },
    code: number,
  ): number => {
    if (json) world.out(`${JSON.stringify({ schemaVersion: SCHEMA_VERSION, error })}\n`);
    else
      world.err(
        `curvewright: ${error.line === undefined ? '' : `line ${error.line}: `}${error.message.replace(/\.$/, '')}. ${error.accepted}\n`,
      );
    return code;
  };
  if (words.length !== 1 || typeof options.in !== 'string') {
    return say(
      {
        code: 'missing-field',
        field: words.length === 1 ? 'in' : 'BUILD',
        message: 'log takes the name of a build and --in FILE',
        accepted: 'curvewright log kicker --in lines.jsonl',
      },
      EXIT.refused,
    );
  }
  let text: string;
  try {
    text = options.in === '-' ? await world.readStdin() : await world.readFile(options.in);
  } catch {
    return say(
      {
        code: 'missing-field',
        field: 'in',
        message: `cannot read ${plainText(options.in)}`,
        accepted: 'a readable file, or - for standard input',
      },
      EXIT.noInput,
    );
  }
  const opened = keeperOf(words[0], world);
  if (!opened.ok)
    return say(
      {
        code: opened.fault.code,
        field: 'BUILD',
        message: `${plainText(words[0] ?? '')}: ${opened.fault.message}`,
        accepted: 'curvewright builds lists them',
      },
      EXIT.noInput,
    );
  const keeper = opened.value;
  try {
    const held = keeper.open.heldBy();
    if (held !== null) {
      const who =
        held.code === 'held'
          ? `process ${held.holder?.pid ?? '?'} on ${held.holder?.host ?? 'this machine'}, since ${held.holder?.since ?? '?'}`
          : held.code;
      return say(
        {
          code: 'held',
          field: 'BUILD',
          message: `another Curvewright has this build open (${plainText(who)})`,
          accepted: 'close it there first',
        },
        EXIT.heldByOther,
      );
    }
    const barred = keeper.open.barred();
    if (barred !== null)
      return say(
        {
          code: 'read-only',
          field: 'BUILD',
          message: barred,
          accepted: 'a newer Curvewright, or another copy',
        },
        EXIT.cannotWrite,
      );
    const voice = { content: world.content(), system: keeper.view().build.system };
    const kept: string[] = [];
    for (const [i, raw] of text.split('\n').entries()) {
      const line = raw.trim();
      if (line === '') continue;
      let parsed: unknown;
      try {
        parsed = JSON.parse(line);
      } catch {
        return say(
          {
            code: 'not-json',
            field: null,
            message: 'that line is not JSON',
            accepted: 'one JSON object a line',
            line: i + 1,
          },
          EXIT.refused,
        );
      }
      const intent = asIntent(parsed);
      if (!intent.ok)
        return say(
          {
            code: intent.code,
            field: intent.at,
            message: plainText(intent.wrong),
            accepted: intent.says,
            line: i + 1,
          },
          EXIT.refused,
        );
      // A choice among remedies may hang on a heavy answer: it is waited for here, never at the bench.
      await settleAnswers(keeper);
      const acted = keeper.act(intent.value);
      if (acted.is === 'refused') {
        const words = refusalText(voice, keeper.view(), acted.refusal);
        return say(
          {
            code: acted.refusal.problem ?? acted.refusal.code,
            field: acted.refusal.field ?? null,
            message: words.says,
            accepted: words.accepted,
            line: i + 1,
          },
          EXIT.refused,
        );
      }
      if (acted.is === 'barred')
        return say(
          {
            code: 'read-only',
            field: null,
            message: acted.why,
            accepted: 'mend that and try again',
            line: i + 1,
          },
          EXIT.cannotWrite,
        );
      if (acted.unwritten !== null)
        return say(
          {
            code: acted.unwritten.code,
            field: null,
            message: acted.unwritten.message,
            accepted: 'room on the disk, or leave to write there',
            line: i + 1,
          },
          EXIT.cannotWrite,
        );
      kept.push(acted.entry.id);
    }
    const next = keeper.view().next;
    if (json)
      world.out(`${JSON.stringify({ schemaVersion: SCHEMA_VERSION, kept, next: next?.key ?? null })}\n`);
    else world.out(`${counted(kept.length, 'entry', 'entries')} on disk. Next: ${next?.key ?? 'nothing'}\n`);
    return EXIT.done;
  } finally {
    keeper.open.release();
  }
};
