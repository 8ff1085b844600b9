import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  besideRows,
  cellWidth,
  cutRow,
  cutTo,
  joinSides,
  padRow,
  padTo,
  row,
  rowText,
  rowWidth,
  rule,
  wrap,
} from '../../src/drawing/cells.ts';

const text = fc.oneof(
  fc.string(),
  fc.string({ unit: 'grapheme' }),
  fc.constantFrom('日本 kicker', '45.6°', '⣠⠞⠂', 'e\u0301tabli'),
);

describe('rows', () => {
  test('a row is written from text, spans and role pairs, and empty parts vanish', () => {
    const line = row('at ', ['lead', '1500'], '', { text: ' mm', role: 'quiet' });
    expect(line).toEqual([{ text: 'at ' }, { text: '1500', role: 'lead' }, { text: ' mm', role: 'quiet' }]);
    expect(rowText(line)).toBe('at 1500 mm');
    expect(rowWidth(line)).toBe(10);
  });

  test('a name that carries an escape sequence cannot steer the terminal', () => {
    expect(rowText(row('ramp\u001B[2J', ['lead', 'a\u009Bb\rc\u202Ed']))).toBe('ramp [2Ja b c d');
  });
});

describe('padding and cutting', () => {
  test('numbers are padded on their left, words on their right', () => {
    expect(padTo('1500', 6, 'right')).toBe('  1500');
    expect(padTo('lip', 5)).toBe('lip  ');
    expect(padTo('longer', 3)).toBe('longer');
  });

  test('what is cut off is marked, with two points in ASCII', () => {
    expect(cutTo('Weld upright 3 of rail A', 14)).toBe('Weld upright…');
    expect(cutTo('Weld upright 3 of rail A', 14, true)).toBe('Weld upright..');
    expect(cutTo('short', 5)).toBe('short');
    expect(cutTo('anything', 0)).toBe('');
  });

  test('a wide sign is never halved', () => {
    expect(cutTo('日本', 3)).toBe('日…');
    expect(cutTo('日本', 1)).toBe('');
  });

  test('no text is wider than its cut', () => {
    fc.assert(
      fc.property(
        text,
        fc.nat(30),
        fc.boolean(),
        (any, columns, ascii) => cellWidth(cutTo(any, columns, ascii)) <= columns,
      ),
    );
  });

  test('a row is cut as its text is, and keeps its roles', () => {
    const line = row(['lead', 'Weld '], 'upright 3');
    expect(cutRow(line, 8)).toEqual([{ text: 'Weld ', role: 'lead' }, { text: 'up…' }]);
    fc.assert(
      fc.property(fc.array(text, { maxLength: 4 }), fc.nat(30), fc.boolean(), (parts, columns, ascii) => {
        const made = row(...parts);
        const cut = cutRow(made, columns, ascii);
        expect(rowWidth(cut)).toBeLessThanOrEqual(columns);
        if (rowWidth(made) <= columns && columns > 0) expect(cut).toEqual(made);
      }),
    );
  });
});

describe('two sides of a row', () => {
  test('the right side ends at the last cell', () => {
    expect(rowText(joinSides(' Quarry Lane kicker', '✓ on disk', 40))).toBe(
      ' Quarry Lane kicker            ✓ on disk',
    );
  });

  test('a long left side gives way to the right one, with a cell between', () => {
    expect(rowText(joinSides('a very long name of a build', 'on disk', 20))).toBe('a very long… on disk');
  });

  test('a joined row is exactly as wide as asked when it has a right side', () => {
    fc.assert(
      fc.property(
        fc.string(),
        fc.string({ minLength: 1 }),
        fc.integer({ min: 1, max: 80 }),
        (left, right, columns) => {
          fc.pre(cellWidth(rowText(row(right))) > 0);
          expect(rowWidth(joinSides(left, right, columns))).toBe(columns);
        },
      ),
    );
  });

  test('rows beside rows begin at their column, and a long left one is cut before it', () => {
    const joined = besideRows([row('one'), row('a long left side')], [row('R'), row('S'), row('T')], 8);
    expect(joined.map(rowText)).toEqual(['one     R', 'a long… S', '        T']);
  });

  test('a padded row is as wide as asked', () => {
    expect(rowWidth(padRow(row('ab'), 5))).toBe(5);
    expect(rowText(padRow(row('abcdef'), 5))).toBe('abcdef');
  });
});

describe('the rule', () => {
  test('it carries where you are on the left and how long it takes on the right', () => {
    const line = rowText(rule('tack: step 6 of 17', 'about 2 to 3 h left here', 80));
    expect(line).toBe('── tack: step 6 of 17 ────────────────────────────── about 2 to 3 h left here ──');
    expect(rowText(rule('', '', 10, true))).toBe('----------');
    expect(rowText(rule('why', '', 12, true))).toBe('-- why -----');
  });

  test('it is always as wide as asked', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 60 }),
        fc.string({ maxLength: 60 }),
        fc.integer({ min: 8, max: 120 }),
        (left, right, columns) => {
          expect(rowWidth(rule(left, right, columns))).toBeLessThanOrEqual(columns);
          if (cellWidth(left) + 6 <= columns) expect(rowWidth(rule(left, right, columns))).toBe(columns);
        },
      ),
    );
  });
});

describe('wrapping', () => {
  test('no line ends inside a measure', () => {
    expect(wrap('First at 3 5/32 in, last at 22 3/32 in.', 31)).toEqual([
      'First at 3 5/32 in, last at',
      '22 3/32 in.',
    ]);
    expect(wrap('About 7 h 12 min for all', 11)).toEqual(['About 7 h', '12 min for', 'all']);
    // A line too narrow for the measure still takes it.
    expect(wrap('15 25/32 in', 5)).toEqual(['15', '25/32', 'in']);
  });

  test('lines break at spaces and keep the line ends of the text', () => {
    expect(wrap('Square it with the long tape, not by eye', 20)).toEqual([
      'Square it with the',
      'long tape, not by',
      'eye',
    ]);
    expect(wrap('one\ntwo', 20)).toEqual(['one', 'two']);
    expect(wrap('', 20)).toEqual(['']);
  });

  test('a word longer than the line is broken rather than lost', () => {
    expect(wrap('see ~/.local/share/curvewright now', 10)).toEqual([
      'see',
      '~/.local/s',
      'hare/curve',
      'wright now',
    ]);
  });

  test('no sign is lost and no line is too wide', () => {
    fc.assert(
      fc.property(text, fc.integer({ min: 2, max: 40 }), (any, columns) => {
        const lines = wrap(any, columns);
        for (const line of lines) expect(cellWidth(line)).toBeLessThanOrEqual(columns);
        expect(lines.join('').replace(/[ \n]/g, '')).toBe(any.replace(/[ \n]/g, ''));
      }),
    );
  });
});
