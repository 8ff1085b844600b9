import { type Outcome, refuse } from './outcome.ts';
import { readMeasure } from './read-measure.ts';
import { isUnitCode } from './units.ts';

/** Fields of the number command that are named after a whole word instead of a unit's ending. */
const WORDS: Readonly<Record<string, string>> = { volts: 'V', amps: 'A', hours: 'h' };

/**
 * What a person typed as a number of a field's unit ("4 ft 6 1/2 in" for `mm` gives 1384.3). A bare number counts in
 * that unit.
 *
 * @param unit a field's ending, such as `mm`, `deg`, `N_mm`, `m_s`, `kg_m3`; `one` for a number without a unit
 * @returns the number in that unit, or a fault `not-a-number`, `wrong-unit` or `out-of-range` whose field is null
 */
export const readAs = (text: string, unit: string): Outcome<number> =>
  isUnitCode(unit)
    ? readMeasure(text, unit, unit)
    : refuse('wrong-unit', null, `${unit} is no unit that is known`, 'a number without a unit');

/**
 * The unit that a field's name ends in: `mm` of `length_mm`, `N_mm` of `across_N_mm`, `per_min` of `lifts_per_min`
 * (and not `min`: the longest ending wins), `V` of `volts`. Null where the name ends in no unit.
 */
export const unitOfField = (name: string): string | null => {
  const word = WORDS[name];
  if (word !== undefined) return word;
  const parts = name.split('_');
  for (let from = 1; from < parts.length; from += 1) {
    const ending = parts.slice(from).join('_');
    if (isUnitCode(ending) && ending !== 'one' && ending !== 'each') return ending;
  }
  return null;
};
