import fc from 'fast-check';
import { expect, test } from 'vitest';
import { asShown } from '../../src/quantity/as-shown.ts';
import { write } from '../../src/quantity/write.ts';

test('a length to half a millimetre or a sixteenth, a mass to a tenth, as it is written', () => {
  expect(asShown(1722.34, 'length', 'metric')).toBe(1722.5);
  expect(asShown(25.4 * 1.04, 'length', 'us')).toBeCloseTo(25.4 * (1 + 1 / 16), 9);
  expect(asShown(-12.26, 'mass', 'metric')).toBeCloseTo(-12.3, 9);
});

test('writing it again says the same', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 20_000, noNaN: true }),
      fc.constantFrom('length' as const, 'mass' as const),
      fc.constantFrom('metric' as const, 'us' as const),
      (v, as, system) => write(asShown(v, as, system), as, system) === write(v, as, system),
    ),
  );
});
