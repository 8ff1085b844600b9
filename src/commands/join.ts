import { type Journal, join as joinCopies } from '../build/join.ts';
import { plainText } from '../build/plain-text.ts';
import { understandEntry } from '../build/versions/understand.ts';
import { createJournal, openJournal } from '../machine/journal-file.ts';
import { counted } from '../words/counted.ts';
import type { CommandModule } from './command.ts';
import { EXIT, SCHEMA_VERSION } from './exit-codes.ts';

const readCopy = (
  path: string,
): { ok: true; value: Journal; setAside: number } | { ok: false; message: string } => {
  const opened = openJournal(path, { format: 'curvewright-build', understand: understandEntry });
  if (!opened.ok) return { ok: false, message: `${plainText(path)}: ${opened.fault.message}` };
  const { header, stored, setAside } = opened.value.reading();
  const newer = setAside.find(s => s.why === 'newer');
  if (newer !== undefined)
    return {
      ok: false,
      message: `${plainText(path)}, line ${newer.line}: written by a newer Curvewright, which must join it`,
    };
  return header === null
    ? {
        ok: false,
        message: `${plainText(path)}: its first line is damaged, so nobody can tell which build it is`,
      }
    : { ok: true, value: { header, entries: stored }, setAside: setAside.length };
};

/** Joins two or more copies of one build. The copies stay as they are; the joined build goes to a new file. */
export const run: CommandModule['run'] = async (words, options, world) => {
  const json = options.json === true;
  const fail = (code: string, message: string, accepted: string, exit: number): number => {
    if (json)
      world.out(
        `${JSON.stringify({ schemaVersion: SCHEMA_VERSION, error: { code, field: null, message, accepted } })}\n`,
      );
    else world.err(`curvewright: ${message}. ${accepted}\n`);
    return exit;
  };
  const [first, ...others] = words;
  if (first === undefined || others.length === 0) {
    return fail(
      'missing-field',
      'join takes two copies of one build',
      'curvewright join kicker.jsonl usb/kicker.jsonl --out joined.jsonl',
      EXIT.refused,
    );
  }
  const start = readCopy(first);
  if (!start.ok) return fail('missing', start.message, 'two readable copies of one build', EXIT.noInput);
  let joined: Journal = start.value;
  let conflicts = 0;
  let setAside = start.setAside;
  for (const path of others) {
    const copy = readCopy(path);
    if (!copy.ok) return fail('missing', copy.message, 'two readable copies of one build', EXIT.noInput);
    const both = joinCopies(joined, copy.value);
    if (!both.ok) return fail(both.fault.code, both.fault.message, both.fault.accepted, EXIT.refused);
    joined = both.value.journal;
    conflicts = both.value.conflicts.length;
    setAside += copy.setAside;
  }
  const out = typeof options.out === 'string' ? options.out : first.replace(/(\.jsonl)?$/, '-joined.jsonl');
  const { version: _version, ...header } = joined.header;
  const written = createJournal(out, header, joined.entries);
  if (!written.ok)
    return fail(
      written.fault.code,
      `${plainText(out)}: ${written.fault.message}`,
      '--out with a file that is not there yet',
      EXIT.cannotCreate,
    );
  const report = { schemaVersion: SCHEMA_VERSION, out, entries: joined.entries.length, conflicts, setAside };
  world.out(
    json
      ? `${JSON.stringify(report)}\n`
      : `${out}: ${counted(report.entries, 'entry', 'entries')}${conflicts > 0 ? `, ${conflicts} of them read differently in the copies (a finding will say which)` : ''}${setAside > 0 ? `, ${counted(setAside, 'damaged line')} left in the copies` : ''}\n`,
  );
  return EXIT.done;
};
