import { understandEntry } from '../build/versions/understand.ts';
import { listBuilds, listDemos } from '../machine/builds.ts';
import { counted } from '../words/counted.ts';
import type { CommandModule } from './command.ts';
import { EXIT, SCHEMA_VERSION } from './exit-codes.ts';

export const run: CommandModule['run'] = async (_words, options, world) => {
  const { folders } = world;
  const list = listBuilds(folders.builds, understandEntry);
  if (!list.ok) {
    const message = `${folders.builds}: ${list.fault.message}`;
    const error = {
      code: list.fault.code,
      field: 'sessions',
      message,
      accepted: 'another --sessions folder',
    };
    if (options.json === true) world.out(`${JSON.stringify({ schemaVersion: SCHEMA_VERSION, error })}\n`);
    else world.err(`curvewright: ${message}\n`);
    return EXIT.noInput;
  }
  const demos = listDemos(folders.demo, understandEntry);
  const row = (b: (typeof demos)[number]) => ({
    name: b.name,
    entries: b.count,
    lastAt: b.lastAt,
    setAside: b.setAside,
    readOnly: b.readOnly,
  });
  if (options.json === true) {
    world.out(
      `${JSON.stringify({
        schemaVersion: SCHEMA_VERSION,
        folder: folders.builds,
        builds: list.value.builds.map(row),
        unreadable: list.value.unreadable.map(u => ({ name: u.name, why: u.fault.message })),
        demos: demos.map(row),
      })}\n`,
    );
    return EXIT.done;
  }
  const line = (b: (typeof demos)[number]): string =>
    `  ${b.name.padEnd(28)} ${String(b.count).padStart(5)} ${b.count === 1 ? 'entry  ' : 'entries'}   ${(b.lastAt ?? '').slice(0, 10)}${
      b.setAside > 0 ? `   ${counted(b.setAside, 'damaged line')} set aside` : ''
    }${b.readOnly === null ? '' : `   read only: ${b.readOnly}`}\n`;
  world.out(`Your builds in ${folders.builds}\n`);
  world.out(
    list.value.builds.length === 0
      ? '  none yet: curvewright start NAME\n'
      : list.value.builds.map(line).join(''),
  );
  for (const u of list.value.unreadable) world.out(`  ${u.name}: ${u.fault.message}\n`);
  if (demos.length > 0)
    world.out(`Demo builds, invented (the bench opens a copy)\n${demos.map(line).join('')}`);
  return EXIT.done;
};
