import { coredWireAmps } from './cored-wire-settings.ts';
import type { Process } from './process.ts';
import { solidWireAmps } from './solid-wire-settings.ts';

/**
 * Current that a wire draws at a feed, A; null where no rule is known (rods, cored wire of 0.8 mm, a wire that is not made).
 * Solid wire: makers' owner manuals [found]. Cored wire: data sheets [memory].
 * @param filler_mm of the wire, as it is sold
 * @param feed_m_min more than 0
 */
export const feedCurrent = (process: Process, filler_mm: number, feed_m_min: number): number | null => {
  if (!(feed_m_min > 0 && feed_m_min < 100)) return null;
  switch (process) {
    case 'gmaw':
      return solidWireAmps(filler_mm, feed_m_min);
    case 'fcaw-s':
      return coredWireAmps(filler_mm, feed_m_min);
    case 'smaw':
      return null;
  }
};
