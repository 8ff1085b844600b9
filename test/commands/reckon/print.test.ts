import { describe, expect, test } from 'vitest';
import { answerText, faultText, topicHelp } from '../../../src/commands/reckon/print.ts';
import { topic as slits } from '../../../src/commands/reckon/slits.ts';
import { numberText, numberTexts } from '../../../src/commands/reckon/table-text.ts';

const lines = (text: string) => text.split('\n');

describe('an answer for reading', () => {
  test('has one figure a line, each with its unit', () => {
    expect(
      answerText({ height_mm: 878.6796564, exit_deg: 45, count: 26, proven: true, price: null, kJ_mm: 0.5 }),
    ).toBe(
      [
        'height  878.68  mm',
        'exit        45  °',
        'count       26',
        'proven  yes',
        'price   –',
        'kJ/mm   0.5000  kJ/mm',
      ].join('\n'),
    );
  });

  test('has lists of records as tables and lists of numbers in rows', () => {
    const text = answerText({
      marks_mm: Array.from({ length: 30 }, (_, n) => n * 100 + 0.5),
      points: [
        { x_mm: 300, y_mm: 15.0376 },
        { x_mm: 1500, y_mm: 401.924 },
      ],
      none: [],
    });
    expect(text).toContain('points\n  x, mm   y, mm\n    300   15.04\n   1500  401.92');
    expect(text).toContain('marks, mm\n     0.50   100.50');
    expect(text).toContain('none\n  none');
    expect(Math.max(...lines(text).map(line => line.length))).toBeLessThanOrEqual(80);
  });

  test('breaks records that are too wide for a screen of 80, and long words of advice', () => {
    const wide = {
      id: 'a',
      from: { axial_N: 1, shear_N: 2, moment_Nm: 3 },
      to: { axial_N: -1, shear_N: -2, moment_Nm: 4 },
    };
    const text = answerText({
      members: [wide, wide],
      warning: 'one two three four five six seven '.repeat(5).trim(),
    });
    expect(text).toContain('members 2');
    expect(text).toContain('from\n      axial   1  N');
    expect(Math.max(...lines(text).map(line => line.length))).toBeLessThanOrEqual(80);
  });
});

test('numbers under each other have their points under each other', () => {
  expect(numberTexts([0, 18, 56.5, 58])).toEqual(['0.00', '18.00', '56.50', '58.00']);
  expect(numberTexts([3, 26])).toEqual(['3', '26']);
  // A hundredth would hide the third.
  expect(numberTexts([12.5, 3, 0.0012])).toEqual(['12.50', '3', '0.001200']);
  expect(numberTexts([-1e-14, 878.68])).toEqual(['0.00', '878.68']);
});

test('numbers are rounded for reading only as far as a bench can tell', () => {
  expect([878.6796564, 0.0370123, 26, -0.00034567, 1e-9, 0, 2.5e12, 93240.5].map(numberText)).toEqual([
    '878.68',
    '0.03701',
    '26',
    '-0.0003457',
    '1.0000e-9',
    '0',
    '2500000000000',
    '93240.50',
  ]);
});

test('a refusal says what is wrong, where, and what would do', () => {
  expect(
    faultText({
      code: 'out-of-range',
      field: 'count',
      message: 'A count of 5 is too small.',
      accepted: '26 or more',
    }),
  ).toBe('A count of 5 is too small. [out-of-range]\n  field: count\n  accepted: 26 or more');
  expect(faultText({ code: 'no-solution', field: null, message: 'None.', accepted: 'some' })).not.toContain(
    'field',
  );
});

test('help of a topic names every field and fits the screen', () => {
  const help = topicHelp(slits);
  for (const name of Object.keys(slits.fields)) expect(help).toContain(`--${name}`);
  expect(help.replace(/\s+/g, ' ')).toContain('above -90°, below 90°; optional');
  expect(Math.max(...lines(help).map(line => line.length))).toBeLessThanOrEqual(80);
});
