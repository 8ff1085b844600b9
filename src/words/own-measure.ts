import type { System } from '../quantity/quantities.ts';

const NUMBER =
  '(?:\\d+(?:[.,/]\\d+)?|a third of an?|half an?|half|an?|one|two|three|four|five|ten|fifteen|twenty)';
const SPAN = `${NUMBER}(?: (?:to|or|by) ${NUMBER})*`;
const METRIC =
  '(?:square )?(?:mm|cm|m|kg|km/h|m/s|kN|N|°C|l|(?:milli)?metres?|kilometres? an hour|kilograms?|litres?)';
const AMERICAN = '(?:in|ft|ft²|sq ft|cu ft|lb|lbf|mph|°F|gal|psi|inch|inches|feet|pounds?|miles? an hour)';

/** "five metres (16 ft)": a measure that the words say themselves, in one system and in the other. */
const BOTH = new RegExp(`\\b(${SPAN} ?${METRIC}) \\(((?:about )?${SPAN} ?${AMERICAN})\\)`, 'gi');

/**
 * A text in which each measure said in both systems stands in the reader's alone: at a bench there is one tape.
 * @param text from content/, before its marks are filled
 */
export const ownMeasure = (text: string, system: System): string =>
  text.includes('(')
    ? text.replace(BOTH, (_whole, metric: string, american: string) => (system === 'us' ? american : metric))
    : text;
