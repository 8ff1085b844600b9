import type { Topic } from './topic.ts';

/** Together in one file: a file a topic would be eighteen more to find at every start of the bench, which shares their kernels. */
const all = () => import('./all-topics.ts');

/** Every topic, in the order of the list; loaded when one is asked for. */
export const TOPICS: Readonly<Record<string, () => Promise<{ topic: Topic }>>> = {
  arc: async () => ({ topic: (await all()).arc }),
  lines: async () => ({ topic: (await all()).lines }),
  layout: async () => ({ topic: (await all()).layout }),
  slits: async () => ({ topic: (await all()).slits }),
  section: async () => ({ topic: (await all()).section }),
  stock: async () => ({ topic: (await all()).stock }),
  frame: async () => ({ topic: (await all()).frame }),
  column: async () => ({ topic: (await all()).column }),
  circle: async () => ({ topic: (await all()).circle }),
  rail: async () => ({ topic: (await all()).rail }),
  pull: async () => ({ topic: (await all()).pull }),
  flight: async () => ({ topic: (await all()).flight }),
  climb: async () => ({ topic: (await all()).climb }),
  'run-in': async () => ({ topic: (await all()).runIn }),
  dew: async () => ({ topic: (await all()).dew }),
  heat: async () => ({ topic: (await all()).heat }),
  lift: async () => ({ topic: (await all()).lift }),
  paint: async () => ({ topic: (await all()).paint }),
};
