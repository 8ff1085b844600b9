import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { readyCode } from '../machine/ready-code.ts';
import { canPaint, colourFor } from '../screen/terminal/can-paint.ts';
import type { CommandModule } from './command.ts';

type Bench = typeof import('../screen/ready-bench.ts');

/** Opens the bench; where no page can be painted, prints the current stage's page. */
export const run: CommandModule['run'] = async (words, options, world) => {
  const around = {
    env: process.env,
    stdinIsTerminal: process.stdin.isTTY === true,
    stdoutIsTerminal: process.stdout.isTTY === true,
  };
  const name = typeof options.build === 'string' ? options.build : words[0];
  if (canPaint(around).paint) {
    const { part, keep } = readyCode<Bench>(
      fileURLToPath(new URL('./bench.cjs', import.meta.url)),
      world.folders.cache,
    );
    await part.layoutLoaded;
    const code = await part.runBench({
      folders: world.folders,
      content: world.content(),
      colour: colourFor(around),
      ascii: world.ascii,
      build: name,
    });
    keep();
    return code;
  }
  const { printPage } = await import('./print-page.ts');
  return printPage(name, world);
};
