import type { Topic } from './topic.ts';

/** Every topic, each loaded only when it is asked for. */
export const TOPICS: Readonly<Record<string, () => Promise<{ topic: Topic }>>> = {
  arc: () => import('./arc.ts'),
  lines: () => import('./lines.ts'),
  layout: () => import('./layout.ts'),
  slits: () => import('./slits.ts'),
  section: () => import('./section.ts'),
  stock: () => import('./stock.ts'),
  frame: () => import('./frame.ts'),
  column: () => import('./column.ts'),
  circle: () => import('./circle.ts'),
  rail: () => import('./rail.ts'),
  pull: () => import('./pull.ts'),
  flight: () => import('./flight.ts'),
  climb: () => import('./climb.ts'),
  'run-in': () => import('./run-in.ts'),
  dew: () => import('./dew.ts'),
  heat: () => import('./heat.ts'),
  lift: () => import('./lift.ts'),
  paint: () => import('./paint.ts'),
};
