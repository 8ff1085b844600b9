import { loadYoga } from 'yoga-layout/load';

/**
 * Ink's layout, for the bundle: the library waits for its tables while it is loaded, which a part with a kept compiled form
 * cannot do. Here it is waited for before the first page.
 */
const Yoga: Record<string, unknown> = {};

export const layoutLoaded: Promise<void> = loadYoga().then(loaded => {
  Object.assign(Yoga, loaded);
});

export default Yoga;
