import process from 'node:process';
import { spawn } from '@lydell/node-pty';
import xterm from '@xterm/headless';

/** A program in a real pseudo-terminal, with a terminal emulator that shows what a person would see. */
export type RealTerminal = Readonly<{
  /** Presses keys one after the other: names as in KEYS, or single signs. Each is written by itself, in one go. */
  press: (...keys: string[]) => void;
  /** Types a text as one chunk, as quick typing or a paste without marks arrives. */
  type: (text: string) => void;
  /** Waits until the screen is as asked; gives the screen's text. Fails with the screen's text when it never is. */
  until: (wanted: RegExp | ((screen: string) => boolean), what?: string) => Promise<string>;
  /** The rows of the screen now, without the spaces at their ends. */
  text: () => string[];
  /** Whether the alternate screen is shown. */
  isAlternate: () => boolean;
  /** The column and row of the cursor, from 0. */
  cursor: () => { column: number; row: number };
  resize: (columns: number, rows: number) => void;
  kill: (signal?: string) => void;
  /** Closes the window: the terminal itself is gone, and the program is told by HUP. */
  hangUp: () => void;
  /** Resolves with the exit code, 128 + the signal where a signal ended the program; everything it wrote is on the screen by then. */
  exit: Promise<number>;
  /** Everything the program wrote, as it wrote it. */
  rawBytes: () => string;
  pid: number;
}>;

export type TerminalOptions = Readonly<{
  command: string;
  args?: readonly string[];
  cols?: number;
  rows?: number;
  /** Added to a small, known environment; undefined takes a variable away. */
  env?: Readonly<Record<string, string | undefined>>;
  cwd?: string;
}>;

/** The bytes a terminal sends for each named key. */
export const KEYS: Readonly<Record<string, string>> = {
  enter: '\r',
  esc: '\u001B',
  space: ' ',
  tab: '\t',
  back: '\u007F',
  delete: '\u001B[3~',
  up: '\u001B[A',
  down: '\u001B[B',
  right: '\u001B[C',
  left: '\u001B[D',
  home: '\u001B[H',
  end: '\u001B[F',
  'page-up': '\u001B[5~',
  'page-down': '\u001B[6~',
  'ctrl-c': '\u0003',
  'ctrl-z': '\u001A',
};

/** How long a screen is waited for. Only a program that hangs needs it; a slow machine must not. */
const PATIENCE_MS = 30_000;

/** CI must not be set: Ink would draw nothing before its end. */
const environment = (added: TerminalOptions['env'] = {}): Record<string, string> => {
  const known: Record<string, string | undefined> = {
    PATH: process.env.PATH,
    HOME: process.env.HOME,
    TERM: 'xterm-256color',
    LANG: 'C.UTF-8',
    ...added,
  };
  return Object.fromEntries(
    Object.entries(known).filter((pair): pair is [string, string] => pair[1] !== undefined),
  );
};

/** Starts a program in a new pseudo-terminal. */
export const openTerminal = (options: TerminalOptions): RealTerminal => {
  const { command, args = [], cols = 80, rows = 24 } = options;
  const emulator = new xterm.Terminal({ cols, rows, allowProposedApi: true, scrollback: 1000 });
  const child = spawn(command, [...args], {
    name: 'xterm-256color',
    cols,
    rows,
    env: environment(options.env),
    ...(options.cwd !== undefined && { cwd: options.cwd }),
  });

  let raw = '';
  let ended: number | null = null;
  const watchers = new Set<() => void>();
  const look = (): void => {
    for (const watcher of watchers) watcher();
  };

  // The emulator works its input off in its own time; the screen is looked at when a chunk has been worked off.
  let written = Promise.resolve();
  child.onData(data => {
    raw += data;
    written = new Promise(resolve => {
      emulator.write(data, () => {
        look();
        resolve();
      });
    });
  });

  const exit = new Promise<number>(resolve => {
    child.onExit(({ exitCode, signal }) => {
      const worked = written;
      void worked.then(() => {
        ended = signal ? 128 + signal : exitCode;
        look();
        resolve(ended);
      });
    });
  });

  const text = (): string[] => {
    const { active } = emulator.buffer;
    return Array.from(
      { length: emulator.rows },
      (_, row) => active.getLine(active.viewportY + row)?.translateToString(true) ?? '',
    );
  };

  const screen = (): string => text().join('\n');

  const until: RealTerminal['until'] = (wanted, what = String(wanted)) => {
    const met = typeof wanted === 'function' ? wanted : (shown: string): boolean => wanted.test(shown);
    return new Promise((resolve, reject) => {
      const stop = (): void => {
        watchers.delete(watch);
        clearTimeout(timer);
      };
      const fail = (why: string): void => {
        stop();
        reject(new Error(`${why}: ${what}\n--- the screen ---\n${screen()}\n--- end ---`));
      };
      const watch = (): void => {
        const shown = screen();
        if (met(shown)) {
          stop();
          resolve(shown);
        } else if (ended !== null) fail(`the program ended (${ended}) before the screen was as wanted`);
      };
      const timer = setTimeout(() => fail('the screen never became as wanted'), PATIENCE_MS);
      watchers.add(watch);
      watch();
    });
  };

  return {
    press: (...keys) => {
      for (const key of keys) child.write(KEYS[key] ?? key);
    },
    type: typed => child.write(typed),
    until,
    text,
    isAlternate: () => emulator.buffer.active.type === 'alternate',
    cursor: () => ({ column: emulator.buffer.active.cursorX, row: emulator.buffer.active.cursorY }),
    resize: (columns, newRows) => {
      emulator.resize(columns, newRows);
      child.resize(columns, newRows);
    },
    kill: signal => child.kill(signal),
    // Not in the library's types, but part of its terminal.
    hangUp: () => (child as unknown as { destroy: () => void }).destroy(),
    exit,
    rawBytes: () => raw,
    pid: child.pid,
  };
};
