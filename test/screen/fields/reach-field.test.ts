import { describe, expect, test } from 'vitest';
import { rowText } from '../../../src/drawing/cells.ts';
import { fieldRows } from '../../../src/screen/fields/field-rows.ts';
import type { FieldSpec } from '../../../src/screen/fields/field-spec.ts';
import { openField, understood } from '../../../src/screen/fields/number-field.ts';

const spec = (system: FieldSpec['system']): FieldSpec => ({ quantity: 'reach', system, asks: 'drop' });
const shown = (text: string, system: FieldSpec['system']): string =>
  fieldRows(openField({ text }), spec(system), { columns: 80, rows: 24, ascii: false })
    .map(rowText)
    .join('\n');

describe('a landing is typed as the tape beside the ramp has it', () => {
  test('ten in a US build are ten inches, and the field says so at once in both', () => {
    expect(understood(openField({ text: '10' }), spec('us'))).toMatchObject({ value: 0.254 });
    expect(shown('10', 'us')).toContain('bare numbers are inches');
    expect(shown('10', 'us')).toContain('= 0.25 m');
  });

  test('many inches are told in feet too, so that feet meant are seen', () => {
    expect(shown('120', 'us')).toContain(`= 10'-0" = 3.05 m`);
    expect(shown(`10'`, 'us')).toContain('= 3.05 m');
  });

  test('a metric build has metres, and feet and inches beside them', () => {
    expect(shown('3.05', 'metric')).toContain('bare numbers are m ');
    expect(shown('3.05', 'metric')).toContain(`= 10'-0"`);
  });
});

test('inches of the frame are told in feet too, where the tape counts feet', () => {
  const rows = fieldRows(
    openField({ text: '96' }),
    { quantity: 'length', system: 'us' },
    { columns: 80, rows: 24, ascii: false },
  ).map(rowText);
  expect(rows.join('\n')).toContain(`= 8'-0" = 2438.4 mm`);
});
