import { spawn } from 'node:child_process';
import { once } from 'node:events';
import fs from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { sumOf } from '../../src/build/crc32.ts';
import { type Holder, type Lock, type Locked, type LockOptions, takeLock } from '../../src/machine/lock.ts';
import { processState, self } from '../../src/machine/process-probe.ts';
import { bundled, start } from './program.ts';
import { tempFolder } from './temp-folder.ts';

const temp = tempFolder();
let folder: string;
let path: string;
beforeEach(() => {
  folder = temp.make();
  path = join(folder, 'kicker.jsonl.lock');
});
afterEach(temp.remove);

const now = new Date();
const long_ago = new Date(now.getTime() - 3_600_000);
const TOKEN = '0b6f0f3e-51ce-4a0a-9d5c-0d6c1a5f1f00';
const content = (): Holder => JSON.parse(fs.readFileSync(path, 'utf8')) as Holder;
const put = (holder: Partial<Holder>): void =>
  fs.writeFileSync(path, JSON.stringify({ ...self(), token: TOKEN, since: now.toISOString(), ...holder }));
const taken = (options: Partial<LockOptions> = {}): Locked => {
  const done = takeLock(path, { now, ...options });
  if (!done.ok) throw new Error(JSON.stringify(done.fault));
  return done.value;
};
const left = (): string[] => fs.readdirSync(folder).filter(name => name.includes('.lock'));

/** The number of a process that has ended for certain. */
const endedPid = async (): Promise<number> => {
  const child = spawn(process.execPath, ['-e', '']);
  await once(child, 'close');
  return child.pid!;
};

describe('a free build', () => {
  test('is taken, with who, where and since when', () => {
    const { lock, tookOver } = taken();
    expect(tookOver).toBeNull();
    expect(content()).toMatchObject({
      pid: process.pid,
      host: self().host,
      since: now.toISOString(),
      token: lock.holder.token,
    });
    expect(lock.holds()).toBe(true);
  });

  test('is free again after release, which may be called twice', () => {
    const { lock } = taken();
    lock.release();
    lock.release();
    expect(left()).toEqual([]);
    expect(lock.holds()).toBe(false);
    expect(taken().tookOver).toBeNull();
  });

  test('in a folder that is not there cannot be locked, and says why', () => {
    expect(takeLock(join(folder, 'none', 'x.lock'), { now })).toMatchObject({
      ok: false,
      fault: { code: 'cannot-lock', because: { code: 'missing' } },
    });
  });
});

describe('a held build', () => {
  test('by a program that runs here is refused, whoever insists', () => {
    taken();
    for (const takeOver of [false, true]) {
      expect(takeLock(path, { now, takeOver })).toMatchObject({
        ok: false,
        fault: { code: 'held', verdict: 'alive', holder: { pid: process.pid }, mayTakeOver: false },
      });
    }
  });

  test('by a program that has ended is taken over without a word', async () => {
    put({ pid: await endedPid() });
    const { lock, tookOver } = taken();
    expect(tookOver).toMatchObject({ because: 'dead', from: { token: TOKEN } });
    expect(content().token).toBe(lock.holder.token);
    expect(left()).toEqual(['kicker.jsonl.lock']);
  });

  test.skipIf(self().started === null)('by a number that another program has by now is taken over', () => {
    put({ pid: process.pid, started: 'another-start/1' });
    expect(taken().tookOver).toMatchObject({ because: 'dead' });
  });

  test('where the system does not say since when, is taken over only when the person says so', () => {
    put({ pid: process.pid, started: null });
    expect(takeLock(path, { now })).toMatchObject({
      ok: false,
      fault: { verdict: 'unsure', mayTakeOver: true },
    });
    expect(taken({ takeOver: true }).tookOver).toMatchObject({ because: 'unsure' });
  });

  test.each([
    ['another machine', { host: 'garage-laptop' }],
    ['a container of this one', { room: 'pid:[12345]' }],
  ])('by %s is taken over only when the person says so', (_, other) => {
    put({ ...other, pid: 1 });
    expect(takeLock(path, { now })).toMatchObject({
      ok: false,
      fault: { verdict: 'elsewhere', mayTakeOver: true },
    });
    expect(content().token).toBe(TOKEN);
    expect(taken({ takeOver: true }).tookOver).toMatchObject({ because: 'elsewhere' });
  });

  test('that was taken over from elsewhere notices it, and its release leaves the other one alone', () => {
    const there = taken({ self: { ...self(), host: 'garage-laptop' } }).lock;
    const here = taken({ takeOver: true }).lock;
    expect(there.holds()).toBe(false);
    there.release();
    expect(here.holds()).toBe(true);
  });

  test.runIf(process.platform === 'linux')(
    'by a killed program that its parent has not looked at yet counts as ended',
    async () => {
      // A parent that never asks after its child, so that the ended child stays: a shell would ask, `tail` in its place does not.
      const note = join(folder, 'pid');
      const parent = spawn('bash', ['-c', 'sleep 600 & echo $! > "$0"; exec tail -n 1 -f "$0"', note]);
      try {
        const [line] = (await once(parent.stdout, 'data')) as [Buffer];
        const pid = Number(line.toString().trim());
        process.kill(pid, 'SIGKILL');
        while (processState(pid).runs) await new Promise(resolve => setImmediate(resolve));
        expect(fs.readFileSync(`/proc/${pid}/stat`, 'utf8')).toContain(') Z ');
        put({ pid });
        expect(taken().tookOver).toMatchObject({ because: 'dead' });
      } finally {
        parent.kill('SIGKILL');
        await once(parent, 'close');
      }
    },
  );

  test('names are made safe to show', () => {
    put({ host: 'garage\x1b[2J', terminal: '\x1b]0;x\x07pts/2', pid: 4127 });
    expect(takeLock(path, { now })).toMatchObject({
      ok: false,
      fault: { holder: { host: 'garage', terminal: 'pts/2' } },
    });
  });
});

