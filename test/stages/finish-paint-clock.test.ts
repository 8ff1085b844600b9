import { describe, expect, test } from 'vitest';
import { finishSheet } from '../../src/stages/finish/sheet.ts';
import { read, tick } from './doings.ts';
import { situation } from './frame-doings.ts';

/** Doings are stamped an hour apart, the last an hour ago: so much later is now. */
const wait = (hours: number) => Array.from({ length: hours }, (_, k) => tick(`some/other@${k}`));
const HOUR = 3600;
const tins = (from_h: number, to_h: number) => [
  read('finish/tins', 'from', from_h * HOUR),
  read('finish/tins', 'to', to_h * HOUR),
];
const clean = read('finish/clean', 'rust', 0);
const gate = (key: string, id: string, ...doings: Parameters<typeof situation>) =>
  finishSheet(situation(...doings))
    .steps.find(s => s.key === key)
    ?.gates?.find(g => g.id === id);
const seconds = (id: string, ...doings: Parameters<typeof situation>): number | string | undefined => {
  const value = finishSheet(situation(...doings)).figures.find(f => f.id === id)?.value;
  return value?.is === 'exact' ? value.v : value?.is;
};

describe('bright steel rusts', () => {
  test('four hours from when it was read clean, told down as they pass', () => {
    expect(seconds('bare-left')).toBe('unknown');
    expect(seconds('bare-left', clean)).toBe(3 * HOUR);
    expect(seconds('bare-left', clean, ...wait(1))).toBe(2 * HOUR);
    expect(seconds('bare-left', clean, ...wait(9))).toBe(0);
  });

  test('past them no primer, until it is looked at and read once more', () => {
    expect(gate('finish/prime', 'bare-too-long', clean, ...wait(3))?.shut).toBe(false);
    expect(gate('finish/prime', 'bare-too-long', clean, ...wait(4))).toMatchObject({
      shut: true,
      measure: 'finish/clean',
      fills: { bare: { v: 5 * HOUR } },
    });
    expect(gate('finish/prime', 'bare-too-long', clean, ...wait(4), clean)?.shut).toBe(false);
  });

  test('once primed the clock stands', () => {
    expect(seconds('bare-left', clean, tick('finish/prime'), ...wait(20))).toBe(3 * HOUR);
  });

  test('rust that is left is said as that', () => {
    expect(gate('finish/prime', 'rust-left', read('finish/clean', 'rust', 5))).toMatchObject({
      shut: true,
      fills: { left: 5 },
    });
  });
});

describe('the next coat, by the tins', () => {
  test('not before 6 hours, not after 12, told down in both', () => {
    const primed = [...tins(6, 12), tick('finish/prime')];
    expect(gate('finish/top', 'recoat-too-soon', ...primed, ...wait(2))).toMatchObject({
      shut: true,
      fills: { left: { v: 3 * HOUR } },
    });
    expect(seconds('coat-from', ...primed, ...wait(2))).toBe(3 * HOUR);
    expect(seconds('coat-to', ...primed, ...wait(2))).toBe(9 * HOUR);
    expect(gate('finish/top', 'recoat-too-soon', ...primed, ...wait(6))?.shut).toBe(false);
    expect(gate('finish/top', 'recoat-too-late', ...primed, ...wait(12))).toMatchObject({
      shut: true,
      fills: { past: { v: HOUR } },
    });
  });

  test('each coat counts from the one before it', () => {
    const coated = [...tins(6, 12), tick('finish/prime'), ...wait(8), tick('finish/top')];
    expect(gate('finish/paint', 'recoat-too-soon', ...coated)?.shut).toBe(true);
    expect(seconds('coat-from', ...coated)).toBe(5 * HOUR);
    expect(gate('finish/paint', 'recoat-too-soon', ...coated, ...wait(5))?.shut).toBe(false);
  });

  test('unknown before the tins are read or the coat is on', () => {
    expect(seconds('coat-from', ...tins(6, 12))).toBe('unknown');
    expect(seconds('coat-from', tick('finish/prime'))).toBe('unknown');
  });

  test('no deck on soft paint: a day after the last coat', () => {
    expect(gate('finish/deck', 'paint-soft')?.shut).toBe(false);
    expect(gate('finish/deck', 'paint-soft', tick('finish/paint'), ...wait(10))).toMatchObject({
      shut: true,
      fills: { left: { v: 13 * HOUR } },
    });
    expect(gate('finish/deck', 'paint-soft', tick('finish/paint'), ...wait(24))?.shut).toBe(false);
  });
});
