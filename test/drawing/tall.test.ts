import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cellWidth } from '../../src/drawing/cells.ts';
import { LARGE_ROWS, largeDigits } from '../../src/drawing/large.ts';
import { tallDigits, tallWidth } from '../../src/drawing/tall.ts';

const figure = fc.string({ unit: fc.constantFrom(...'0123456789.+-\'"/ ') });

describe('figures readable from standing', () => {
  test('ten digits in half blocks', () => {
    expect(tallDigits('0123456789')).toEqual([
      '█▀█ ▄█  ▀▀█ ▀▀█ █ █ █▀▀ █▀▀ ▀▀█ █▀█ █▀█',
      '█ █  █  █▀▀ ▀▀█ ▀▀█ ▀▀█ █▀█   █ █▀█ ▀▀█',
      '▀▀▀ ▀▀▀ ▀▀▀ ▀▀▀   ▀ ▀▀▀ ▀▀▀   ▀ ▀▀▀ ▀▀▀',
    ]);
  });

  test('ten digits in strokes', () => {
    expect(tallDigits('0123456789', true)).toEqual([
      ' _       _   _       _   _   _   _   _ ',
      '| |   |  _|  _| |_| |_  |_    | |_| |_|',
      '|_|   | |_   _|   |  _| |_|   | |_|  _|',
    ]);
  });

  test('a signed offset with its point', () => {
    expect(tallDigits('+15.5')).toEqual([' ▄  ▄█  █▀▀   █▀▀', '▀█▀  █  ▀▀█   ▀▀█', '    ▀▀▀ ▀▀▀ ▀ ▀▀▀']);
    expect(tallDigits('-0.6')[1]).toBe('▀▀▀ █ █   █▀█');
    expect(tallDigits('−0.6')).toEqual(tallDigits('-0.6'));
  });

  test('a fraction stands whole, as tall as the inches before it', () => {
    expect(tallDigits('15 3/4')).toEqual([
      '▄█  █▀▀    ▀▀█   █ █ █',
      ' █  ▀▀█    ▀▀█ ▄▀  ▀▀█',
      '▀▀▀ ▀▀▀    ▀▀▀ ▀     ▀',
    ]);
    expect(tallDigits('15 3/4', true)).toEqual([
      '     _      _    /    ',
      '  | |_      _|  /  |_|',
      '  |  _|     _| /     |',
    ]);
  });

  test('the hyphen between feet and inches is not drawn as a minus', () => {
    expect(tallDigits(`8'-0"`)).toEqual(tallDigits(`8' 0"`));
    expect(tallDigits(`8'-0"`)[1]).not.toContain('▀▀▀ ');
  });

  test('no two digits look alike, in either set of signs', () => {
    for (const ascii of [false, true]) {
      const shapes = Array.from('0123456789.+-\'"/', sign => tallDigits(sign, ascii).join('\n'));
      expect(new Set(shapes).size).toBe(shapes.length);
    }
  });

  test('a sign without a tall form stands small on the bottom row', () => {
    expect(tallDigits('5 to 13')[2]).toContain('to');
  });

  test('the three rows are equally wide, and the ASCII twin takes the same cells in 7-bit signs', () => {
    fc.assert(
      fc.property(figure, text => {
        const rows = tallDigits(text);
        const twin = tallDigits(text, true);
        for (const line of [...rows, ...twin]) expect(cellWidth(line)).toBe(tallWidth(text));
        expect(twin.join('')).toMatch(/^[\x20-\x7E]*$/);
      }),
    );
  });
});

describe('figures readable from across the garage', () => {
  test('each pixel of a digit is four cells by two rows', () => {
    const rows = largeDigits('1.');
    expect(rows).toHaveLength(LARGE_ROWS);
    expect(rows[0]).toBe('    ████          ');
    expect(rows[2]).toBe('████████          ');
    expect(rows[9]).toBe('████████████  ████');
  });

  test('a long figure takes narrower digits sooner than it overflows', () => {
    expect(cellWidth(largeDigits('393.2', false, 80)[0]!)).toBe(60);
    expect(cellWidth(largeDigits('10 13/16', false, 80)[0]!)).toBeLessThanOrEqual(80);
  });

  test('all ten rows are equally wide, in ASCII 7-bit', () => {
    fc.assert(
      fc.property(figure, fc.integer({ min: 20, max: 120 }), (text, columns) => {
        const rows = largeDigits(text, true, columns);
        expect(rows).toHaveLength(LARGE_ROWS);
        for (const line of rows) expect(line.length).toBe(rows[0]!.length);
        expect(rows.join('')).toMatch(/^[ #]*$/);
      }),
    );
  });
});
