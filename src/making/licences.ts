import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * The build step that gathers the licence texts of every package whose code went into the bundle, from esbuild's own list of
 * what it took. Arguments: that list, and the file to write.
 */
const [metafile, target] = process.argv.slice(2);

/** `node_modules/a/node_modules/b/x.js` → `node_modules/a/node_modules/b`; scoped names keep both parts. */
const packageOf = (input: string): string | null => {
  const at = input.lastIndexOf('node_modules/');
  if (at < 0) return null;
  const rest = input.slice(at + 'node_modules/'.length).split('/');
  const name = rest[0]?.startsWith('@') ? `${rest[0]}/${rest[1]}` : rest[0];
  return `${input.slice(0, at)}node_modules/${name}`;
};

if (metafile !== undefined && target !== undefined) {
  const { inputs } = JSON.parse(readFileSync(metafile, 'utf8')) as { inputs: Record<string, unknown> };
  const folders = [...new Set(Object.keys(inputs).map(packageOf))].filter(f => f !== null).sort();
  const texts = folders.map(folder => {
    const about = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
      name: string;
      version: string;
      license?: string;
    };
    const file = readdirSync(folder).find(f => /^(licen[cs]e|copying)/i.test(f));
    const text =
      file !== undefined && existsSync(join(folder, file))
        ? readFileSync(join(folder, file), 'utf8').trim()
        : 'No licence file in the package.';
    return `${about.name} ${about.version} (${about.license ?? 'see text'})\n\n${text}\n`;
  });
  writeFileSync(
    target,
    `Curvewright carries code of these packages.\n\n${texts.join(`\n${'-'.repeat(72)}\n\n`)}`,
  );
}
