import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { goesInto, kindCount, mmText } from './shelf.ts';
import { LONGEST_MM, MOST_KINDS, MOST_PIECES, STOCK_AIMS, type StockJob } from './stock-job.ts';

const A_LENGTH = `a length above 0 and up to ${LONGEST_MM} mm`;

const outside = (field: string, message: string, accepted: string) =>
  refuse('out-of-range', field, message, accepted);

/**
 * Holds a job against what can be planned.
 *
 * Refused, the first in the order of the job: out-of-range (a length, count, kerf, trim or price that cannot be; no pieces; no bars; a piece
 * longer than any bar), too-large (more than 2 000 pieces or 50 lengths), missing-field (a price, where price is the aim).
 */
export const checkJob = (job: StockJob): Outcome<StockJob> => {
  const { pieces, bars, kerf_mm, trim_mm = 0, aim } = job;
  if (pieces.length === 0) return outside('pieces', 'There are no pieces to cut.', 'at least one piece');
  let total = 0;
  for (const [row, { length_mm, count }] of pieces.entries()) {
    if (!(length_mm > 0 && length_mm <= LONGEST_MM))
      return outside(`pieces.${row}.length_mm`, 'A piece has no such length.', A_LENGTH);
    if (!(Number.isSafeInteger(count) && count >= 1))
      return outside(`pieces.${row}.count`, 'There is no such number of pieces.', 'a whole number from 1 up');
    total += count;
  }
  if (total > MOST_PIECES)
    return refuse('too-large', 'pieces', `There are ${total} pieces.`, `at most ${MOST_PIECES} pieces`);
  const kinds = kindCount(job);
  if (kinds > MOST_KINDS)
    return refuse(
      'too-large',
      'pieces',
      `There are ${kinds} different lengths.`,
      `at most ${MOST_KINDS} different lengths`,
    );

  const squared = Number.isFinite(trim_mm) && trim_mm >= 0 ? trim_mm : 0;
  const there = bars.filter(bar => bar.count !== 0);
  if (there.length > 0 && there.every(bar => Number.isFinite(bar.length_mm))) {
    const longest = Math.max(...there.map(bar => bar.length_mm));
    const use = Math.max(0, longest - squared);
    for (const [row, { name, length_mm }] of pieces.entries()) {
      if (goesInto(length_mm, longest, squared)) continue;
      const what = name === undefined ? `A piece of ${mmText(length_mm)}` : `${name}, ${mmText(length_mm)},`;
      const trimmed = squared > 0 ? `, ${mmText(use)} once it is squared` : '';
      return outside(
        `pieces.${row}.length_mm`,
        `${what} is longer than any bar: the longest is ${mmText(longest)}${trimmed}.`,
        `a bar of ${mmText(length_mm + squared)} or longer, or a piece of at most ${mmText(use)}`,
      );
    }
  }

  for (const [row, { length_mm, count, price }] of bars.entries()) {
    if (!(length_mm > 0 && length_mm <= LONGEST_MM))
      return outside(`bars.${row}.length_mm`, 'A bar has no such length.', A_LENGTH);
    if (count !== undefined && !(Number.isSafeInteger(count) && count >= 0))
      return outside(
        `bars.${row}.count`,
        'There is no such number of bars.',
        'a whole number from 0 up, or none for any number',
      );
    if (price !== undefined && !(Number.isFinite(price) && price >= 0))
      return outside(`bars.${row}.price`, 'A bar has no such price.', 'a price from 0 up');
    if (price === undefined && aim === 'price')
      return refuse(
        'missing-field',
        `bars.${row}.price`,
        'The aim is price, and this bar has none.',
        'a price for every bar, 0 for an offcut',
      );
  }
  if (there.length === 0) return outside('bars', 'There are no bars to cut from.', 'at least one bar');
  if (!(kerf_mm >= 0 && kerf_mm <= LONGEST_MM))
    return outside('kerf_mm', 'A saw takes no such kerf.', 'a kerf from 0 mm up');
  if (!(trim_mm >= 0 && trim_mm <= LONGEST_MM))
    return outside('trim_mm', 'No such trim can be taken off.', 'a trim from 0 mm up');
  if (!STOCK_AIMS.includes(aim)) return outside('aim', 'There is no such aim.', STOCK_AIMS.join(', '));
  return good(job);
};
