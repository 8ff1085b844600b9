import type { Scene, SceneItem } from '../scene/scene.ts';
import { sceneBounds } from './scene-fit.ts';

/** What a drawing file needs besides its scene. */
export type SvgOptions = Readonly<{
  /** White left round the drawing, mm. */
  margin_mm?: number;
}>;

const MARGIN_MM = 20;
/** Strokes and letters are sized by the longer side of the drawing, so that a sheet of any size reads alike. */
const STROKE_SHARE = 1 / 800;
const LETTER_SHARE = 1 / 50;

const escaped = (text: string): string =>
  text
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/[\u0000-\u001F\u007F]/g, ' ');

/** A length in the file: mm to a thousandth, without trailing noughts or a negative nought. */
const mm = (value: number): string => String(Number(value.toFixed(3)) + 0);

const TEXT_ANCHORS = { left: 'start', middle: 'middle', right: 'end' } as const;

const drawn = (item: SceneItem, stroke: number, letter: number): string => {
  if (item.is === 'path') {
    const points = item.points.map(({ x, y }) => `${mm(x)},${mm(-y)}`).join(' ');
    const width = mm(item.stroke === 'lit' ? stroke * 2 : stroke);
    const dashes = item.stroke === 'dotted' ? ` stroke-dasharray="${mm(stroke)} ${mm(stroke * 3)}"` : '';
    return `<polyline points="${points}" fill="none" stroke="black" stroke-width="${width}"${dashes}/>`;
  }
  const at = `x="${mm(item.at.x)}" y="${mm(-item.at.y)}"`;
  if (item.is === 'label') {
    const weight = item.lit === true ? ' font-weight="bold"' : '';
    return `<text ${at} font-size="${mm(letter)}" text-anchor="${TEXT_ANCHORS[item.anchor]}"${weight}>${escaped(item.text)}</text>`;
  }
  if (item.sign === 'plus' || item.sign === 'minus') {
    return `<text ${at} font-size="${mm(letter)}" text-anchor="middle">${item.sign === 'plus' ? '+' : '-'}</text>`;
  }
  const radius = mm(item.sign === 'here' ? stroke * 5 : stroke * 3);
  return `<circle cx="${mm(item.at.x)}" cy="${mm(-item.at.y)}" r="${radius}"/>`;
};

/**
 * A scene as an SVG file at full size: one unit is one mm, and the sheet is as many mm as the scene and its margin.
 * y grows upward in a scene and downward in the file, so heights change their sign here.
 */
export const sceneSvg = (scene: Scene, options: SvgOptions = {}): string => {
  const bounds = sceneBounds(scene) ?? { left: 0, right: 0, bottom: 0, top: 0 };
  const margin = options.margin_mm ?? MARGIN_MM;
  const width = bounds.right - bounds.left + 2 * margin;
  const height = bounds.top - bounds.bottom + 2 * margin;
  const longer = Math.max(width, height);
  const items = scene.items.map(item => `  ${drawn(item, longer * STROKE_SHARE, longer * LETTER_SHARE)}\n`);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>\n',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(width)}mm" height="${mm(height)}mm" `,
    `viewBox="${mm(bounds.left - margin)} ${mm(-bounds.top - margin)} ${mm(width)} ${mm(height)}" font-family="sans-serif">\n`,
    `  <title>${escaped(scene.title)}</title>\n`,
    ...items,
    '</svg>\n',
  ].join('');
};
