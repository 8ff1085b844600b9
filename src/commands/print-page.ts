import type { World } from './command.ts';
import { EXIT } from './exit-codes.ts';
import { keeperOf } from './find-build.ts';
import { nextStage } from './sheet.ts';
import { sheetText } from './sheet-text.ts';

/** Prints the current stage's page of a build: what the bench does where no page can be painted. */
export const printPage = async (name: string | undefined, world: World): Promise<number> => {
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
