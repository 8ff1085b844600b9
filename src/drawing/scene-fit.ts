import type { Scene, ScenePoint } from '../scene/scene.ts';

/** The smallest upright box round everything in a scene, mm. */
export type Bounds = Readonly<{ left: number; right: number; bottom: number; top: number }>;

const isFinitePoint = (point: ScenePoint): boolean => Number.isFinite(point.x) && Number.isFinite(point.y);

/** Every place a scene names. A point that is not a finite number is left out: a drawing must not hang on it. */
const scenePoints = (scene: Scene): ScenePoint[] =>
  scene.items.flatMap(item => (item.is === 'path' ? item.points : [item.at])).filter(isFinitePoint);

/** The bounds of a scene, or null when it has no place in it. */
export const sceneBounds = (scene: Scene): Bounds | null => {
  const points = scenePoints(scene);
  const first = points[0];
  if (first === undefined) return null;
  let [left, right, bottom, top] = [first.x, first.x, first.y, first.y];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  return { left, right, bottom, top };
};

/**
 * A way from mm to square dots that keeps the shape: the same scale both ways, as large as the field of dots allows,
 * in the middle across, standing on the bottom row.
 * @param dots the field, in dots across and down; at least one each.
 */
export const fitInto = (
  bounds: Bounds,
  dots: { across: number; down: number },
): ((point: ScenePoint) => { column: number; row: number }) => {
  const width = bounds.right - bounds.left;
  const height = bounds.top - bounds.bottom;
  const scales = [
    width > 0 ? (dots.across - 1) / width : null,
    height > 0 ? (dots.down - 1) / height : null,
  ].filter(scale => scale !== null);
  const scale = scales.length > 0 ? Math.min(...scales) : 0;
  const margin = (dots.across - 1 - width * scale) / 2;
  return point => ({
    column: Math.round(margin + (point.x - bounds.left) * scale),
    row: Math.round(dots.down - 1 - (point.y - bounds.bottom) * scale),
  });
};
