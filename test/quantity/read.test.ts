import { describe, expect, test } from 'vitest';
import type { Quantity, System } from '../../src/quantity/quantities.ts';
import { read } from '../../src/quantity/read.ts';
import { kept, refused } from './expect-outcome.ts';

const mm = (text: string, system: System = 'us') => kept(read(text, 'length', system));
const inner = (text: string, quantity: Quantity, system: System = 'metric') =>
  kept(read(text, quantity, system));
const fault = (text: string, quantity: Quantity = 'length', system: System = 'metric') =>
  refused(read(text, quantity, system));

describe('a length is read as a shop writes it', () => {
  test.each([
    [`5'-3 1/2"`, 1612.9],
    [`5' 3-1/2"`, 1612.9],
    [`5'3 1/2`, 1612.9],
    [`5' - 3 1/2"`, 1612.9],
    [`5 ft 3 1/2`, 1612.9],
    ['63 1/2 in', 1612.9],
    ['63-1/2 in.', 1612.9],
    ['63½"', 1612.9],
    ['11 63/64', 304.403125],
    ['3½"', 88.9],
    ['3 ½ in', 88.9],
    ['5′ 3½″', 1612.9],
    ['5’ 3½”', 1612.9],
    [`5' 3½''`, 1612.9],
    ['3⁄4 in', 19.05],
    ['.5"', 12.7],
    ['12 ft 6 in', 3810],
    ['12ft6in', 3810],
    ["8'", 2438.4],
    ["8'-0", 2438.4],
    ["5'-1/2", 1536.7],
    ['1.2 m', 1200],
    ['1.005 m', 1005],
    ['1 m 20 cm', 1200],
    ['60.3 cm', 603],
    ['25.4mm', 25.4],
    ['25.4 MM', 25.4],
    ['1 yd', 914.4],
    ['5 thou', 0.127],
  ])('%s', (typed, expected) => {
    expect(mm(typed, 'us')).toBe(expected);
  });

  test('a bare number is in the unit of the build', () => {
    expect(mm('12', 'metric')).toBe(12);
    expect(mm('12', 'us')).toBe(304.8);
    expect(mm('15 3/4', 'metric')).toBe(15.75);
  });

  test('the sign stands before the whole length', () => {
    expect(mm(`-5'-3 1/2"`)).toBe(-1612.9);
    expect(mm('−½')).toBe(-12.7);
    expect(mm('– 3', 'metric')).toBe(-3);
    expect(mm('+15.5', 'metric')).toBe(15.5);
    expect(mm('＋15.5', 'metric')).toBe(15.5);
  });

  test('zero has no sign', () => {
    expect(Object.is(mm('-0'), 0)).toBe(true);
  });

  test('a comma or a point is the decimal sign', () => {
    expect(mm('15,5', 'metric')).toBe(15.5);
    expect(mm(',5', 'metric')).toBe(0.5);
    expect(mm('12.', 'metric')).toBe(12);
    expect(mm('1.125', 'us')).toBe(28.575);
    expect(mm('0,125', 'us')).toBe(3.175);
    expect(mm('1234,567', 'metric')).toBe(1234.567);
  });
});

describe('a thousands mark is asked about, never guessed', () => {
  test('1,200 has two readings', () => {
    expect(fault('1,200')).toEqual({
      code: 'not-a-number',
      field: null,
      message: '1,200 has two readings: 1200 or 1.2?',
      accepted: '1200 or 1.2, without a mark for thousands',
    });
    expect(fault('-12,700 mm').message).toContain('12700 or 12.7?');
    expect(fault('1,000').message).toContain('1000 or 1?');
  });

  test.each([
    ['1.200,5', '1200.5'],
    ['1,200.5', '1200.5'],
    ['1,200,000', '1200000'],
    ['1.200.000', '1200000'],
    ['1 200', '1200'],
  ])('%s is refused with %s', (typed, instead) => {
    const { code, accepted } = fault(typed);
    expect(code).toBe('not-a-number');
    expect(accepted.startsWith(`${instead},`)).toBe(true);
  });
});

