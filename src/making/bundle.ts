import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { type BuildOptions, buildSync, build as bundle, type Plugin } from 'esbuild';

/**
 * The build step that makes the program in dist/: `main.js` with the commands in parts that are loaded when needed, the bench
 * as one part `bench.cjs` whose compiled form can be kept, and the worker. Run from the project's root.
 */
const usual = {
  bundle: true,
  platform: 'node',
  target: 'node20',
  minify: true,
  charset: 'ascii',
  legalComments: 'none',
  logLevel: 'warning',
  metafile: true,
  outdir: 'dist',
  // The program asks nothing of any network; libraries that would, find no way to.
  define: { 'process.env.NODE_ENV': '"production"', fetch: 'undefined' },
} satisfies BuildOptions;

const AS_MODULE =
  "import{createRequire as makeRequire}from'node:module';import{dirname as folderOf}from'node:path';import{fileURLToPath as pathOf}from'node:url';const require=makeRequire(import.meta.url);const __filename=pathOf(import.meta.url);const __dirname=folderOf(__filename);";

/** What of Ink's surroundings we put something lighter in the place of. */
const INSTEAD = {
  'react-devtools-core': './src/screen/terminal/no-devtools.ts',
  'string-width': './src/screen/terminal/string-width.ts',
};
const LAYOUT = 'src/screen/terminal/yoga-layout.ts';

/** Ink waits for its developers' tools while it is loaded, which a part that is compiled as one text cannot; ours has none. */
const withoutTools: Plugin = {
  name: 'without-developers-tools',
  setup: build => {
    build.onLoad({ filter: /[\\/]ink[\\/]build[\\/]reconciler\.js$/ }, ({ path }) => {
      const text = readFileSync(path, 'utf8');
      if (text.split('isDev()').length !== 3)
        throw new Error('Ink asks for its tools in another way than it did');
      return { contents: text.replaceAll('isDev()', 'false') };
    });
    // Only the bare name: what is behind it is asked for by `yoga-layout/load`.
    build.onResolve({ filter: /^yoga-layout$/ }, () => ({
      path: resolve(LAYOUT),
    }));
  },
};

const parts = [
  buildSync({
    ...usual,
    entryPoints: ['src/main.ts'],
    format: 'esm',
    splitting: true,
    chunkNames: 'chunk-[hash]',
    banner: { js: AS_MODULE },
  }),
  buildSync({ ...usual, entryPoints: ['src/coach/worker.ts'], format: 'esm', banner: { js: AS_MODULE } }),
  await bundle({
    ...usual,
    entryPoints: { bench: 'src/screen/ready-bench.ts' },
    format: 'cjs',
    outExtension: { '.js': '.cjs' },
    alias: INSTEAD,
    plugins: [withoutTools],
    define: { ...usual.define, 'import.meta.url': 'moduleUrl' },
    banner: { js: "const moduleUrl=require('node:url').pathToFileURL(__filename).href;" },
  }),
];

const inputs = Object.assign({}, ...parts.map(p => p.metafile.inputs));
writeFileSync('dist/meta.json', JSON.stringify({ inputs }));
