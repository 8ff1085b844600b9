import type { CommandModule, CommandSpec, OptionSpec } from './command.ts';
import { bashScript } from './completion/bash.ts';
import { fishScript } from './completion/fish.ts';
import { type Place, placesOf } from './completion/offers.ts';
import { SHELLS, type Shell } from './completion/shells.ts';
import { zshScript } from './completion/zsh.ts';
import { EXIT } from './exit-codes.ts';
import { TOPICS } from './reckon/topics.ts';

const SCRIPTS: Readonly<Record<Shell, (places: readonly Place[]) => string>> = {
  bash: bashScript,
  zsh: zshScript,
  fish: fishScript,
};

/**
 * The command that prints the completion script of a shell, made from the table that the help is made from (`commands`, and the options
 * `common` to them; it stands in that table itself) and from the topics of the number command.
 */
export const completionOf = (
  commands: readonly CommandSpec[],
  common: Readonly<Record<string, OptionSpec>>,
): CommandModule => ({
  run: async (words, _options, world) => {
    const shell = SHELLS.find(name => name === words[0]);
    if (shell === undefined || words.length > 1) {
      world.err(`curvewright: completion of which shell? One of ${SHELLS.join(', ')}.\n`);
      return EXIT.refused;
    }
    const topics = await Promise.all(Object.values(TOPICS).map(async load => (await load()).topic));
    world.out(SCRIPTS[shell](await placesOf(commands, common, topics)));
    return EXIT.done;
  },
});
