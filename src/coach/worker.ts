import { parentPort } from 'node:worker_threads';
import type { Ask } from '../stages/situation.ts';
import { compute } from './compute.ts';

/** The one worker: takes a question, gives its answer, in order. */
parentPort?.on('message', async (message: { id: number; ask: Ask }) => {
  try {
    parentPort?.postMessage({ id: message.id, answer: await compute(message.ask) });
  } catch (error) {
    parentPort?.postMessage({ id: message.id, failed: String((error as Error)?.message ?? error) });
  }
});
