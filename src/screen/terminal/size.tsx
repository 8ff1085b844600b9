import { useStdout } from 'ink';
import { createContext, useContext, useMemo, useSyncExternalStore } from 'react';
import { USUAL_SIZE } from './usual-size.ts';

/** A terminal's size in cells. */
export type Size = Readonly<{ columns: number; rows: number }>;

/** Where the size comes from: the terminal, or a test that changes it by hand. */
export type SizeStore = Readonly<{
  /** The size now; the same object until it changes. */
  get: () => Size;
  /** Calls back after each change; gives the way to stop. */
  subscribe: (changed: () => void) => () => void;
}>;

type SizedStream = Readonly<{
  columns?: number | undefined;
  rows?: number | undefined;
  on: (event: 'resize', listener: () => void) => unknown;
  off: (event: 'resize', listener: () => void) => unknown;
}>;

const sizeOf = (stream: SizedStream): Size => ({
  // Zero columns are sent by terminals that have not been told their size yet.
  columns: stream.columns || USUAL_SIZE.columns,
  rows: stream.rows || USUAL_SIZE.rows,
});

/** The size of an output stream, followed through its `resize` events. */
export const streamSize = (stream: SizedStream): SizeStore => {
  let size = sizeOf(stream);
  return {
    get: () => {
      const now = sizeOf(stream);
      if (now.columns !== size.columns || now.rows !== size.rows) size = now;
      return size;
    },
    subscribe: changed => {
      stream.on('resize', changed);
      return () => {
        stream.off('resize', changed);
      };
    },
  };
};

/** A size that is set by hand. */
export const settableSize = (
  columns: number,
  rows: number,
): SizeStore & { set: (columns: number, rows: number) => void } => {
  let size: Size = { columns, rows };
  const listeners = new Set<() => void>();
  return {
    get: () => size,
    subscribe: changed => {
      listeners.add(changed);
      return () => {
        listeners.delete(changed);
      };
    },
    set: (newColumns, newRows) => {
      size = { columns: newColumns, rows: newRows };
      for (const changed of listeners) changed();
    },
  };
};

/** Put a store here to give a page another size than the terminal's. */
export const SizeContext = createContext<SizeStore | null>(null);

/** The terminal's size now; the component is drawn again when it changes. */
export const useTerminalSize = (): Size => {
  const given = useContext(SizeContext);
  const { stdout } = useStdout();
  const store = useMemo(() => given ?? streamSize(stdout), [given, stdout]);
  return useSyncExternalStore(store.subscribe, store.get);
};
