import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { EXIT } from '../../src/commands/exit-codes.ts';
import { manualPage } from '../../src/commands/manual.ts';
import { TOPICS } from '../../src/commands/reckon/topics.ts';
import { COMMANDS, COMMON } from '../../src/commands/table.ts';
import { tempFolder } from '../machine/temp-folder.ts';

const made = tempFolder();
afterEach(made.remove);

const topics = await Promise.all(Object.values(TOPICS).map(async load => (await load()).topic));
const page = manualPage(COMMANDS, COMMON, topics, '1.2.3');

describe('the manual page', () => {
  test('has the sections that a page of section 1 has, in their order', () => {
    expect([...page.matchAll(/^\.SH (.+)$/gm)].map(([, name]) => name)).toEqual([
      'NAME',
      'SYNOPSIS',
      'DESCRIPTION',
      'COMMANDS',
      'TOPICS OF RECKON',
      'OPTIONS OF EVERY COMMAND',
      'FILES',
      'ENVIRONMENT',
      'EXIT STATUS',
    ]);
    expect(page.split('\n')[0]).toBe('.TH CURVEWRIGHT 1 "" "curvewright 1.2.3" "General Commands Manual"');
  });

  test('is plain ASCII, and no line is an order that is none', () => {
    expect(page).toMatch(/^[\n\x20-\x7e]*$/);
    const orders = new Set([...page.matchAll(/^[.'](\w*)/gm)].map(([, order]) => order));
    const known = ['TH', 'SH', 'SS', 'TP', 'PP', 'B', 'BR', 'I', 'RS', 'RE', 'nf', 'fi', 'br'];
    expect([...orders].filter(order => !known.includes(order as string))).toEqual([]);
  });

  test('tells every command, option, topic and way of ending', () => {
    for (const { name } of COMMANDS) expect(page).toContain(`.SS curvewright ${name}`);
    for (const name of [...COMMANDS.flatMap(c => Object.keys(c.options)), ...Object.keys(COMMON)])
      expect(page, name).toContain(`.BR \\-\\-${name}`);
    for (const { name } of topics) expect(page).toContain(`.B ${name.replaceAll('-', '\\-')}`);
    for (const code of Object.values(EXIT)) expect(page).toContain(`.B ${code}\n`);
  });
});

/** Not every system has it: a small one may be without its manual. */
const READER = 'man';

describe.skipIf(spawnSync(READER, ['--version']).status !== 0)('as man sets it', () => {
  test('without a complaint, and its examples can be pasted', () => {
    const file = join(made.make(), 'curvewright.1');
    writeFileSync(file, page);
    const { status, stdout, stderr } = spawnSync(READER, ['--warnings', '-l', file], {
      encoding: 'utf8',
      env: { ...process.env, MANWIDTH: '110', MANPAGER: 'cat', LC_ALL: 'C.UTF-8', MAN_KEEP_FORMATTING: '' },
    });
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    for (const { examples } of COMMANDS) for (const example of examples) expect(stdout).toContain(example);
    expect(stdout).toContain('guidance, never approval');
  });
});
