import { describe, expect, test } from 'vitest';
import { opensAt } from '../../src/coach/fire-watch-ends.ts';
import { viewOf } from '../../src/coach/view.ts';
import { farewell } from '../../src/screen/farewell.ts';
import { clockTime } from '../../src/screen/pages/clock-time.ts';
import { read, tick } from '../stages/doings.ts';
import { entriesOf } from '../stages/situation-for.ts';
import { begun } from '../stages/weld-doings.ts';
import { WORDS } from '../stages/word-gaps.ts';

const MINUTE = 60_000;
const entries = entriesOf(begun(read('weld/machine', 'kind', 1), tick('weld/sides-first@A#1')));
const spark = entries.at(-1);
const at = Date.parse(spark?.at ?? '');
const saidAfter = (minutes: number, ...more: Parameters<typeof begun>): string => {
  const view = viewOf(
    [...entries, ...entriesOf(more).map((e, i) => ({ ...e, id: `more-${i}`, n: 50 + i }))],
    at + minutes * MINUTE,
  );
  return farewell(view, { content: WORDS, system: 'metric' }, 'curvewright');
};
const until = clockTime(at + 60 * MINUTE);
const once = clockTime(at + 180 * MINUTE);

describe('the last words when the bench is left', () => {
  test('a clock time of the place, two digits each', () => {
    expect(clockTime(new Date(2026, 8, 5, 21, 4).getTime())).toBe('21:04');
    expect(until).not.toBe(once);
  });

  test('while a fire watch runs they say until when, and when to look once more', () => {
    expect(saidAfter(10)).toContain(
      `Fire watch until ${until}: stay, look, smell.  Look once more at ${once}.`,
    );
    expect(saidAfter(10)).toMatch(
      /entries on disk\.\nFire watch until[^\n]*\nNext: .*Resume: curvewright\n$/,
    );
  });

  test('once the hour is over they say to walk the circle; once it was walked, the later look', () => {
    expect(saidAfter(70)).toContain(`walk the circle before you leave.  Look once more at ${once}.`);
    const watched = saidAfter(70, tick(`prep/watch@${spark?.id}`));
    expect(watched).toContain(`\nLook once more at ${once}.\n`);
    expect(watched).not.toContain('Fire watch');
    expect(saidAfter(190, tick(`prep/watch@${spark?.id}`))).toContain('walk the circle once more now');
  });

  test('where nothing burned, or long after, they say nothing of fire', () => {
    expect(saidAfter(24 * 60)).not.toMatch(/[Ff]ire|once more/);
    const cold = viewOf(entriesOf(begun()), at);
    expect(farewell(cold, { content: WORDS, system: 'us' }, 'npm start')).not.toMatch(/[Ff]ire/);
  });

  test('the step of the watch tells the same end', () => {
    const view = viewOf(entries, at + 10 * MINUTE);
    expect(opensAt(view, `prep/watch@${spark?.id}`)).toBe(at + 60 * MINUTE);
    expect(opensAt(view, `prep/watch-late@${spark?.id}`)).toBe(at + 180 * MINUTE);
    expect(opensAt(view, 'prep/place')).toBeNull();
    expect(opensAt(viewOf(entries, at + 61 * MINUTE), `prep/watch@${spark?.id}`)).toBeNull();
  });
});
