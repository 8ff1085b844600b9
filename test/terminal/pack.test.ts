import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { newFolder, ROOT } from './program.ts';

test('the packed program installs in an empty folder without a network, and works with its demo builds', () => {
  const folder = newFolder();
  const packed = execFileSync('npm', ['pack', '--ignore-scripts', '--silent', '--pack-destination', folder], {
    cwd: ROOT,
    encoding: 'utf8',
  }).trim();
  const home = join(folder, 'home');
  mkdirSync(home);
  writeFileSync(join(home, 'package.json'), '{"name":"empty","private":true}');
  execFileSync('npm', ['install', '--offline', '--no-audit', '--no-fund', '--silent', join(folder, packed)], {
    cwd: home,
  });
  const bin = join(home, 'node_modules', '.bin', 'curvewright');
  const env = {
    ...process.env,
    XDG_DATA_HOME: join(folder, 'data'),
    XDG_CONFIG_HOME: join(folder, 'config'),
  };
  const run = (...args: string[]): string => execFileSync(bin, args, { cwd: home, env, encoding: 'utf8' });
  expect(run('--version')).toMatch(/^curvewright \d/);
  const list = JSON.parse(run('builds', '--json'));
  expect(list.demos.map((d: { name: string }) => d.name)).toContain('orchard-bank-kicker');
  run('start', 'Packed', '--units', 'us');
  expect(run('sheet', 'plan', '--build', 'packed')).toContain('Packed');
  expect(
    JSON.parse(run('reckon', 'arc', '--height_mm', '600', '--exit_deg', '30', '--json')).radius_mm,
  ).toBeCloseTo(4478.46, 1);
  const inside = join(home, 'node_modules', 'curvewright');
  expect(existsSync(join(inside, 'dist', 'worker.js'))).toBe(true);
  expect(readFileSync(join(inside, 'dist', 'LICENSES.txt'), 'utf8')).toMatch(/^ink \d/m);
});
