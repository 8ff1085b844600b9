import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawScene } from '../../src/drawing/braille.ts';
import { rowText, rowWidth } from '../../src/drawing/cells.ts';
import type { Row } from '../../src/drawing/row.ts';
import type { Scene, SceneItem, ScenePoint } from '../../src/scene/scene.ts';

const scene = (...items: SceneItem[]): Scene => ({ title: 'side view, to scale', items });
const solid = (...points: ScenePoint[]): SceneItem => ({ is: 'path', points, stroke: 'solid' });
const written = (rows: readonly Row[]): string[] => rows.map(rowText);

const square = solid({ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 10, y: 10 }, { x: 0, y: 10 }, { x: 0, y: 0 });

/** The dots of a drawing as a set of "column,row". */
const inked = (rows: readonly Row[]): [number, number][] =>
  written(rows).flatMap((line, row) =>
    Array.from(line).flatMap((sign, column) => {
      const dots = sign === ' ' ? 0 : sign.codePointAt(0)! - 0x2800;
      const places: [number, number][] = [
        [0, 0],
        [0, 1],
        [0, 2],
        [1, 0],
        [1, 1],
        [1, 2],
        [0, 3],
        [1, 3],
      ];
      return places
        .filter((_, bit) => (dots >> bit) & 1)
        .map(([x, y]): [number, number] => [column * 2 + x, row * 4 + y]);
    }),
  );

const span = (values: number[]): number => Math.max(...values) - Math.min(...values);

