import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openChoice, pressChoice } from '../../../src/screen/fields/choice.ts';
import { listWindow } from '../../../src/screen/fields/list-window.ts';
import { splitKeys } from '../../../src/screen/terminal/split-keys.ts';

const litAfter = (sent: string, count: number, lit = 0): number => {
  let choice = openChoice(count, lit);
  for (const key of splitKeys(sent).keys) choice = pressChoice(choice, key).choice;
  return choice.lit;
};

describe('choosing from a list', () => {
  test('arrows and n p move the lit row, and it stops at the ends', () => {
    expect(litAfter('\u001B[B\u001B[Bn', 7)).toBe(3);
    expect(litAfter('p', 7)).toBe(0);
    expect(litAfter('nnnnnnnnn', 3)).toBe(2);
    expect(litAfter('\u001B[F', 7)).toBe(6);
    expect(litAfter('\u001B[H', 7, 6)).toBe(0);
  });

  test('Enter chooses the lit row, Escape closes, digits and letters choose nothing', () => {
    const choice = openChoice(7, 2);
    const done = (sent: string) => pressChoice(choice, splitKeys(sent).keys[0]!).done;
    expect(done('\r')).toEqual({ is: 'chosen', index: 2 });
    expect(done('\u001B')).toEqual({ is: 'close' });
    expect(done('3')).toEqual({ is: 'other' });
    expect(done('a')).toEqual({ is: 'other' });
  });

  test('an empty list chooses nothing', () => {
    expect(pressChoice(openChoice(0), { name: 'enter' }).done).toEqual({ is: 'other' });
  });
});

describe('the window on a list', () => {
  test('the lit row stands third, but at the ends of the list', () => {
    expect(listWindow(20, 10, 7)).toEqual({ from: 8, to: 15 });
    expect(listWindow(20, 1, 7)).toEqual({ from: 0, to: 7 });
    expect(listWindow(20, 19, 7)).toEqual({ from: 13, to: 20 });
    expect(listWindow(3, 2, 7)).toEqual({ from: 0, to: 3 });
  });

  test('it always shows the lit row and fills its rows', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.nat(59),
        fc.integer({ min: 1, max: 20 }),
        (count, any, rows) => {
          const lit = Math.min(any, count - 1);
          const { from, to } = listWindow(count, lit, rows);
          expect(from).toBeLessThanOrEqual(lit);
          expect(to).toBeGreaterThan(lit);
          expect(to - from).toBe(Math.min(rows, count));
          expect(from).toBeGreaterThanOrEqual(0);
          expect(to).toBeLessThanOrEqual(count);
        },
      ),
    );
  });
});
