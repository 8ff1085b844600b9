import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cellWidth } from '../../src/drawing/cells.ts';
import { readContent } from '../../src/machine/content-file.ts';
import { deskFor, openDemo, type TestDesk } from './desk-for.ts';

const KEYS = [
  ' ',
  '\r',
  '\u001b',
  '\t',
  '\u007f',
  '\u001b[A',
  '\u001b[B',
  '\u001b[C',
  '\u001b[5~',
  '\u001b[6~',
  ...'0123456789-+.,/snpmrzwfdljoibuhgyxcek?'.split(''),
  '12.5',
  '-3',
  '5\'-3 1/2"',
  '1e400',
  'nan',
  '1 2 3 4\n5',
  '\u001b[200~7 8 9\u001b[201~',
  'é',
  '\u202e',
  '日本',
] as const;

const LOOKS = [
  [80, 24, false],
  [120, 40, false],
  [80, 24, true],
  [100, 30, false],
] as const;

/** A page is whole: as many rows as it may have, none wider than the window, no gap where a word or a number belongs. */
const looksWhole = (
  t: TestDesk,
  columns: number,
  rows: number,
  ascii: boolean,
  pressed: readonly string[],
): void => {
  const text = t.text(columns, rows, ascii);
  const told = JSON.stringify(pressed);
  const lines = text.split('\n');
  expect(lines.length, told).toBeLessThanOrEqual(rows - 1);
  for (const line of lines) expect(cellWidth(line), `${told}\n${line}`).toBeLessThanOrEqual(columns);
  expect(text, told).not.toMatch(
    /undefined|NaN|Infinity|\[object|\{[a-z-]+\}|\b(steps|figures|findings|remedies|gates|cautions|questions|problems|refusals|says)\.[a-z]+[.-]/,
  );
  expect(text, told).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f]/);
  if (ascii) expect(text, told).toMatch(/^[\u0020-\u007e\n]*$/);
};

test.each([null, 'orchard-bank-kicker', 'mill-lane-launch'])(
  'any keys at all leave a whole page: %s',
  name => {
    const content = readContent();
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...KEYS), { minLength: 5, maxLength: 45 }),
        fc.constantFrom(...LOOKS),
        (keys, [columns, rows, ascii]) => {
          const t = deskFor(content);
          if (name !== null) openDemo(t, name);
          const pressed: string[] = [];
          for (const key of keys) {
            pressed.push(key);
            if (t.desk.text === null) t.press(key);
            else t.type(key);
            if (t.quitWith() !== null) return;
            looksWhole(t, columns, rows, ascii, pressed);
          }
          t.desk.leaveBuild();
        },
      ),
      { numRuns: 25, seed: 20261120, endOnFailure: true },
    );
  },
);
