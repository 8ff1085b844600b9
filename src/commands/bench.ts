import process from 'node:process';
import { canPaint, colourFor } from '../screen/terminal/can-paint.ts';
import type { CommandModule } from './command.ts';
import { EXIT } from './exit-codes.ts';
import { keeperOf } from './find-build.ts';
import { nextStage } from './sheet.ts';
import { sheetText } from './sheet-text.ts';

/** Opens the bench; where no page can be painted, prints the current stage's page. */
export const run: CommandModule['run'] = async (words, options, world) => {
  const around = {
    env: process.env,
    stdinIsTerminal: process.stdin.isTTY === true,
    stdoutIsTerminal: process.stdout.isTTY === true,
  };
  const name = typeof options.build === 'string' ? options.build : words[0];
  if (canPaint(around).paint) {
    const { runBench } = await import('../screen/run-bench.tsx');
    return runBench({
      folders: world.folders,
      content: world.content(),
      colour: colourFor(around),
      ascii: world.ascii,
      build: name,
    });
  }
  const keeper = keeperOf(name, world);
  if (!keeper.ok) {
    if (name === undefined) {
      world.out(
        'No build yet. curvewright start NAME begins one; in a terminal, curvewright opens the bench.\n',
      );
      return EXIT.done;
    }
    world.err(`curvewright: ${name}: ${keeper.fault.message}\n`);
    return EXIT.noInput;
  }
  try {
    world.out(await sheetText(keeper.value, nextStage(keeper.value.view()), world));
    return EXIT.done;
  } finally {
    keeper.value.open.release();
  }
};