describe('a scene in braille', () => {
  test('a square is as many dots wide as high, whatever the box', () => {
    for (const box of [
      { columns: 20, rows: 5 },
      { columns: 5, rows: 20 },
      { columns: 33, rows: 7 },
    ]) {
      const dots = inked(drawScene(scene(square), { ...box, ascii: false }));
      expect(span(dots.map(([x]) => x))).toBe(span(dots.map(([, y]) => y)));
    }
  });

  test('it fills the box in one direction and stands on its bottom row', () => {
    const dots = inked(drawScene(scene(square), { columns: 20, rows: 5, ascii: false }));
    expect(span(dots.map(([, y]) => y))).toBe(19);
    expect(Math.max(...dots.map(([, y]) => y))).toBe(19);
  });

  test('up in the scene is up on the screen', () => {
    const rising = drawScene(scene(solid({ x: 0, y: 0 }, { x: 100, y: 100 })), {
      columns: 4,
      rows: 2,
      ascii: false,
    });
    expect(written(rising)).toEqual(['  ⡠⠊', '⡠⠊  ']);
  });

  test('a solid line is dots without a gap, a dotted one every third dot along the whole way', () => {
    const along = Array.from({ length: 40 }, (_, index) => ({ x: index, y: 0 }));
    const box = { columns: 20, rows: 1, ascii: false };
    expect(inked(drawScene(scene(solid(...along)), box))).toHaveLength(40);
    expect(inked(drawScene(scene({ is: 'path', points: along, stroke: 'dotted' }), box))).toHaveLength(14);
  });

  test('sides and the lit stroke are told by role, and the lit one wins in a shared cell', () => {
    const flat = (y: number): ScenePoint[] => [
      { x: 0, y },
      { x: 100, y },
    ];
    const rows = drawScene(
      scene(
        { is: 'path', points: flat(50), stroke: 'solid', side: 'plus' },
        { is: 'path', points: flat(25), stroke: 'dotted' },
        { is: 'path', points: flat(0), stroke: 'solid', side: 'minus' },
        { is: 'path', points: flat(0), stroke: 'lit' },
      ),
      { columns: 10, rows: 3, ascii: false },
    );
    expect(rows.map(line => line[0]?.role)).toEqual(['plus', 'quiet', 'lead']);
  });

  test('labels stand over the strokes, inside the box, and not on each other', () => {
    const rows = drawScene(
      scene(
        square,
        { is: 'label', at: { x: 10, y: 10 }, text: 'lip', anchor: 'left' },
        { is: 'label', at: { x: 10, y: 10 }, text: 'point 5', anchor: 'right', lit: true },
      ),
      { columns: 16, rows: 6, ascii: false },
    );
    const text = written(rows).join('\n');
    expect(text).toContain('lip');
    expect(text).toContain('point 5');
    expect(rows.flat().find(({ text: words }) => words.includes('point 5'))?.role).toBe('lead');
  });

  test('a label with no free room is left out before a lit one', () => {
    const here = { x: 0, y: 0 };
    const rows = drawScene(
      scene(
        { is: 'label', at: here, text: 'entry', anchor: 'left' },
        { is: 'label', at: here, text: 'STOP', anchor: 'left', lit: true },
      ),
      { columns: 6, rows: 1, ascii: false },
    );
    expect(written(rows)).toEqual(['  STOP']);
  });

  test('the sign "here" points at its place, from the other side at the right edge', () => {
    const path = solid({ x: 0, y: 0 }, { x: 100, y: 0 });
    const at = (x: number): string =>
      written(
        drawScene(scene(path, { is: 'mark', at: { x, y: 0 }, sign: 'here' }), {
          columns: 10,
          rows: 1,
          ascii: false,
        }),
      )[0]!;
    expect(at(0)[1]).toBe('◂');
    expect(at(100)[8]).toBe('▸');
  });

  test('plus and minus marks carry their sign, not only a colour', () => {
    const rows = drawScene(
      scene(
        { is: 'mark', at: { x: 0, y: 0 }, sign: 'minus' },
        { is: 'mark', at: { x: 10, y: 10 }, sign: 'plus' },
      ),
      { columns: 8, rows: 2, ascii: true },
    );
    expect(rows.flat()).toContainEqual({ text: '+', role: 'plus' });
    expect(rows.flat()).toContainEqual({ text: '-', role: 'minus' });
  });

  test('nothing to draw, one point, and a place that is no number leave a blank field', () => {
    const box = { columns: 3, rows: 2, ascii: false };
    expect(written(drawScene(scene(), box))).toEqual(['   ', '   ']);
    expect(inked(drawScene(scene(solid({ x: 7, y: 7 })), box))).toHaveLength(1);
    expect(written(drawScene(scene(solid({ x: Number.NaN, y: 0 })), box))).toEqual(['   ', '   ']);
    expect(drawScene(scene(square), { columns: 0, rows: 4, ascii: false })).toEqual([]);
  });

  test('no scene overflows its box, and its ASCII twin is 7-bit', () => {
    const place = fc.record({
      x: fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      y: fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    });
    const item: fc.Arbitrary<SceneItem> = fc.oneof(
      fc.record({
        is: fc.constant('path' as const),
        points: fc.array(place, { maxLength: 6 }),
        stroke: fc.constantFrom('solid' as const, 'dotted' as const, 'lit' as const),
      }),
      fc.record({
        is: fc.constant('label' as const),
        at: place,
        text: fc.string({ unit: 'grapheme', maxLength: 30 }),
        anchor: fc.constantFrom('left' as const, 'middle' as const, 'right' as const),
      }),
      fc.record({
        is: fc.constant('mark' as const),
        at: place,
        sign: fc.constantFrom('dot' as const, 'here' as const, 'plus' as const, 'minus' as const),
      }),
    );
    fc.assert(
      fc.property(
        fc.array(item, { maxLength: 8 }),
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 1, max: 12 }),
        fc.boolean(),
        (items, columns, rows, ascii) => {
          const drawn = drawScene(scene(...items), { columns, rows, ascii });
          expect(drawn).toHaveLength(rows);
          for (const line of drawn) expect(rowWidth(line)).toBe(columns);
          if (ascii) expect(written(drawn).join('')).toMatch(/^[\x20-\x7E]*$/);
        },
      ),
    );
  });
});

describe('the ASCII twin of a scene', () => {
  const draw = (columns: number, rows: number, ...items: SceneItem[]): string[] =>
    written(drawScene(scene(...items), { columns, rows, ascii: true }));

  test('strokes become the signs whose ink lies where the dots would', () => {
    expect(draw(6, 1, solid({ x: 0, y: 0 }, { x: 100, y: 0 }))).toEqual(['______']);
    expect(draw(1, 3, solid({ x: 0, y: 0 }, { x: 0, y: 100 }))).toEqual(['|', '|', '|']);
    expect(draw(2, 2, solid({ x: 0, y: 0 }, { x: 20, y: 50 }))).toEqual([' /', '/ ']);
    expect(draw(2, 2, solid({ x: 0, y: 50 }, { x: 20, y: 0 }))).toEqual(['\\ ', ' \\']);
  });

  test('a line laid out is told from steel without colour', () => {
    const points = [
      { x: 0, y: 0 },
      { x: 100, y: 0 },
    ];
    expect(draw(6, 1, { is: 'path', points, stroke: 'dotted' })[0]).toMatch(/^[. ]+$/);
  });
});
