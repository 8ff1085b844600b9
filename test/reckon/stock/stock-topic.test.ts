import { describe, expect, test } from 'vitest';
import { topic } from '../../../src/commands/reckon/stock.ts';
import { run } from '../../../src/commands/reckon.ts';

const asked = async (args: readonly string[], input = '') => {
  let out = '';
  let err = '';
  const code = await run(args, {
    out: t => {
      out += t;
    },
    err: t => {
      err += t;
    },
    readStdin: async () => input,
    readFile: async () => input,
  });
  return { code, out, err };
};

const job = (change: object) =>
  JSON.stringify({
    pieces: [{ name: 'upright', length_mm: '3 ft', count: 6 }],
    bars: [{ length_mm: '20 ft', count: 2 }],
    kerf_mm: '1/8 in',
    aim: 'bars',
    ...change,
  });

describe('curvewright reckon stock', () => {
  test('reads inches, and answers one object', async () => {
    const { code, out, err } = await asked(['stock', '--json', '--in', '-'], job({}));
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const answer = JSON.parse(out);
    expect(answer).toMatchObject({
      bar_count: 1,
      total_length_mm: 6096,
      price: null,
      lower_bound: 1,
      proven: true,
    });
    expect(answer.bars[0].cuts).toEqual(Array(6).fill({ name: 'upright', length_mm: 914.4 }));
    expect(answer.bars[0].left_mm).toBeCloseTo(6096 - 6 * 914.4 - 5 * 3.175, 9);
  });

  test.each([
    [
      'a piece too long',
      { pieces: [{ length_mm: '21 ft', count: 1 }] },
      'out-of-range',
      'pieces.0.length_mm',
    ],
    ['a negative length', { pieces: [{ length_mm: -3, count: 1 }] }, 'out-of-range', 'pieces.0.length_mm'],
    ['no bars', { bars: [] }, 'out-of-range', 'bars'],
    ['too few bars', { pieces: [{ length_mm: '3 ft', count: 20 }] }, 'no-solution', 'bars'],
    ['too many pieces', { pieces: [{ length_mm: '3 ft', count: 2001 }] }, 'too-large', 'pieces'],
    ['no price', { aim: 'price' }, 'missing-field', 'bars.0.price'],
    ['an aim there is not', { aim: 'weight' }, 'out-of-range', 'aim'],
    ['a field there is not', { blade_mm: 3 }, 'unknown-field', 'blade_mm'],
  ])('refuses %s', async (_, change, code, field) => {
    const { code: exit, out, err } = await asked(['stock', '--json', '--in', '-'], job(change));
    expect({ exit, err }).toEqual({ exit: 2, err: '' });
    expect(JSON.parse(out).error).toMatchObject({ code, field });
  });

  test('its example is answered', async () => {
    const words = [...topic.example.matchAll(/'([^']*)'|(\S+)/g)].map(m => m[1] ?? m[2]!);
    const { code, out } = await asked(words);
    expect(code).toBe(0);
    expect(out).toContain('upright');
  });
});
