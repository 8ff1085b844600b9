import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Quantity, System } from '../../src/quantity/quantities.ts';
import { read } from '../../src/quantity/read.ts';
import { readAs } from '../../src/quantity/read-unit.ts';
import { UNITS } from '../../src/quantity/units.ts';
import { shownStep } from '../../src/quantity/usual.ts';
import { write } from '../../src/quantity/write.ts';
import { kept } from './expect-outcome.ts';

const SYSTEMS: readonly System[] = ['metric', 'us'];

/** A span of values for each quantity, in its inner unit, far wider than any frame. */
const SPANS: Readonly<Record<Quantity, readonly [number, number]>> = {
  length: [-1e6, 1e6],
  slit: [-1e5, 1e5],
  thickness: [-100, 100],
  distance: [-1e4, 1e4],
  reach: [-1e4, 1e4],
  angle: [-10, 10],
  speed: [-100, 100],
  mass: [-1e4, 1e4],
  force: [-1e6, 1e6],
  moment: [-1e9, 1e9],
  stress: [-1e4, 1e4],
  temperature: [-270, 2000],
  time: [-1e6, 1e6],
  area: [-1e3, 1e3],
  volume: [-1e3, 1e3],
  gas: [-1e5, 1e5],
  count: [0, 1e6],
  ratio: [-100, 100],
  percent: [-1000, 1000],
  current: [-1000, 1000],
  tension: [-100, 100],
  flow: [-1000, 1000],
  feed: [-100, 100],
  travel: [-1000, 1000],
};

const anyOf = (quantity: Quantity) => {
  const [min, max] = SPANS[quantity];
  return quantity === 'count'
    ? fc.integer({ min, max })
    : fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
};

const cases = Object.keys(SPANS).flatMap(quantity =>
  SYSTEMS.map(system => [quantity as Quantity, system] as const),
);

/** What a time may be off by: it is written in seconds, half minutes or minutes by its size. */
const timeStep = (seconds: number): number => {
  if (Math.abs(seconds) < 9.995) return 0.01;
  if (Math.abs(seconds) < 89.5) return 1;
  return Math.abs(seconds) < 585 ? 30 : 60;
};

/** What a value may be off by once it is written. */
const stepOf = (value: number, quantity: Quantity, system: System): number => {
  const finest = shownStep(quantity, system);
  const pounds = Math.abs(value) / 0.45359237;
  if (system === 'metric') return finest;
  if (quantity === 'reach' && Math.abs(value) / 0.0254 >= 23.75) return 2 * finest;
  return quantity === 'mass' && pounds >= 19.95 ? 10 * finest : finest;
};

describe('what is written can be typed back', () => {
  test.each(cases)('%s, %s', (quantity, system) => {
    fc.assert(
      fc.property(
        anyOf(quantity),
        fc.record({ sign: fc.boolean(), feet: fc.boolean(), fixed: fc.boolean() }),
        (value, how) => {
          const back = kept(read(write(value, quantity, system, how), quantity, system));
          const step = quantity === 'time' ? timeStep(value) : stepOf(value, quantity, system);
          expect(Math.abs(back - value)).toBeLessThanOrEqual(step / 2 + 1e-6 * step);
        },
      ),
    );
  });

  test.each(cases)('%s, %s, as a bare number', (quantity, system) => {
    fc.assert(
      fc.property(anyOf(quantity), fc.boolean(), (value, feet) => {
        const back = kept(read(write(value, quantity, system, { unit: false, feet }), quantity, system));
        const step = stepOf(value, quantity, system);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(step / 2 + 1e-6 * step);
      }),
    );
  });

  test.each(cases)('%s, %s: written twice it is the same', (quantity, system) => {
    fc.assert(
      fc.property(anyOf(quantity), fc.boolean(), (value, feet) => {
        const once = write(value, quantity, system, { feet });
        expect(write(kept(read(once, quantity, system)), quantity, system, { feet })).toBe(once);
      }),
    );
  });

  test.each(cases)('%s, %s: zero has no sign', (quantity, system) => {
    fc.assert(
      fc.property(anyOf(quantity), value => {
        const text = write(value, quantity, system, { sign: true });
        const digits = text.match(/\d[\d.]*/g)?.map(Number) ?? [];
        const isZero = digits.every(digit => digit === 0);
        expect(/^[−+]/.test(text)).toBe(!isZero);
      }),
    );
  });

  test('every mark of a tape, in sixty-fourths, is read to the last bit', () => {
    fc.assert(
      fc.property(fc.nat({ max: 64 * 480 }), sixtyFourths => {
        const whole = Math.floor(sixtyFourths / 64);
        const part = sixtyFourths % 64;
        const feet = Math.floor(whole / 12);
        const exact = (sixtyFourths * 254) / 640;
        const fraction = part === 0 ? '' : ` ${part}/64`;
        expect(kept(read(`${whole}${fraction} in`, 'length', 'metric'))).toBe(exact);
        expect(kept(read(`${feet}'-${whole % 12}${fraction}"`, 'length', 'metric'))).toBe(exact);
      }),
    );
  });

  test('a decimal in millimetres is read to the last bit, with a comma or a point', () => {
    fc.assert(
      fc.property(fc.nat({ max: 10_000_000 }), hundredths => {
        const text = (hundredths / 100).toFixed(2);
        expect(kept(read(text, 'length', 'metric'))).toBe(hundredths / 100);
        expect(kept(read(text.replace('.', ','), 'length', 'metric'))).toBe(hundredths / 100);
      }),
    );
  });
});