describe('a lock that cannot be read', () => {
  const rubbish: readonly (readonly [string, string])[] = [
    ['empty', ''],
    ['torn', '{"token":"0b6f0f3e-51ce-4a'],
    ['no object', 'null'],
    ['of noughts', '\0'.repeat(300)],
    ['without a process', JSON.stringify({ token: TOKEN, host: 'h', since: 's' })],
    ['with a process no system has', JSON.stringify({ token: TOKEN, host: 'h', since: 's', pid: -1 })],
    [
      'with a token that leads elsewhere',
      JSON.stringify({ token: '../../x', host: 'h', since: 's', pid: 1 }),
    ],
    ['huge', 'x'.repeat(1_000_000)],
  ];

  test.each(rubbish)('%s and old is taken over, and said to be unreadable', (_, text) => {
    fs.writeFileSync(path, text);
    fs.utimesSync(path, long_ago, long_ago);
    const { lock, tookOver } = taken();
    expect(tookOver).toEqual({ from: null, because: 'dead' });
    expect(lock.holds()).toBe(true);
    expect(left()).toEqual(['kicker.jsonl.lock']);
  });

  test.each(rubbish)('%s and just made is left to its maker, unless the person says so', (_, text) => {
    fs.writeFileSync(path, text);
    fs.utimesSync(path, now, now);
    expect(takeLock(path, { now })).toMatchObject({
      ok: false,
      fault: { holder: null, verdict: 'unclear', mayTakeOver: true },
    });
    expect(taken({ takeOver: true }).lock.holds()).toBe(true);
  });
});

describe('two at once', () => {
  const OTHER_TOKEN = '1c7a1a4f-62df-4b1b-8e6d-1e7d2b6a2a11';
  let guard: string;
  beforeEach(() => {
    guard = `${path}.${sumOf(TOKEN)}`;
  });

  test('who judged a lock dead, but comes after another took it over, does not take it from that one', async () => {
    put({ pid: await endedPid() });
    let first: Lock | null = null;
    const late = takeLock(path, {
      now,
      // Between looking at the dead lock and acting on it, somebody else takes it over.
      probe: holder => {
        if (holder.token !== TOKEN) return 'alive';
        first ??= taken().lock;
        return 'dead';
      },
    });
    expect(late).toMatchObject({ ok: false, fault: { code: 'held', verdict: 'alive' } });
    expect(first!.holds()).toBe(true);
    expect(left()).toEqual(['kicker.jsonl.lock']);
  });

  test('who comes while another is just taking it over is told that it is held, and changes nothing', async () => {
    put({ pid: await endedPid() });
    // The guard of this dead lock, in the hands of a program that runs.
    fs.writeFileSync(guard, JSON.stringify({ ...self(), token: OTHER_TOKEN, since: now.toISOString() }));
    expect(takeLock(path, { now })).toMatchObject({
      ok: false,
      fault: { code: 'held', holder: { token: TOKEN } },
    });
    expect(content().token).toBe(TOKEN);
    expect(fs.existsSync(guard)).toBe(true);
  });

  test('a takeover that crashed half way does not shut the build for ever', async () => {
    const pid = await endedPid();
    put({ pid });
    fs.writeFileSync(guard, JSON.stringify({ ...self(), pid, token: OTHER_TOKEN, since: now.toISOString() }));
    expect(taken().lock.holds()).toBe(true);
    expect(left()).toEqual(['kicker.jsonl.lock']);
  });

  test('of many programs after one dead lock, one wins', async () => {
    const file = bundled('take-lock', folder);
    for (let round = 0; round < 4; round++) {
      put({ pid: await endedPid() });
      const programs = Array.from({ length: 5 }, () => start(file, path));
      await Promise.all(programs.map(p => p.lines(said => said.length === 1)));
      for (const p of programs) p.say('g');
      await Promise.all(programs.map(p => p.lines(said => said.length === 2)));
      for (const p of programs) p.say('e');
      const said = await Promise.all(programs.map(p => p.ended));
      expect(said.map(lines => lines[1]).filter(word => word === 'won')).toHaveLength(1);
      expect(said.map(lines => lines[2]).sort()).toEqual(['kept', 'none', 'none', 'none', 'none']);
      expect(left()).toEqual([]);
    }
  }, 60_000);
});

describe('a process', () => {
  test('that runs is seen to run, with the same start each time', () => {
    const state = processState(process.pid);
    expect(state.runs).toBe(true);
    expect(processState(process.pid)).toEqual(state);
  });

  test('that has ended is seen to have ended', async () => {
    expect(processState(await endedPid())).toEqual({ runs: false, started: null });
  });
});
