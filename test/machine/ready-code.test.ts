import fs from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { readyCode } from '../../src/machine/ready-code.ts';
import { tempFolder } from './temp-folder.ts';

const temp = tempFolder();
afterEach(temp.remove);

type Part = { answer: () => number };

const bundle = (text: string): { file: string; folder: string } => {
  const place = temp.make();
  const file = join(place, 'part.cjs');
  fs.writeFileSync(file, text);
  return { file, folder: join(place, 'cache', 'deep') };
};

describe('a part of the program that keeps its compiled form', () => {
  test('answers the same without a kept form, with one, and with a damaged one', () => {
    const { file, folder } = bundle('exports.answer=()=>40+2;');
    const first = readyCode<Part>(file, folder);
    expect(first.part.answer()).toBe(42);
    first.keep();
    const [name] = fs.readdirSync(folder);
    const kept = join(folder, name ?? '');
    expect(readyCode<Part>(file, folder).part.answer()).toBe(42);

    const damaged = fs.readFileSync(kept);
    for (let i = 40; i < damaged.length; i += 7) damaged[i] = (damaged[i] ?? 0) ^ 0x55;
    fs.writeFileSync(kept, damaged);
    const again = readyCode<Part>(file, folder);
    expect(again.part.answer()).toBe(42);
    again.keep();
    expect(fs.readFileSync(kept).equals(damaged)).toBe(false);
  });

  test('never runs the form kept of another text, even one as long, and leaves no old ones behind', () => {
    const { file, folder } = bundle('exports.answer=()=>41;');
    const old = readyCode<Part>(file, folder);
    old.part.answer();
    old.keep();
    fs.writeFileSync(file, 'exports.answer=()=>43;');
    const next = readyCode<Part>(file, folder);
    expect(next.part.answer()).toBe(43);
    next.keep();
    expect(fs.readdirSync(folder)).toHaveLength(1);
    expect(readyCode<Part>(file, folder).part.answer()).toBe(43);
  });

  test('does without where nothing can be kept', () => {
    const { file, folder } = bundle('exports.answer=()=>42;');
    fs.mkdirSync(join(folder, '..'), { recursive: true });
    fs.writeFileSync(folder, 'a file where the folder should be');
    const part = readyCode<Part>(file, folder);
    part.keep();
    expect(part.part.answer()).toBe(42);
  });
});
