import { describe, expect, test } from 'vitest';
import { write } from '../../src/quantity/write.ts';

const IN = 25.4;

describe('metric lengths', () => {
  test.each([
    [1612.9, '1613 mm'],
    [1612.6, '1612.5 mm'],
    [1612.24, '1612 mm'],
    [9999.9, '10000 mm'],
    [0.24, '0 mm'],
    [0.25, '0.5 mm'],
    [-412.5, '−412.5 mm'],
  ])('%d to half a millimetre is %s', (mm, text) => {
    expect(write(mm, 'length', 'metric')).toBe(text);
  });

  test('a slit mark keeps its tenth', () => {
    expect(write(816.2, 'slit', 'metric')).toBe('816.2 mm');
    expect(write(816, 'slit', 'metric')).toBe('816.0 mm');
    expect(write(816.25, 'slit', 'metric')).toBe('816.3 mm');
    expect(write(1.005, 'thickness', 'metric')).toBe('1.01 mm');
  });

  test('a caller may ask for another step', () => {
    expect(write(411.6, 'length', 'metric', { step: 1 })).toBe('412 mm');
    expect(write(411.63, 'length', 'metric', { step: 0.1 })).toBe('411.6 mm');
    expect(write(411.63, 'length', 'metric', { step: 5 })).toBe('410 mm');
  });

  test('columns keep the closing zero', () => {
    expect(write(6, 'length', 'metric', { sign: true, unit: false, fixed: true })).toBe('+6.0');
    expect(write(12.5, 'length', 'metric', { sign: true, unit: false, fixed: true })).toBe('+12.5');
  });
});

describe('US lengths', () => {
  test.each([
    [63.5, '63 1/2 in'],
    [15.75, '15 3/4 in'],
    [0.625, '5/8 in'],
    [62, '62 in'],
    [0, '0 in'],
    [11 + 30 / 32, '11 15/16 in'],
    [11 + 31 / 32, '12 in'],
    [11 + 63 / 64, '12 in'],
    [1 / 33, '0 in'],
    [-0.625, '−5/8 in'],
  ])('%d in to a sixteenth is %s', (inches, text) => {
    expect(write(inches * IN, 'length', 'us')).toBe(text);
  });

  test.each([
    [63.5, `5'-3 1/2"`],
    [96, `8'-0"`],
    [60.5, `5'-0 1/2"`],
    [24, `2'-0"`],
    [23 + 31 / 32, `2'-0"`],
    [23.9375, `23 15/16"`],
    [15.75, `15 3/4"`],
    [59.97, `5'-0"`],
    [71 + 63 / 64, `6'-0"`],
    [0, `0"`],
    [-63.5, `−5'-3 1/2"`],
  ])('%d in in feet is %s', (inches, text) => {
    expect(write(inches * IN, 'length', 'us', { feet: true })).toBe(text);
  });

  test('a slit mark is to 1/32, a wall to a thousandth', () => {
    expect(write((32 + 5 / 32) * IN, 'slit', 'us')).toBe('32 5/32 in');
    expect(write(3.048, 'thickness', 'us')).toBe('0.120 in');
  });

  test('no inch is ever twelve sixteenths of one, nor a foot twelve inches', () => {
    for (let n = 0; n <= 40 * 64; n += 1) {
      const plain = write((n / 64) * IN, 'length', 'us');
      const feet = write((n / 64) * IN, 'length', 'us', { feet: true });
      expect(plain).toMatch(/^(?:\d+|\d+\/\d+|\d+ \d+\/\d+) in$/);
      const [, top, bottom] = /(\d+)\/(\d+)/.exec(plain) ?? ['', '0', '1'];
      expect(Number(top)).toBeLessThan(Number(bottom));
      expect(feet).not.toContain("'-12");
    }
  });
});

describe('signs', () => {
  test('plus and minus are written when asked for, and zero has neither', () => {
    expect(write(15.5, 'length', 'metric', { sign: true })).toBe('+15.5 mm');
    expect(write(-15.5, 'length', 'metric', { sign: true })).toBe('−15.5 mm');
    expect(write(0, 'length', 'metric', { sign: true })).toBe('0 mm');
    expect(write(-0.2, 'length', 'metric', { sign: true })).toBe('0 mm');
    expect(write(-0.04, 'slit', 'metric', { sign: true })).toBe('0.0 mm');
    expect(write(-0, 'length', 'metric')).toBe('0 mm');
    expect(write(-0.2, 'length', 'us', { sign: true })).toBe('0 in');
  });

  test('a thermometer has its own zero', () => {
    expect(write(-17.5, 'temperature', 'us')).toBe('1 °F');
    expect(write(-17.5, 'temperature', 'metric')).toBe('−17.5 °C');
    expect(write(-40, 'temperature', 'us')).toBe('−40 °F');
  });
});

describe('the other quantities', () => {
  test.each([
    [Math.PI / 4, 'angle', '45.0°', '45.0°'],
    [5, 'speed', '18.0 km/h', '11.2 mph'],
    [75, 'mass', '75.0 kg', '165 lb'],
    [5.4, 'mass', '5.4 kg', '11.9 lb'],
    [1200, 'force', '1200 N', '270 lbf'],
    [245_000, 'moment', '245.0 Nm', '180.7 lbf ft'],
    [235, 'stress', '235 MPa', '34.1 ksi'],
    [16, 'temperature', '16 °C', '61 °F'],
    [3.2, 'area', '3.20 m²', '34.4 ft²'],
    [2.5, 'volume', '2.5 l', '0.66 gal'],
    [2265, 'gas', '2270 l', '80 cu ft'],
    [3, 'distance', '3.00 m', '9.8 ft'],
    [3, 'reach', '3.00 m', `9'-10"`],
    [0.52, 'reach', '0.52 m', '20 1/2 in'],
    [25, 'count', '25', '25'],
    [0.85, 'ratio', '0.85', '0.85'],
    [65, 'percent', '65 %', '65 %'],
    [90, 'current', '90 A', '90 A'],
    [17.5, 'tension', '17.5 V', '17.5 V'],
    [12, 'flow', '12 l/min', '25 CFH'],
    [5.08, 'feed', '5.1 m/min', '200 ipm'],
    [5.08, 'travel', '5.1 mm/s', '12 ipm'],
  ] as const)('%d as a %s', (value, quantity, metric, us) => {
    expect(write(value, quantity, 'metric')).toBe(metric);
    expect(write(value, quantity, 'us')).toBe(us);
  });

  test.each([
    [0.62, '0.62 s'],
    [9.996, '10 s'],
    [45.4, '45 s'],
    [89.6, '1.5 min'],
    [150, '2.5 min'],
    [594, '10 min'],
    [5400, '90 min'],
    [7170, '2 h'],
    [7500, '2 h 5 min'],
    [0, '0.00 s'],
  ])('a time of %d s is %s', (seconds, text) => {
    expect(write(seconds, 'time', 'metric')).toBe(text);
    expect(write(seconds, 'time', 'us')).toBe(text);
  });

  test('a time without its unit is in minutes, as a bare number is read', () => {
    expect(write(7500, 'time', 'metric', { unit: false })).toBe('125.0');
    expect(write(7500, 'time', 'metric', { unit: false, step: 1 })).toBe('125');
  });

  test('what is no number is shown as none', () => {
    expect(write(Number.NaN, 'length', 'metric')).toBe('–');
    expect(write(Number.POSITIVE_INFINITY, 'time', 'us')).toBe('–');
  });
});
