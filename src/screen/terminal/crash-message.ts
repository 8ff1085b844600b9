import { cleanText } from '../../drawing/clean-text.ts';

/** Lines of the stack that help to find the fault; the rest is the runtime's. */
const STACK_LINES = 8;

/**
 * What is said when the program itself is at fault, on the ordinary screen after the bench has left it.
 * @param whereDataIs one sentence that says where the person's work is.
 */
export const crashMessage = (error: unknown, whereDataIs: string): string => {
  const trace = error instanceof Error ? (error.stack ?? `${error.name}: ${error.message}`) : String(error);
  const lines = trace.split('\n').slice(0, STACK_LINES).map(cleanText);
  return [
    'Curvewright has stopped: a fault of the program, not of your work.',
    whereDataIs,
    '',
    ...lines,
    '',
  ].join('\n');
};