describe('what cannot be meant is refused with what would do', () => {
  test.each([
    '',
    '   ',
    'six',
    'NaN',
    'Infinity',
    '-',
    '--5',
    '+-5',
    '−−5',
    '- -5',
    '±5',
    '~5',
    '5-',
    '5-3',
    '5 -3',
    '63 - 1/2',
    '1/0',
    '3 1/0',
    '3 5/4',
    '1.5 3/4',
    '1/2/3',
    '1/2.5',
    '½½',
    '½5',
    '1½/2',
    '5/',
    '1..5',
    '1.2.3',
    `5''3`,
    `5"3`,
    `5' -3"`,
    `5'--3"`,
    `5.5' 3"`,
    '5 1/2 ft 3 in',
    '1 m 20',
    '3 in 5 ft',
    '26 27 28',
    '1;2',
    '0x10',
    '12\t',
    '12\n',
    '\u001b[2J12',
    '1\u200b2',
    '\u202e12',
    '٥',
    '9'.repeat(70),
  ])('%j', typed => {
    const { code, field, message, accepted } = fault(typed);
    expect(code).toBe('not-a-number');
    expect(field).toBeNull();
    expect(message).not.toBe('');
    expect(accepted).not.toBe('');
  });

  test.each(['1e400', '-1e400', '1e13', '9999999999999', '9999999999999/2', '1e-400'])(
    '%s is out of range, not infinite and not nothing',
    typed => {
      expect(fault(typed).code).toBe('out-of-range');
    },
  );

  test('zero may be typed in any way', () => {
    for (const typed of ['0', '0.0', '0,0e1', '0/16', '0 0/16', `0'-0"`]) expect(mm(typed)).toBe(0);
  });

  test('a whole foot of inches after feet is a slip of the finger', () => {
    expect(fault(`5'13"`)).toMatchObject({ code: 'out-of-range' });
    expect(fault(`5'12"`)).toMatchObject({ code: 'out-of-range' });
    expect(mm(`5'11 15/16"`)).toBeCloseTo(71.9375 * 25.4, 9);
  });

  test('a refusal says what is accepted and what a bare number counts in', () => {
    expect(fault('six', 'length', 'us').accepted).toBe(
      `a length such as 1613 mm, 1.2 m, 63 1/2 in or 5'-3 1/2"; a bare number counts as inches`,
    );
  });

  test('a refusal shows what was typed without letting it touch the terminal', () => {
    expect(fault('\u001b[2Jhello').message).toBe('"?[2Jhello" has characters that cannot be seen');
    expect(fault('е\u0301').message).toBe('"??" is not a number');
  });
});

describe('a unit of another quantity is called that', () => {
  test.each([
    ['12 oz', 'length', 'oz is a mass, and a length is wanted'],
    ['5 m3', 'length', 'm3 is a volume, and a length is wanted'],
    ['5 ft3', 'length', 'ft3 is a volume, and a length is wanted'],
    ['20 min', 'length', 'min is a time, and a length is wanted'],
    ['5 m/s', 'length', 'm/s is a speed, and a length is wanted'],
    ['300 lb', 'force', 'lb is a mass, and a force is wanted'],
    ['5 lbf ft', 'force', 'lbf ft is a moment, and a force is wanted'],
    ['45 °C', 'angle', '°C is a temperature, and an angle is wanted'],
    ['3 mm', 'count', 'mm is a length, and a whole number is wanted'],
  ] as const)('%s for a %s', (typed, quantity, message) => {
    expect(fault(typed, quantity)).toMatchObject({ code: 'wrong-unit', message });
  });

  test('a unit that nobody knows', () => {
    expect(fault('5 parsec')).toMatchObject({
      code: 'wrong-unit',
      message: '"parsec" is no unit for a length',
    });
  });

  test('gauge numbers and mils mean two things, so neither is guessed', () => {
    expect(fault('11 ga', 'thickness').message).toContain('measure the wall');
    expect(fault('5 mil', 'thickness').message).toContain('thou or mm');
  });

  test('a thousandth is never read as a million', () => {
    expect(fault('5 mPa', 'stress').code).toBe('wrong-unit');
    expect(inner('235 mpa', 'stress')).toBe(235);
    expect(inner('235 MPA', 'stress')).toBe(235);
  });
});

