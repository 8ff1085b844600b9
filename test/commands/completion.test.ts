import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterEach, describe, expect, test } from 'vitest';
import type { World } from '../../src/commands/command.ts';
import { completionOf } from '../../src/commands/completion.ts';
import { TOPICS } from '../../src/commands/reckon/topics.ts';
import { COMMANDS, COMMON } from '../../src/commands/table.ts';
import { STAGES } from '../../src/stages/sheet.ts';
import { tempFolder } from '../machine/temp-folder.ts';

const made = tempFolder();
afterEach(made.remove);

const ask = async (...words: string[]) => {
  let [out, err] = ['', ''];
  const world = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
  } as World;
  return { code: await completionOf(COMMANDS, COMMON).run(words, {}, world), out, err };
};

const script = async (shell: string): Promise<string> => (await ask(shell)).out;

const installed = (shell: string): boolean => spawnSync(shell, ['-c', 'exit 0']).status === 0;

describe('curvewright completion', () => {
  test.each([[[]], [['tcsh']], [['bash', 'zsh']]])('%j: says which shells there are, exit 2', async words => {
    const { code, out, err } = await ask(...words);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain('bash, zsh, fish');
  });

  test.each(['bash', 'zsh', 'fish'])('%s: every command, option, stage and topic is in it', async shell => {
    const text = await script(shell);
    const topics = await Promise.all(Object.values(TOPICS).map(async load => (await load()).topic));
    const words = [
      ...COMMANDS.map(({ name }) => name),
      ...COMMANDS.flatMap(({ options }) => Object.keys(options)),
      ...Object.keys(COMMON),
      ...STAGES,
      ...topics.flatMap(({ name, fields }) => [name, ...Object.keys(fields)]),
    ];
    expect(words.filter(word => !new RegExp(`(?<![\\w])${word}(?![\\w])`).test(text))).toEqual([]);
    // Nothing of the table that a shell would read as an order stands bare.
    expect(words.filter(word => !/^[\w-]+$/.test(word))).toEqual([]);
  });

  test('the number command is offered only what it reads', async () => {
    const text = await script('bash');
    expect(text).toContain(`'reckon:'*) offer='--in --json --schema --help'`);
    expect(text).not.toContain(`'reckon:--sessions'`);
  });
});

/** What is typed, word by word, the last one being what is to be finished; and what is offered for it. */
const LINES: readonly (readonly [typed: readonly string[], offered: readonly string[]])[] = [
  [['s'], ['sheet', 'start']],
  [['sheet', 't'], ['tack']],
  [['--sessions', 'start', 'sheet', 'b'], ['brace']],
  [
    ['start', '--units', ''],
    ['metric', 'us'],
  ],
  [['start', '--build', 'reckon', '--u'], ['--units']],
  [['reckon', 'ci'], ['circle']],
  [['reckon', 'arc', '--ra'], ['--radius_mm']],
  [
    ['reckon', 'column', '--rule', ''],
    ['AISC360', 'EN1993'],
  ],
  [
    ['join', 'kick'],
    ['kicker copy.jsonl', 'kicker.jsonl'],
  ],
  [['log', 'kicker', '--in', 'kicker.'], ['kicker.jsonl']],
  [['nonsense', ''], []],
  [['completion', 'z'], ['zsh']],
];

/** A folder with two copies of a build, one of which has a space in its name. */
const folder = (): string => {
  const here = join(made.make(), 'builds');
  mkdirSync(here);
  for (const name of ['kicker.jsonl', 'kicker copy.jsonl']) writeFileSync(join(here, name), '');
  return here;
};

/** What a shell prints, in a folder and with a home of its own. */
const answer = (shell: string, words: readonly string[], cwd: string): string => {
  const home = made.make();
  const env = { HOME: home, XDG_CONFIG_HOME: home, XDG_DATA_HOME: home, XDG_CACHE_HOME: home };
  return execFileSync(shell, words, { cwd, encoding: 'utf8', env: { ...process.env, ...env } });
};

describe.skipIf(!installed('bash'))('in bash', () => {
  test.each(LINES)('%j: %j', async (typed, offered) => {
    const asked = `${await script('bash')}\nCOMP_WORDS=(curvewright "$@"); COMP_CWORD=$#; _curvewright; printf '%s\\n' "\${COMPREPLY[@]}"`;
    const out = answer('bash', ['-c', asked, 'bash', ...typed], folder());
    expect(out.split('\n').filter(Boolean).sort()).toEqual(offered);
  });

  test('--units=m, which bash takes for three words', async () => {
    const asked = `${await script('bash')}\nCOMP_WORDS=(curvewright start --units = m); COMP_CWORD=4; _curvewright; echo "\${COMPREPLY[@]}"`;
    expect(answer('bash', ['-c', asked], made.make())).toBe('metric\n');
  });
});

describe.skipIf(!installed('fish'))('in fish', () => {
  test.each(LINES.filter(([typed]) => typed[0] !== 'nonsense'))('%j: %j', async (typed, offered) => {
    const asked = `${await script('fish')}\ncomplete -C 'curvewright ${typed.join(' ')}'`;
    const out = answer('fish', ['--no-config', '-c', asked], folder());
    const words = out.split('\n').map(line => line.split('\t')[0]?.replaceAll('\\', ''));
    expect(words.filter(Boolean).sort()).toEqual(offered);
  });
});

describe.skipIf(!installed('zsh'))('in zsh', () => {
  test('the script is one zsh reads', async () => {
    const file = join(made.make(), '_curvewright');
    writeFileSync(file, await script('zsh'));
    expect(spawnSync('zsh', ['-f', '-n', file], { encoding: 'utf8' })).toMatchObject({
      status: 0,
      stderr: '',
    });
  });
});

test('neither the scripts nor the manual page load Ink', async () => {
  const { metafile } = await build({
    entryPoints: ['src/commands/completion.ts', 'src/making/manual.ts'],
    bundle: true,
    splitting: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    write: false,
    metafile: true,
    outdir: 'nowhere',
    logLevel: 'silent',
  });
  const loaded = new Set<string>();
  const load = (path: string): void => {
    if (loaded.has(path)) return;
    loaded.add(path);
    for (const { kind, path: next } of metafile.outputs[path]?.imports ?? [])
      if (kind === 'import-statement') load(next);
  };
  const parts = Object.entries(metafile.outputs);
  // The topics are loaded when the scripts are made.
  const begun = parts.filter(([, { entryPoint }]) =>
    /(commands\/completion|making\/manual|reckon\/all-topics)\.ts$/.test(entryPoint ?? ''),
  );
  expect(begun).toHaveLength(3);
  for (const [path] of begun) load(path);
  expect([...loaded].filter(path => /^(ink|react|yoga)/.test(path))).toEqual([]);
  const files = parts.filter(([path]) => loaded.has(path)).flatMap(([, { inputs }]) => Object.keys(inputs));
  expect(files.length).toBeGreaterThan(20);
  expect(files.filter(file => file.startsWith('src/screen'))).toEqual([]);
});
