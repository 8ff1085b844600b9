import type { Scene, SceneItem, ScenePoint } from '../scene/scene.ts';
import { asciiText } from './ascii-twin.ts';
import { cellWidth, cutTo } from './cells.ts';
import { cleanText } from './clean-text.ts';
import { type Dot, type DotCanvas, dotCanvas, dotsAlong, type Ink } from './dot-canvas.ts';
import { CELL_COLUMNS, CELL_ROWS } from './dot-cell.ts';
import type { Role, Row, Span } from './row.ts';
import { fitInto, sceneBounds } from './scene-fit.ts';
import { type TextLayer, textLayer } from './text-layer.ts';

/** The room of a drawing in text cells. */
export type DrawingBox = Readonly<{ columns: number; rows: number; ascii: boolean }>;

type Path = Extract<SceneItem, { is: 'path' }>;
type Label = Extract<SceneItem, { is: 'label' }>;
type Mark = Extract<SceneItem, { is: 'mark' }>;
type Place = (point: ScenePoint) => Dot;

const ink = (path: Path): Ink => {
  const dotted = path.stroke === 'dotted';
  if (path.stroke === 'lit') return { role: 'lead', rank: 3, dotted };
  if (path.side !== undefined) return { role: path.side, rank: 2, dotted };
  return dotted ? { role: 'quiet', rank: 0, dotted } : { role: 'plain', rank: 1, dotted };
};

const drawPath = (canvas: DotCanvas, path: Path, place: Place): void => {
  const corners = path.points
    .filter(point => Number.isFinite(point.x) && Number.isFinite(point.y))
    .map(place);
  canvas.stroke(dotsAlong(corners), ink(path));
};

/** Four dots in a square: the smallest mark that is still seen on a stroke. */
const drawDot = (canvas: DotCanvas, mark: Mark, place: Place, width: number): void => {
  const at = place(mark.at);
  const column = Math.min(at.column, width - 2);
  const row = Math.max(at.row, 1);
  const dots = [
    { column, row },
    { column: column + 1, row },
    { column, row: row - 1 },
    { column: column + 1, row: row - 1 },
  ];
  canvas.stroke(dots, {
    role: mark.lit === true ? 'lead' : 'plain',
    rank: mark.lit === true ? 3 : 1,
    dotted: false,
  });
};

const cellOf = (dot: Dot): Dot => ({
  column: Math.floor(dot.column / CELL_COLUMNS),
  row: Math.floor(dot.row / CELL_ROWS),
});

const MARK_ROLES: Readonly<Record<'here' | 'plus' | 'minus', Role>> = {
  here: 'lead',
  plus: 'plus',
  minus: 'minus',
};

/** `+` and `-` stand on their place; `here` stands beside it and points at it, from the right where there is room. */
const putMark = (layer: TextLayer, mark: Mark, place: Place, box: DrawingBox): void => {
  const at = cellOf(place(mark.at));
  if (mark.sign === 'dot') {
    if (box.ascii) layer.put('o', at.column, at.row, mark.lit === true ? 'lead' : 'plain');
    return;
  }
  const role = mark.lit === true ? 'lead' : MARK_ROLES[mark.sign];
  if (mark.sign !== 'here') {
    layer.put(mark.sign === 'plus' ? '+' : '-', at.column, at.row, role);
    return;
  }
  const right = at.column + 1 < box.columns;
  const sign = right ? (box.ascii ? '<' : '◂') : box.ascii ? '>' : '▸';
  layer.put(sign, right ? at.column + 1 : Math.max(0, at.column - 1), at.row, role);
};

const ANCHOR_SHIFT: Readonly<Record<Label['anchor'], number>> = { left: 0, middle: 0.5, right: 1 };

/** Rows to try for a label, nearest first: a label moves up or down a row or two sooner than it covers another label or a stroke. */
const NEARBY_ROWS = [0, -1, 1, -2, 2] as const;

/** How many cells with strokes a label would hide. */
const hidden = (canvas: DotCanvas, column: number, row: number, width: number): number =>
  Array.from({ length: width }, (_, index) => canvas.cell(column + index, row, false)).filter(
    cell => cell !== null,
  ).length;

const putLabel = (layer: TextLayer, canvas: DotCanvas, label: Label, place: Place, box: DrawingBox): void => {
  const clean = cleanText(label.text);
  const text = cutTo(box.ascii ? asciiText(clean) : clean, box.columns, box.ascii);
  const at = cellOf(place(label.at));
  const width = cellWidth(text);
  const start = Math.round(at.column - ANCHOR_SHIFT[label.anchor] * (width - 1));
  const column = Math.max(0, Math.min(start, box.columns - width));
  const free = NEARBY_ROWS.map(shift => at.row + shift).filter(row => layer.fits(text, column, row));
  const [best] = free.sort(
    (one, other) => hidden(canvas, column, one, width) - hidden(canvas, column, other, width),
  );
  if (best !== undefined) layer.put(text, column, best, label.lit === true ? 'lead' : 'plain');
};

const rowOf = (line: number, canvas: DotCanvas, layer: TextLayer, box: DrawingBox): Row => {
  const spans: { text: string; role: Role }[] = [];
  for (let column = 0; column < box.columns; column += 1) {
    const cell = layer.cell(column, line) ??
      canvas.cell(column, line, box.ascii) ?? { text: ' ', role: 'plain' as const };
    const last = spans.at(-1);
    if (last !== undefined && last.role === cell.role) last.text += cell.text;
    else spans.push({ ...cell });
  }
  return spans.map(({ text, role }): Span => (role === 'plain' ? { text } : { text, role }));
};

/**
 * A scene as text rows: dots of braille, two across and four down in a cell, or 7-bit signs where the dots would lie.
 * The scene keeps its shape (a cell is taken as twice as high as it is wide), fills the box as far as it can and stands
 * on its bottom row. Each row is exactly `columns` cells wide. Solid strokes are plain, dotted ones quiet, lit ones lead;
 * a stroke of the plus or minus side has that role. Labels and marks stand over the strokes; a label for which there is no
 * free room near its place is left out, the lit ones last.
 */
export const drawScene = (scene: Scene, box: DrawingBox): Row[] => {
  if (box.columns < 1 || box.rows < 1) return [];
  const canvas = dotCanvas(box.columns, box.rows);
  const layer = textLayer(box.columns, box.rows);
  const bounds = sceneBounds(scene);
  if (bounds !== null) {
    const across = box.columns * CELL_COLUMNS;
    const place = fitInto(bounds, { across, down: box.rows * CELL_ROWS });
    const paths = scene.items.filter(item => item.is === 'path');
    const marks = scene.items
      .filter(item => item.is === 'mark')
      .filter(({ at }) => Number.isFinite(at.x) && Number.isFinite(at.y));
    const labels = scene.items
      .filter(item => item.is === 'label')
      .filter(({ at }) => Number.isFinite(at.x) && Number.isFinite(at.y));
    for (const path of paths) drawPath(canvas, path, place);
    for (const mark of marks) {
      if (mark.sign === 'dot' && !box.ascii) drawDot(canvas, mark, place, across);
      else putMark(layer, mark, place, box);
    }
    const litFirst = [
      ...labels.filter(label => label.lit === true),
      ...labels.filter(label => label.lit !== true),
    ];
    for (const label of litFirst) putLabel(layer, canvas, label, place, box);
  }
  return Array.from({ length: box.rows }, (_, line) => rowOf(line, canvas, layer, box));
};
