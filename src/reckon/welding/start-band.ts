/** Where a figure comes from: read in the source, from memory, common practice, or our own arithmetic. */
export type Mark = 'found' | 'memory' | 'practice' | 'derived';

/** A setting to start from, and how far it may lie from what the job wants. */
export type StartBand = Readonly<{ start: number; low: number; high: number; mark: Mark; source: string }>;

/** Straight between two points; past either it stays there. */
export const between = (
  value: number,
  [x1, y1]: readonly [number, number],
  [x2, y2]: readonly [number, number],
): number => y1 + (y2 - y1) * Math.min(1, Math.max(0, (value - x1) / (x2 - x1)));

/** Along a table of points in rising order; its ends beyond them. */
export const along = (value: number, points: readonly (readonly [number, number])[]): number => {
  const next = points.findIndex(([x]) => x >= value);
  const [from, to] = [points[Math.max(0, next - 1)], points[next === -1 ? points.length - 1 : next]];
  if (from === undefined || to === undefined) throw new Error('a table without points');
  return next <= 0 ? to[1] : between(value, from, to);
};

/** A value held inside limits. */
export const held = (value: number, low: number, high: number): number =>
  Math.min(high, Math.max(low, value));
