import { unitOfField } from '../../quantity/read-unit.ts';
import { isUnitCode, type UnitCode, unitOf } from '../../quantity/units.ts';

/** What a field's name says: the words before its unit, and the unit when the name ends in one. */
export type FieldName = Readonly<{ words: string; unit: UnitCode | undefined }>;

/** Reads a field's name. A name that is a unit and no more (`kJ_mm`, `deg`) has no words of its own. */
export const fieldName = (name: string): FieldName => {
  if (isUnitCode(name)) return { words: '', unit: name };
  const unit = unitOfField(name);
  if (unit === null || !isUnitCode(unit)) return { words: name.replaceAll('_', ' '), unit: undefined };
  const words = name.endsWith(`_${unit}`) ? name.slice(0, -unit.length - 1) : name;
  return { words: words.replaceAll('_', ' '), unit };
};

/** A value's unit as it follows the value: ` mm`, `°`; nothing for a plain number. */
export const unitAfter = (unit: UnitCode | undefined): string => {
  const label = unit === undefined ? '' : unitOf(unit).label;
  return label === '' || label === '°' ? label : ` ${label}`;
};
