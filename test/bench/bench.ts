import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { buildSync } from 'esbuild';
import { kernels } from './kernels.ts';
import { keysOfTheDemo } from './key-count.ts';
import { median, p95, type Run, runOnce, startAndLeave } from './measure.ts';

/** What the limits are shown by: milliseconds on this machine, and ratios to programs built the same way in the same run. */
const ROOT = resolve('.');
const CACHE = join(ROOT, 'node_modules', '.cache', 'bench');
const STARTS = 9;
const KEYS = 60;

const bundle = (name: string): string => {
  const outfile = join(CACHE, `${name}.mjs`);
  buildSync({
    entryPoints: [join(ROOT, 'test', 'bench', `${name}.tsx`)],
    outfile,
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    minify: true,
    jsx: 'automatic',
    alias: { 'react-devtools-core': join(ROOT, 'src/screen/terminal/no-devtools.ts') },
    define: { 'process.env.NODE_ENV': '"production"' },
    banner: { js: "import{createRequire}from'node:module';const require=createRequire(import.meta.url);" },
  });
  return outfile;
};

const folder = mkdtempSync(join(tmpdir(), 'curvewright-bench-'));

const many = async (args: readonly string[], first: RegExp, keys: readonly string[]): Promise<Run[]> => {
  const runs: Run[] = [];
  for (let i = 0; i < STARTS; i++) runs.push(await runOnce(args, first, i === 0 ? keys : [], folder));
  return runs;
};

const row = (name: string, ...cells: readonly (string | number)[]): void => {
  process.stdout.write(
    `${name.padEnd(34)}${cells.map(c => String(typeof c === 'number' ? Math.round(c * 100) / 100 : c).padStart(13)).join('')}\n`,
  );
};

const timed = (args: readonly string[]): number =>
  median(
    Array.from({ length: 7 }, () => {
      const from = performance.now();
      spawnSync(process.execPath, [...args], { stdio: 'ignore' });
      return performance.now() - from;
    }),
  );

mkdirSync(CACHE, { recursive: true });
execFileSync('npm', ['run', '-s', 'build'], { stdio: 'inherit' });
const main = join(ROOT, 'dist', 'main.js');
process.stdout.write(
  `Machine: ${cpus().length} x ${cpus()[0]?.model ?? 'unknown'}, Node ${process.version}\n\n`,
);

spawnSync(process.execPath, [main, '--sessions', folder, 'start', 'Timed', '--in', '-'], {
  input: '{"use":"bike"}',
});
const hello = await many(
  [bundle('hello')],
  /hello/,
  Array.from({ length: KEYS }, () => 'x'),
);
const twenty = await many(
  [bundle('twenty-rows')],
  /row 19/,
  Array.from({ length: KEYS }, () => 'x'),
);
const move = Array.from({ length: KEYS }, (_, i) => (Math.floor(i / 10) % 2 === 0 ? 'n' : 'p'));
// The first start of a new version takes longer: it keeps its compiled form for the next, as anyone's does.
await startAndLeave([main, '--sessions', folder, '--build', 'timed'], /PLAN/, folder);
const bench = await many([main, '--sessions', folder, '--build', 'timed'], /PLAN/, move);

const starts = (runs: readonly Run[]): number => median(runs.map(r => r.start_ms));
const first = (runs: readonly Run[]): Run => runs[0] as Run;
process.stdout.write(
  'hello and 20 rows: Ink as it comes, bundled the same way. The bench measures texts its own way, keeps its compiled\nform from start to start, and leaves its worker when that has nothing to do.\n\n',
);
row('', 'hello', '20 rows', 'bench', 'ratio', 'aim');
row(
  'start to first frame, ms',
  starts(hello),
  starts(twenty),
  starts(bench),
  starts(bench) / starts(hello),
  '<= 1.25',
);
row(
  'key to frame, median ms',
  median(first(hello).keys_ms),
  median(first(twenty).keys_ms),
  median(first(bench).keys_ms),
  median(first(bench).keys_ms) / median(first(twenty).keys_ms),
  '',
);
row(
  'key to frame, p95 ms',
  p95(first(hello).keys_ms),
  p95(first(twenty).keys_ms),
  p95(first(bench).keys_ms),
  p95(first(bench).keys_ms) / p95(first(twenty).keys_ms),
  '<= 1.5',
);
row(
  'bytes a key, median',
  median(first(hello).bytes),
  median(first(twenty).bytes),
  median(first(bench).bytes),
  '',
  '',
);
const mb = (runs: readonly Run[]): number => first(runs).memory_MB ?? 0;
row('memory after the keys, MB', mb(hello), mb(twenty), mb(bench), mb(bench) / mb(hello), '<= 1.4');

const node = timed(['-e', '0']);
const reckon = timed([main, 'reckon', 'arc', '--height_mm', '600', '--exit_deg', '30', '--json']);
process.stdout.write('\n');
row('', 'bare node', 'reckon', 'ratio');
row('whole command, ms', node, reckon, reckon / node);

process.stdout.write('\n');
await kernels(row);
process.stdout.write('\n');
await keysOfTheDemo(row);
rmSync(folder, { recursive: true, force: true });
