import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { type Ask, askKey } from '../stages/situation.ts';
import type { Keeper } from './keeper.ts';
import { asksOf, withAnswer } from './tasks.ts';

/** Computes what the pages ask, off the thread that listens to the keys; what stands meanwhile stays on the page. */
export type Thinker = Readonly<{ think: (keeper: Keeper) => void; stop: () => void }>;

/** The worker's bundle beside this one, if this is a bundle. */
const workerFile = (): string | null => {
  const file = fileURLToPath(new URL('./worker.js', import.meta.url));
  return existsSync(file) ? file : null;
};

/** How long a worker with nothing to do is kept, ms: it takes as much memory as the pages do. */
const IDLE_MS = 1500;

export const startThinker = (changed: () => void): Thinker => {
  let worker: Worker | null = null;
  let rest: NodeJS.Timeout | null = null;
  let next = 0;
  const asked = new Set<string>();
  const waiting = new Map<number, (answer: unknown) => void>();
  const file = workerFile();

  const stop = (): void => {
    void worker?.terminate();
    worker = null;
  };

  const ask = (message: Ask, then: (answer: unknown) => void): void => {
    if (file === null) {
      void import('./compute.ts').then(m => m.compute(message)).then(then);
      return;
    }
    if (rest !== null) clearTimeout(rest);
    if (worker === null) {
      worker = new Worker(file, { resourceLimits: { maxYoungGenerationSizeMb: 8 } });
      worker.unref();
      worker.on('message', (m: { id: number; answer?: unknown; failed?: string }) => {
        const done = waiting.get(m.id);
        waiting.delete(m.id);
        if (waiting.size === 0) rest = setTimeout(stop, IDLE_MS).unref();
        if (m.failed === undefined) done?.(m.answer);
      });
      worker.on('error', () => {
        worker = null;
        waiting.clear();
        asked.clear();
      });
    }
    const id = next++;
    waiting.set(id, then);
    worker.postMessage({ id, ask: message });
  };

  /** What an answer brings up is asked in its turn: the frame is over-used, so what mends it? Nothing twice in one such chain. */
  const think = (keeper: Keeper, chain: Set<string>): void => {
    for (const a of asksOf(keeper.view())) {
      const key = askKey(a);
      if (asked.has(key) || chain.has(key)) continue;
      asked.add(key);
      chain.add(key);
      ask(a, value => {
        // Only so many answers are kept: one that had to go is asked for again.
        asked.delete(key);
        keeper.know(withAnswer(keeper.view().situation.answers, a, value));
        think(keeper, chain);
        changed();
      });
    }
  };

  return { think: keeper => think(keeper, new Set()), stop };
};
