import { understandEntry } from '../build/versions/understand.ts';
import { type Keeper, openKeeper } from '../coach/keeper.ts';
import { findBuild, listBuilds } from '../machine/builds.ts';
import { type FileFault, fileFault } from '../machine/file-fault.ts';
import { openSettings } from '../machine/settings.ts';
import type { Outcome } from '../quantity/outcome.ts';
import type { World } from './command.ts';

/** The path of the build that was named, else of the one last worked on. */
export const pathOfBuild = (name: string | undefined, world: World): Outcome<string, FileFault> => {
  if (name !== undefined) return findBuild(world.folders.builds, name);
  const last = openSettings(world.folders.config, world.now()).preferences().lastBuild;
  if (last !== null) {
    const found = findBuild(world.folders.builds, last);
    if (found.ok) return found;
  }
  const list = listBuilds(world.folders.builds, understandEntry);
  const newest = list.ok ? list.value.builds[0] : undefined;
  return newest === undefined
    ? {
        ok: false,
        fault: fileFault(
          'missing',
          world.folders.builds,
          'there is no build there yet: curvewright start NAME',
        ),
      }
    : { ok: true, value: newest.path };
};

export const keeperOf = (name: string | undefined, world: World): Outcome<Keeper, FileFault> => {
  const path = pathOfBuild(name, world);
  return path.ok ? openKeeper(path.value, { now: world.now }) : path;
};
