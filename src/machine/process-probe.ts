import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import { hostname, platform } from 'node:os';
import { errorCode } from './file-fault.ts';

/** A process as this machine sees it. `started` is null where the system does not tell. */
export type ProcessState = Readonly<{ runs: boolean; started: string | null }>;

const read = (path: string): string | null => {
  try {
    return fs.readFileSync(path, 'utf8');
  } catch {
    return null;
  }
};

/** Counted from the start of the machine, so it needs the name of that start beside it. */
const linuxStart = (pid: number): ProcessState | null => {
  const stat = read(`/proc/${pid}/stat`);
  if (stat === null) return null;
  // Field 2 is the program's name in brackets and may hold anything: fields are counted from its last bracket.
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  const [state, ticks] = [fields[0], fields[19]];
  if (state === undefined || ticks === undefined) return null;
  const boot = read('/proc/sys/kernel/random/boot_id')?.trim() ?? '';
  // Z and X: ended, but its parent has not looked yet.
  return { runs: state !== 'Z' && state !== 'X', started: `${boot}/${ticks}` };
};

const listedStart = (pid: number): string | null => {
  try {
    const env = { ...process.env, LC_ALL: 'C', TZ: 'UTC' };
    const out = execFileSync('ps', ['-o', 'lstart=', '-p', String(pid)], {
      env,
      encoding: 'utf8',
      timeout: 3000,
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    return out.trim() === '' ? null : out.trim();
  } catch {
    return null;
  }
};

/**
 * Whether a process of this machine runs, and since when.
 * @param pid a process id of this machine
 */
export const processState = (pid: number): ProcessState => {
  try {
    process.kill(pid, 0);
  } catch (error) {
    // EPERM: it runs, for another account.
    if (errorCode(error) !== 'EPERM') return { runs: false, started: null };
  }
  if (platform() === 'linux') return linuxStart(pid) ?? { runs: true, started: null };
  return { runs: true, started: platform() === 'win32' ? null : listedStart(pid) };
};

/** Who we are, as another Curvewright may read it in a lock. */
export type Self = Readonly<{
  host: string;
  /** The set of processes this one can see (a container has its own): outside it, a process id says nothing. */
  room: string | null;
  pid: number;
  started: string | null;
  /** For people: which window, for example `pts/2`. */
  terminal: string | null;
}>;

const link = (path: string): string | null => {
  try {
    return fs.readlinkSync(path);
  } catch {
    return null;
  }
};

const terminalName = (): string | null => {
  const name = /^\/dev\/(.+)$/.exec(link('/proc/self/fd/0') ?? '')?.[1];
  return name === undefined || name === 'null' ? null : name;
};

/** A laptop is called differently on every network, but for the first part of its name. */
const hostName = (): string => (hostname().split('.')[0] ?? '').toLowerCase();

let own: Self | null = null;

/** This process. Asked of the system once. */
export const self = (): Self => {
  own ??= {
    host: hostName(),
    room: link('/proc/self/ns/pid'),
    pid: process.pid,
    started: processState(process.pid).started,
    terminal: terminalName(),
  };
  return own;
};
