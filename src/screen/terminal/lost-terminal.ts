import { closeSync, openSync } from 'node:fs';
import { devNull } from 'node:os';
import { isatty } from 'node:tty';

/** The terminal is gone: its window was closed or the line was cut. Not a fault of the program. */
export const isHangUp = (error: unknown): boolean => {
  const code = (error as { code?: unknown } | null)?.code;
  return code === 'EIO' || code === 'EPIPE' || code === 'ENXIO';
};

/** Which of the three standard streams are a terminal. To be asked while there is one: a lost terminal says no. */
export const terminalStreams = (): number[] => [0, 1, 2].filter(fd => isatty(fd));

/**
 * Puts nothing in the place of a lost terminal. Node 20 sets every terminal it found at its start back to its first state
 * when it exits, and aborts (with a core file) when that fails; a stream that is another file by then is left alone.
 */
export const dropTerminal = (streams: readonly number[]): void => {
  for (const fd of streams) {
    try {
      closeSync(fd);
      // The lowest free number is given out, which is the one just closed.
      openSync(devNull, 'r+');
    } catch {
      // Closed already.
    }
  }
};
