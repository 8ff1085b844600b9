import type { System } from '../../src/quantity/quantities.ts';

/** Numbers with a unit of one system only; what is alike in both (°, A, V, h, %) is none's. */
const UNITS: Readonly<Record<System, RegExp>> = {
  metric:
    /(?<![\w.])\d[\d.,]*\s?(?:mm(?!²)|cm|m|kg|km\/h|m\/s|m\/min|mm\/s|kN|N|Nm|MPa|°C|l|l\/min|m²)(?![\w²/'])/,
  us: /(?<![\w.])\d[\d./]*(?:\s?(?:in|ft|lb|lbf|mph|psi|ksi|°F|gal|cu ft|ft²|CFH|ipm)\b|["”])/,
};

/** A name of standards and trade, or a second echo that stands behind an equals sign. */
const ALIKE = /= [^=]*$|\bin all\b|\bSource: .*|\b(?:ISO|EN|AISC|CFR|AWG|AWS)\b.*/g;

const SLOT = /\{[a-z][\w-]*\}/i;
const NONSENSE = /\bNaN\b|undefined|\[object|Infinity|\bnull\b/;

/** What no row of a page may have, in words; none where the page is good. `keys` is its bottom row. */
export const pageFaults = (rows: readonly string[], system: System): readonly string[] => {
  const faults: string[] = [];
  const body = rows.slice(0, -1);
  const keys = rows.at(-1) ?? '';
  body.forEach((text, i) => {
    const say = (what: string): number => faults.push(`${what}: row ${i + 1} ${text.trim()}`);
    if (SLOT.test(text)) say('unfilled');
    if (NONSENSE.test(text)) say('nonsense');
    if (/\S…/.test(text)) say('cut inside a word');
    if (/\b0\.0 to 0\.0\b/.test(text)) say('empty span');
    if (
      /\b1 (?:builds|rails|bars|slits|stations|days|findings|entries|steps|pieces|sheets|anchors|screws)\b/.test(
        text,
      )
    )
      say('plural');
    const other = UNITS[system === 'us' ? 'metric' : 'us'];
    if (other.test(text.replace(ALIKE, ''))) say(`not ${system}`);
    if (/(?:[2-9]\d|\d{3,})\.\d (?:lb|lbf)\b|\d\.\d N\b/.test(text)) say('too fine');
  });
  // Space alone ticks it: a number typed here would leave for another stage.
  if (/^ Space /.test(keys) && !/ Enter /.test(keys)) {
    const asks = body.find(text => /^ Measure |^ ▸ NEXT {2}(?:Measure|Type|Enter|Log) /.test(text));
    if (asks !== undefined) faults.push(`asks for a number and takes a tick: ${asks.trim()}`);
  }
  const words = body.some(text => /… w\s*$/.test(text.trimEnd()));
  if (words && !/ w /.test(keys)) faults.push(`no w in the bottom row: ${keys.trim()}`);
  if (words) {
    const empty = longestGap(body.slice(3, -2));
    if (empty > 1) faults.push(`cut with ${empty} rows empty: ${body.find(t => /… w/.test(t))?.trim()}`);
  }
  return faults;
};

const longestGap = (rows: readonly string[]): number => {
  let longest = 0;
  let run = 0;
  for (const text of rows) {
    run = text.trim() === '' ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
};