describe('the other quantities', () => {
  test.each([
    ['45', 'angle', Math.PI / 4],
    ['45°', 'angle', Math.PI / 4],
    ['45 deg', 'angle', Math.PI / 4],
    ['0.5 rad', 'angle', 0.5],
    ['30 mrad', 'angle', 0.03],
    ['1 in 12', 'angle', Math.atan(1 / 12)],
    ['1:12', 'angle', Math.atan(1 / 12)],
    ['18', 'speed', 5],
    ['18 km/h', 'speed', 5],
    ['18 mph', 'speed', 8.04672],
    ['5 m/s', 'speed', 5],
    ['10 ft/s', 'speed', 3.048],
    ['75', 'mass', 75],
    ['500 g', 'mass', 0.5],
    ['100 lbs', 'mass', 45.359237],
    ['2 lb 8 oz', 'mass', 1.133980925],
    ['1200', 'force', 1200],
    ['1.2 kN', 'force', 1200],
    ['100 lbf', 'force', 444.82216152605],
    ['10 kgf', 'force', 98.0665],
    ['245 Nm', 'moment', 245_000],
    ['245 N·m', 'moment', 245_000],
    ['245 N m', 'moment', 245_000],
    ['100 lbf ft', 'moment', 135_581.79483314004],
    ['100 ft-lb', 'moment', 135_581.79483314004],
    ['235 MPa', 'stress', 235],
    ['235 N/mm²', 'stress', 235],
    ['16', 'temperature', 16],
    ['16°', 'temperature', 16],
    ['16 ℃', 'temperature', 16],
    ['-40 °F', 'temperature', -40],
    ['212 F', 'temperature', 100],
    ['273.15 K', 'temperature', 0],
    ['12', 'time', 720],
    ['45 s', 'time', 45],
    ['1.5 h', 'time', 5400],
    ['1 h 20 min', 'time', 4800],
    ['3.2 m²', 'area', 3.2],
    ['1 m^2', 'area', 1],
    ['10 sq ft', 'area', 0.9290304],
    ['2.5 l', 'volume', 2.5],
    ['400 ml', 'volume', 0.4],
    ['1 gal', 'volume', 3.785411784],
    ['4 qt', 'volume', 3.785411784],
    ['3', 'distance', 3],
    ['10 ft', 'distance', 3.048],
    ['12 l/min', 'flow', 12],
    ['25 CFH', 'flow', 11.79868608],
    ['5.5 m/min', 'feed', 5.5],
    ['200 ipm', 'feed', 5.08],
    ['6 mm/s', 'travel', 6],
    ['12 ipm', 'travel', 5.08],
    ['90', 'current', 90],
    ['90 A', 'current', 90],
    ['17.5 V', 'tension', 17.5],
    ['85', 'percent', 85],
    ['85 %', 'percent', 85],
    ['25', 'count', 25],
    ['0.85', 'ratio', 0.85],
    ['85 %', 'ratio', 0.85],
    ['1/12', 'ratio', 1 / 12],
  ] as const)('%s as a %s', (typed, quantity, expected) => {
    expect(inner(typed, quantity)).toBeCloseTo(expected, 9);
  });

  test.each([
    ['10', 'speed', 4.4704],
    ['100', 'mass', 45.359237],
    ['100', 'force', 444.82216152605],
    ['212', 'temperature', 100],
    ['212°', 'temperature', 100],
    ['100', 'moment', 135_581.79483314004],
    ['10', 'distance', 3.048],
    ['10', 'reach', 0.254],
    ['100', 'area', 9.290304],
    ['1', 'volume', 3.785411784],
    ['200', 'feed', 5.08],
    ['12', 'travel', 5.08],
    ['45', 'angle', Math.PI / 4],
  ] as const)('%s bare as a %s in a US build', (typed, quantity, expected) => {
    expect(inner(typed, quantity, 'us')).toBeCloseTo(expected, 9);
  });

  test('ksi is a thousand pounds-force on a square inch', () => {
    expect(inner('36', 'stress', 'us')).toBeCloseTo(248.211263, 6);
  });

  test('a count is whole and not below 0', () => {
    expect(fault('3.5', 'count').code).toBe('out-of-range');
    expect(fault('-3', 'count').code).toBe('out-of-range');
    expect(fault('3 1/2', 'count').code).toBe('out-of-range');
  });

  test('nothing is colder than absolute zero', () => {
    expect(inner('-273.15', 'temperature')).toBe(-273.15);
    expect(inner('-459.67 °F', 'temperature')).toBeCloseTo(-273.15, 9);
    expect(fault('-274', 'temperature').code).toBe('out-of-range');
    expect(fault('-460', 'temperature', 'us').code).toBe('out-of-range');
  });

  test('a slope needs a run', () => {
    expect(fault('1 in 0', 'angle').code).toBe('not-a-number');
  });
});
