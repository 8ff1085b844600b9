import { expect, test } from 'vitest';
import { amount } from '../../src/coach/decide/amount.ts';

test("a bare number of a field that names its unit counts in that unit; what a person types, in the build's own", () => {
  expect(amount(38, 'length', 'us', 'thickness_mm')).toMatchObject({ ok: true, value: { value: 38 } });
  expect(amount('1 1/2', 'length', 'us', 'thickness_mm')).toMatchObject({ ok: true, value: { value: 38.1 } });
  expect(amount(2, 'length', 'us', 'width')).toMatchObject({ ok: true, value: { value: 50.8 } });
});
