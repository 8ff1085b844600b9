import { readdirSync } from 'node:fs';
import { afterEach, describe, expect, test } from 'vitest';
import { newBuildEntries } from '../../src/coach/new-build.ts';
import type { Options, World } from '../../src/commands/command.ts';
import { run } from '../../src/commands/order.ts';
import { createBuild } from '../../src/machine/builds.ts';
import { compileContent } from '../../src/making/compile-content.ts';
import type { Content } from '../../src/words/schema.ts';
import { tempFolder } from '../machine/temp-folder.ts';

const made = tempFolder();
afterEach(made.remove);

const content = JSON.parse(compileContent(process.cwd())) as Content;
const now = () => new Date('2026-10-03T18:00:00Z');

const ask = async (options: Options, system: 'metric' | 'us' = 'metric', width?: string) => {
  const folder = made.make();
  const entries = newBuildEntries(
    'Yard kicker',
    system,
    width === undefined ? [] : [{ field: 'width', value: width }],
    now,
    true,
  );
  if (!entries.ok) throw new Error(entries.refusal.code);
  createBuild(folder, 'Yard kicker', entries.value, now);
  let out = '';
  let err = '';
  const world: World = {
    out: text => {
      out += text;
    },
    err: text => {
      err += text;
    },
    readStdin: async () => '',
    readFile: async () => '',
    folders: { builds: folder, demo: null, config: made.make(), cache: made.make() },
    content: () => content,
    now,
    columns: 80,
    ascii: false,
  };
  const code = await run([], { build: 'yard-kicker', ...options }, world);
  return { out, err, code, files: readdirSync(folder) };
};

describe('curvewright order', () => {
  test.each(['metric', 'us'] as const)('--json, %s: proven plans, and every bar closes', async system => {
    const { out, code, files } = await ask({ json: true }, system);
    expect(code).toBe(0);
    const order = JSON.parse(out);
    expect(order.schemaVersion).toBe(1);
    for (const section of order.sections) {
      expect(section.proven).toBe(true);
      const pieces = (part: { cuts: { from_mm: number; to_mm: number }[] }): number =>
        part.cuts.reduce((sum, c) => sum + c.to_mm - c.from_mm, 0);
      for (const part of section.parts)
        expect(
          part.trim_mm + pieces(part) + part.kerfs_mm - part.turned_mm + part.left_mm - part.length_mm,
        ).toBeCloseTo(0, 6);
      const length = (list: { length_mm: number }[]): number => list.reduce((sum, b) => sum + b.length_mm, 0);
      expect(length(section.parts)).toBeCloseTo(length(section.bars), 6);
    }
    // Asking leaves no file behind.
    expect(files.filter(f => !f.endsWith('.lock'))).toEqual(['yard-kicker.jsonl']);
  });

  test('as text for a phone, and as comma-separated values', async () => {
    expect((await ask({})).out).toContain('curved rail');
    expect((await ask({ csv: true })).out.split('\r\n')[0]).toContain('long_mm');
  });

  test('an entry plate is bought as long as the tape shows it, however odd the width', async () => {
    // 47 in, 3.94 ft and the like: nearest half millimetre or sixteenth above the plate as drawn.
    for (const [system, width] of [
      ['metric', '47 in'],
      ['us', '1.2 m'],
    ] as const) {
      const { out, code } = await ask({ json: true }, system, width);
      expect(code, width).toBe(0);
      for (const section of JSON.parse(out).sections) expect(section.error, section.section).toBeNull();
    }
  });

  test('two forms at once, and a build that is not there, are refused', async () => {
    const both = await ask({ json: true, csv: true });
    expect(both).toMatchObject({ code: 2, err: '' });
    expect(JSON.parse(both.out).error).toMatchObject({ code: 'contradiction', field: 'csv' });
    const gone = await ask({ build: 'nowhere', json: true });
    expect(gone.code).toBe(66);
    expect(JSON.parse(gone.out).error.message).toMatch(/\w/);
  });
});
