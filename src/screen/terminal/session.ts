import { writeSync } from 'node:fs';
import process from 'node:process';
import { cleanText } from '../../drawing/clean-text.ts';
import { crashMessage } from './crash-message.ts';
import { holdConsole } from './held-console.ts';
import { dropTerminal, isHangUp, terminalStreams } from './lost-terminal.ts';

/** What the session needs of a running Ink application. */
export type InkApp = Readonly<{ unmount: () => void; waitUntilExit: () => Promise<unknown> }>;

export type SessionOptions = Readonly<{
  /** One sentence that says where the person's work is; printed when the program fails. */
  whereDataIs: () => string;
}>;

/** The terminal while the bench has it. */
export type Session = Readonly<{
  /** Takes the screen. Before Ink is started. */
  enter: () => void;
  /** Waits until the application ends, by itself, by a signal or by a fault; the terminal is then as it was found. Gives the exit code. */
  until: (app: InkApp) => Promise<number>;
  /** Ends the application with an exit code (130 for Ctrl-C). */
  quit: (code?: number) => void;
  /** Hands the terminal back to the shell until the job is continued (Ctrl-Z). */
  suspend: () => void;
  /** Calls back when the whole screen has to be written anew; gives the way to stop. */
  onRepaint: (repaint: () => void) => () => void;
  /** Gives the terminal back. May be called any number of times. */
  leave: () => void;
}>;

const ENTER_ALTERNATE = '\u001B[?1049h\u001B[2J\u001B[H';
const LEAVE_ALTERNATE = '\u001B[?1049l';
const SHOW_CURSOR = '\u001B[?25h';
const HIDE_CURSOR = '\u001B[?25l';
/** Asks the terminal to put marks round what is pasted, so that a paste is never taken for keys. */
const MARK_PASTES = '\u001B[?2004h';
const DO_NOT_MARK_PASTES = '\u001B[?2004l';

/** Exit codes by signal: 128 and the signal's number. */
const SIGNAL_CODES = { SIGINT: 130, SIGTERM: 143, SIGHUP: 129 } as const;
const HANG_UP_CODE = SIGNAL_CODES.SIGHUP;
const FAULT_CODE = 70;

/** Writes past all buffers, so that it is out before the process ends. False when the terminal is gone. */
const writeNow = (fd: number, text: string): boolean => {
  try {
    writeSync(fd, text);
    return true;
  } catch (error) {
    return !isHangUp(error);
  }
};

const rawMode = (on: boolean): void => {
  try {
    process.stdin.setRawMode?.(on);
  } catch {
    // The terminal is gone.
  }
};

/**
 * Takes the terminal for the bench and sees that it is given back whatever happens: at the end, on INT, TERM and HUP (exit
 * codes 130, 143, 129), on a fault (70, with a message on stderr that says where the data is), on Ctrl-Z and back.
 * With a screen reader the ordinary screen is kept, for the reader follows it.
 */
export const openSession = (options: SessionOptions): Session => {
  const alternate = process.env.INK_SCREEN_READER !== 'true';
  const repaints = new Set<() => void>();
  let entered = false;
  let suspended = false;
  let app: InkApp | null = null;
  let finish: ((code: number) => void) | null = null;
  let code: number | null = null;
  let releaseConsole: (() => string[]) | null = null;
  let streams: readonly number[] = [];

  const take = (): void => {
    entered = true;
    writeNow(process.stdout.fd, (alternate ? ENTER_ALTERNATE + HIDE_CURSOR : '') + MARK_PASTES);
  };

  const leave = (): void => {
    if (!entered) return;
    entered = false;
    const told = writeNow(
      process.stdout.fd,
      DO_NOT_MARK_PASTES + SHOW_CURSOR + (alternate ? LEAVE_ALTERNATE : ''),
    );
    if (!told) dropTerminal(streams);
  };

  /** Ends once; the first reason is the one that counts. */
  const end = (exitCode: number, message?: string): void => {
    if (code !== null) return;
    code = exitCode;
    try {
      app?.unmount();
    } catch {
      // A fault while drawing the last frame must not keep the terminal.
    }
    rawMode(false);
    leave();
    // Not before this event has gone round: Ink listens to signals too (signal-exit), and ends the process by the signal when
    // it finds itself alone.
    setImmediate(forget);
    const held = releaseConsole?.() ?? [];
    const said = [message ?? '', ...held.map(line => `${cleanText(line)}\n`)].join('');
    if (said !== '') writeNow(process.stderr.fd, said);
    finish?.(exitCode);
  };

  const fail = (error: unknown): void => {
    if (isHangUp(error)) end(HANG_UP_CODE);
    else end(FAULT_CODE, crashMessage(error, options.whereDataIs()));
  };

  const bySignal = (signal: NodeJS.Signals): void =>
    end(SIGNAL_CODES[signal as keyof typeof SIGNAL_CODES] ?? FAULT_CODE);

  const suspend = (): void => {
    if (process.platform === 'win32' || suspended || !entered) return;
    suspended = true;
    rawMode(false);
    leave();
    process.off('SIGTSTP', suspend);
    // The whole job, as the terminal itself would do it: a parent that waits for us (npx, a script) must stop too, or the
    // shell never gets the terminal. Everything stands still inside this call until the job is continued. Where no shell
    // could continue it the kernel drops the signal and the call returns at once; a self-raised SIGSTOP would freeze such a
    // window for good.
    process.kill(0, 'SIGTSTP');
    suspended = false;
    process.on('SIGTSTP', suspend);
    takeBack();
  };

  /** After a stop of any kind the shell has reset the terminal: raw mode, screen and cursor are set again, then all is drawn. */
  const takeBack = (): void => {
    rawMode(false);
    rawMode(true);
    take();
    // The window may have changed its size meanwhile; Node looks it up again only on this signal.
    process.kill(process.pid, 'SIGWINCH');
    for (const again of repaints) again();
  };

  const onContinue = (): void => {
    if (entered) takeBack();
  };

  const remember = (): void => {
    process.on('exit', leave);
    for (const signal of Object.keys(SIGNAL_CODES)) process.on(signal, bySignal);
    process.on('uncaughtException', fail);
    process.stdout.on('error', fail);
    process.stdin.on('error', fail);
    if (process.platform === 'win32') return;
    process.on('SIGTSTP', suspend);
    process.on('SIGCONT', onContinue);
  };

  const forget = (): void => {
    for (const signal of Object.keys(SIGNAL_CODES)) process.off(signal, bySignal);
    process.off('uncaughtException', fail);
    process.off('SIGTSTP', suspend);
    process.off('SIGCONT', onContinue);
    // The listeners for stream errors stay: a terminal that hangs up late must not turn an orderly end into a fault.
  };

  return {
    enter: () => {
      if (entered) return;
      streams = terminalStreams();
      remember();
      releaseConsole = holdConsole();
      take();
    },
    until: running => {
      app = running;
      return new Promise(resolve => {
        finish = resolve;
        if (code !== null) {
          running.unmount();
          resolve(code);
          return;
        }
        running.waitUntilExit().then(
          () => end(0),
          (error: unknown) => fail(error),
        );
      });
    },
    quit: (exitCode = 0) => end(exitCode),
    suspend,
    onRepaint: again => {
      repaints.add(again);
      return () => {
        repaints.delete(again);
      };
    },
    leave,
  };
};
