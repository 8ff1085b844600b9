import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

const ROOT = resolve(import.meta.dirname, '..');
const SRC = join(ROOT, 'src');

const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .map(f => f.replaceAll('\\', '/'))
  .filter(f => /\.tsx?$/.test(f))
  .sort();

type Import = Readonly<{ from: string; to: string }>;

const importsOf = (file: string): string[] =>
  ts.preProcessFile(readFileSync(join(SRC, file), 'utf8'), true, true).importedFiles.map(i => i.fileName);

const inside: Import[] = files.flatMap(from =>
  importsOf(from)
    .filter(to => to.startsWith('.'))
    .map(to => ({ from, to: relative(SRC, resolve(SRC, dirname(from), to)).replaceAll('\\', '/') })),
);

const room = (file: string): string => (file.includes('/') ? (file.split('/')[0] as string) : 'main');

/** Which rooms a room may open a door to: downward only. */
const DOORS: Readonly<Record<string, readonly string[]>> = {
  main: ['commands'],
  commands: [
    'screen',
    'drawing',
    'coach',
    'words',
    'stages',
    'scene',
    'machine',
    'build',
    'ramp',
    'reckon',
    'quantity',
  ],
  screen: ['drawing', 'coach', 'words', 'stages', 'scene', 'machine', 'build', 'ramp', 'reckon', 'quantity'],
  drawing: ['scene', 'quantity'],
  coach: ['words', 'stages', 'scene', 'machine', 'build', 'ramp', 'reckon', 'quantity'],
  words: ['stages', 'quantity'],
  stages: ['scene', 'build', 'ramp', 'reckon', 'quantity'],
  scene: [],
  machine: ['words', 'build', 'quantity'],
  build: ['ramp', 'quantity'],
  ramp: ['reckon', 'quantity'],
  reckon: ['quantity'],
  quantity: [],
  // Build steps: what npm run build runs, no part of the program.
  making: ['words', 'commands'],
};

/** Inside reckon: numeric → curve → steel → statics → rail; the others stand alone on numeric. */
const RECKON: Readonly<Record<string, readonly string[]>> = {
  numeric: [],
  curve: ['numeric'],
  steel: ['numeric', 'curve'],
  statics: ['numeric', 'curve', 'steel'],
  strength: ['numeric', 'curve', 'steel', 'statics'],
  rail: ['numeric', 'curve', 'steel', 'statics'],
  stock: ['numeric'],
  welding: ['numeric'],
  ride: ['numeric'],
  handling: ['numeric'],
  coating: ['numeric'],
};

const STAGE_FOLDERS = ['plan', 'cut', 'prep', 'tack', 'weld', 'brace', 'assemble', 'finish'];

describe('the house', () => {
  test('is read at all: a checker that finds nothing passes nothing', () => {
    expect(files.length).toBeGreaterThan(150);
    expect(inside.length).toBeGreaterThan(400);
  });

  test('every room is in the table, and every import leads to a file', () => {
    expect([...new Set(files.map(room))].filter(r => DOORS[r] === undefined)).toEqual([]);
    expect(inside.filter(i => !files.includes(i.to))).toEqual([]);
  });

  test('imports run downward only', () => {
    const upward = inside.filter(
      i => room(i.from) !== room(i.to) && !DOORS[room(i.from)]?.includes(room(i.to)),
    );
    expect(upward).toEqual([]);
  });

  test('stages do not look into each other', () => {
    const folder = (f: string): string => f.split('/')[1] ?? '';
    const sideways = inside.filter(
      i =>
        room(i.from) === 'stages' &&
        room(i.to) === 'stages' &&
        STAGE_FOLDERS.includes(folder(i.from)) &&
        STAGE_FOLDERS.includes(folder(i.to)) &&
        folder(i.from) !== folder(i.to),
    );
    expect(sideways).toEqual([]);
  });

  test('the calculators keep their order', () => {
    const folder = (f: string): string => f.split('/')[1] ?? '';
    const wrong = inside.filter(
      i =>
        room(i.from) === 'reckon' &&
        room(i.to) === 'reckon' &&
        folder(i.from) !== folder(i.to) &&
        !RECKON[folder(i.from)]?.includes(folder(i.to)),
    );
    expect(wrong).toEqual([]);
  });

  test('no file imports itself by a circle', () => {
    const next = new Map<string, string[]>();
    for (const i of inside) next.set(i.from, [...(next.get(i.from) ?? []), i.to]);
    const done = new Set<string>();
    const circles: string[] = [];
    const visit = (file: string, path: readonly string[]): void => {
      if (path.includes(file)) {
        circles.push([...path.slice(path.indexOf(file)), file].join(' > '));
        return;
      }
      if (done.has(file)) return;
      for (const to of next.get(file) ?? []) visit(to, [...path, file]);
      done.add(file);
    };
    for (const f of files) visit(f, []);
    expect(circles).toEqual([]);
  });

  test('clock, chance and the system stay in their rooms', () => {
    const worldly = new Set(['machine', 'commands', 'screen', 'main', 'making']);
    // The thread that heavy answers run in.
    const excepted = new Set(['coach/worker.ts', 'coach/thinker.ts']);
    const found = files
      .filter(f => !worldly.has(room(f)) && !excepted.has(f))
      .flatMap(f => {
        const text = readFileSync(join(SRC, f), 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');
        return [
          /new Date\(\)/,
          /Date\.now/,
          /Math\.random/,
          /performance\.now/,
          /(?<![.\w])process\.(env|argv|std|exit|cwd|on|pid|platform)/,
          /from 'node:/,
          /(?<![.\w])console\.(log|error|warn|info)/,
        ]
          .filter(p => p.test(text))
          .map(p => `${f}: ${p.source}`);
      });
    expect(found).toEqual([]);
  });

  test('zod comes in only as its small star import', () => {
    const other = files.filter(f => {
      const text = readFileSync(join(SRC, f), 'utf8');
      return /from 'zod/.test(text) && !/import \* as z from 'zod\/mini'/.test(text);
    });
    expect(other).toEqual([]);
  });

  test('only the bench loads Ink', () => {
    const users = files.filter(f =>
      importsOf(f).some(i => i === 'ink' || i === 'react' || i.startsWith('ink-')),
    );
    expect(users.every(f => f.startsWith('screen/'))).toBe(true);
  });
});