const pieces = fc.oneof(
  fc.constantFrom(
    ...[
      '-',
      '+',
      '−',
      ' ',
      '.',
      ',',
      '/',
      "'",
      '"',
      '½',
      '⅞',
      '′',
      '″',
      '°',
      '%',
      'e',
      'E',
      ':',
      '·',
      '*',
      '^',
      '²',
    ],
    ...[
      'in',
      'ft',
      'mm',
      'm',
      'cm',
      'lb',
      'oz',
      'h',
      'min',
      'N',
      'Nm',
      'per',
      'C',
      '1',
      '0',
      '12',
      '999',
      'NaN',
    ],
  ),
  fc.string({ maxLength: 3 }),
  fc.nat().map(String),
);
const nearlyNumbers = fc.array(pieces, { maxLength: 12 }).map(list => list.join(''));
const anything = fc.oneof(fc.string({ unit: 'binary' }), fc.string({ maxLength: 200 }), nearlyNumbers);

describe('whatever is typed', () => {
  test('reading answers with a finite number or a refusal that says what would do', () => {
    fc.assert(
      fc.property(anything, fc.constantFrom(...cases), (typed, [quantity, system]) => {
        const outcome = read(typed, quantity, system);
        if (outcome.ok) {
          expect(Number.isFinite(outcome.value)).toBe(true);
          expect(Object.is(outcome.value, -0)).toBe(false);
          return;
        }
        expect(['not-a-number', 'wrong-unit', 'out-of-range']).toContain(outcome.fault.code);
        expect(outcome.fault.field).toBeNull();
        expect(outcome.fault.message).not.toBe('');
        expect(outcome.fault.accepted).not.toBe('');
        expect(outcome.fault.message + outcome.fault.accepted).not.toMatch(/\p{C}/u);
        expect(outcome.fault.message.replace(/".*"/, '')).not.toMatch(/NaN|Infinity/);
      }),
      { numRuns: 3000 },
    );
  });

  test('so does a field of the number command', () => {
    fc.assert(
      fc.property(anything, fc.constantFrom(...Object.keys(UNITS)), (typed, unit) => {
        const outcome = readAs(typed, unit);
        if (outcome.ok) expect(Number.isFinite(outcome.value)).toBe(true);
        else expect(outcome.fault.accepted).not.toBe('');
      }),
      { numRuns: 2000 },
    );
  });

  test('writing gives no NaN, no Infinity and no -0', () => {
    fc.assert(
      fc.property(fc.double(), fc.constantFrom(...cases), (value, [quantity, system]) => {
        const text = write(value, quantity, system);
        expect(text).not.toMatch(/NaN|Infinity|[-−]0(?:\.0+)?(?:\D|$)(?!\S)/);
      }),
      { numRuns: 2000 },
    );
  });
});
