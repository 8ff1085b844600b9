import { describe, expect, test } from 'vitest';
import { layToLine, lineLength, placesAlong } from '../../../src/reckon/statics/rail-line.ts';

const bent = [
  { x: 0, y: 0 },
  { x: 100, y: 0 },
  { x: 100, y: 50 },
];

describe('places along a rail', () => {
  test('corners and wanted places stand in order, each once', () => {
    const places = placesAlong(bent, [120, 40, 100, 40, 0]);
    expect(places.map(({ at }) => at)).toEqual([0, 40, 100, 120, 150]);
    expect(places.map(({ x, y }) => [x, y])).toEqual([
      [0, 0],
      [40, 0],
      [100, 0],
      [100, 20],
      [100, 50],
    ]);
    expect(lineLength(bent)).toBe(150);
  });

  test('the normal is to the left of the run, and halves the angle of a corner', () => {
    const [, straight, corner, after] = placesAlong(bent, [40, 120]);
    expect(straight!.left).toEqual({ x: -0, y: 1 });
    expect(corner!.left.x).toBeCloseTo(-Math.SQRT1_2, 12);
    expect(corner!.left.y).toBeCloseTo(Math.SQRT1_2, 12);
    expect(after!.left).toEqual({ x: -1, y: 0 });
  });
});

describe('a rail laid to its line', () => {
  const arc = (count: number) =>
    placesAlong(
      Array.from({ length: 25 }, (_, k) => ({
        x: 3000 * Math.sin(k / 30),
        y: 3000 * (1 - Math.cos(k / 30)),
      })),
      [],
    ).filter((_, k) => k % Math.ceil(25 / count) === 0);

  test('only laid askew it is on its line: moved and turned bodily, nothing is left', () => {
    const places = arc(13);
    const [across, along, turn] = [4, 2, 0.003];
    const offsets = places.map(
      ({ x, y, left }) => (along - turn * y) * left.x + (across + turn * x) * left.y,
    );
    // The end places have the normals of their facets, not of the arc: hence a hair.
    for (const rest of layToLine(places, offsets)) expect(Math.abs(rest)).toBeLessThan(0.05);
  });

  test('a straight rail turned about its toe is on its line', () => {
    const places = placesAlong(
      [
        { x: 0, y: 0 },
        { x: 1000, y: 0 },
      ],
      [300, 700],
    );
    for (const rest of layToLine(places, [5, 8, 12, 15])) expect(Math.abs(rest)).toBeLessThan(1e-12);
    const bowed = layToLine(places, [0, 3, 3, 0]);
    expect(bowed.reduce((sum, rest) => sum + rest, 0)).toBeCloseTo(0, 12);
  });

  test('what is left cannot be lessened by laying it again', () => {
    const places = arc(13);
    const curl = places.map(({ at }) => (at / 1000) ** 2);
    const once = layToLine(places, curl);
    for (const [k, rest] of layToLine(places, once).entries()) expect(rest).toBeCloseTo(once[k]!, 9);
  });
});
