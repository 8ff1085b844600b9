/** A figure to start from, and how far it may be off; a person's own roll-out test replaces it. */
export type RiderFigure = Readonly<{ likely: number; low: number; high: number; source: string }>;

const PAGE = 'a cycling-forces reference page [found], likely value [practice]';
const PRACTICE = 'common practice [practice]';

/** Drag area, m². */
export const DRAG_AREA_m2 = {
  bike: { likely: 0.5, low: 0.4, high: 0.7, source: PAGE },
  child: { likely: 0.35, low: 0.3, high: 0.4, source: PRACTICE },
  skateboard: { likely: 0.45, low: 0.3, high: 0.7, source: PRACTICE },
} as const satisfies Record<string, RiderFigure>;

/** Rolling resistance as a share of the normal force. */
export const ROLLING = {
  'bike on boards or smooth concrete': { likely: 0.006, low: 0.002, high: 0.025, source: PAGE },
  'bike on asphalt': { likely: 0.008, low: 0.004, high: 0.025, source: PAGE },
  'bike on short grass': { likely: 0.03, low: 0.02, high: 0.05, source: PRACTICE },
  'skateboard on smooth concrete': { likely: 0.015, low: 0.01, high: 0.02, source: PRACTICE },
  'skateboard on rough asphalt': { likely: 0.03, low: 0.02, high: 0.04, source: PRACTICE },
  'scooter on smooth concrete': { likely: 0.015, low: 0.01, high: 0.02, source: PRACTICE },
} as const satisfies Record<string, RiderFigure>;
