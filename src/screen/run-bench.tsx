import type { Entry } from '../build/entries.ts';
import { understandEntry } from '../build/versions/understand.ts';
import { type Keeper, openKeeper } from '../coach/keeper.ts';
import { newBuildEntries } from '../coach/new-build.ts';
import { refusalText } from '../coach/refusal-text.ts';
import { shopNumbers } from '../coach/shop-keeper.ts';
import { startThinker } from '../coach/thinker.ts';
import { viewOf } from '../coach/view.ts';
import { copyDemo, createBuild, findBuild, listBuilds, listDemos } from '../machine/builds.ts';
import { clock } from '../machine/clock.ts';
import type { Folders } from '../machine/folders.ts';
import { openSettings } from '../machine/settings.ts';
import type { System } from '../quantity/quantities.ts';
import { sideView } from '../stages/side-view.ts';
import type { Content } from '../words/schema.ts';
import { Bench } from './bench.tsx';
import { farewell } from './farewell.ts';
import type { Listed } from './pages/opening-page.ts';
import { Desk } from './places/desk.ts';
import { type OpeningOptions, showBuild } from './places/opening-place.ts';
import { waysBetween } from './places/ways.ts';
import type { Colour } from './styles.ts';
import { openSession } from './terminal/session.ts';
import { startInk } from './terminal/start-ink.ts';

export type BenchOptions = Readonly<{
  folders: Folders;
  content: Content;
  colour: Colour;
  ascii: boolean;
  /** The build to open at once. */
  build: string | undefined;
}>;

/** A build goes by the name it was given; by its file's where its beginning is damaged. */
const buildName = (b: { name: string; entries: readonly Entry[] }): string => {
  const begun = b.entries.find(e => e.kind === 'build-begun');
  return begun?.kind === 'build-begun' ? begun.name : b.name;
};

const fileName = (path: string): string => path.replace(/^.*[\\/]/, '').replace(/\.jsonl$/, '');

const MINUTE_MS = 60_000;

/** Runs the bench until the person leaves; gives the exit code. */
export const runBench = async (options: BenchOptions): Promise<number> => {
  const { folders, content } = options;
  const settings = openSettings(folders.config, clock());
  /** Written once the page is drawn; the program does not end before it is. */
  const remember = (some: Parameters<typeof settings.set>[0]): void => {
    setImmediate(() => void settings.set(some));
  };
  let count = 0;
  const listeners = new Set<() => void>();
  const redraw = (): void => {
    count++;
    for (const changed of listeners) changed();
  };
  const thinker = startThinker(redraw);
  let lastWords = '';

  const session = openSession({
    whereDataIs: () => `Everything that was entered is on disk in ${folders.builds}.`,
  });

  const opened = (path: string): Keeper | string => {
    const keeper = openKeeper(path);
    if (!keeper.ok) return `${fileName(path)}: ${keeper.fault.message}`;
    remember({ lastBuild: fileName(path) });
    return keeper.value;
  };

  const rows = (list: ReturnType<typeof listDemos<Entry>>, demo: boolean): Listed[] =>
    list.map(b => ({
      name: buildName(b),
      path: b.path,
      lastAt: b.lastAt,
      count: b.count,
      demo,
      ...(b.setAside > 0
        ? { note: `${b.setAside} damaged lines set aside; the rest loads` }
        : b.readOnly === null
          ? {}
          : { note: `read only: ${b.readOnly}` }),
    }));

  const opening = (): OpeningOptions => {
    const builds = listBuilds(folders.builds, understandEntry);
    const listed = builds.ok ? rows(builds.value.builds, false) : [];
    // The one with most in it first.
    const demos = rows(
      [...listDemos(folders.demo, understandEntry)].sort((a, b) => b.count - a.count),
      true,
    );
    return {
      builds: () => listed,
      demos: () => demos,
      folder: folders.builds,
      scene: () => sideView(viewOf([], clock().getTime()).situation),
    };
  };

  const desk: Desk = new Desk({
    content,
    now: clock,
    steady_ms: () => performance.now(),
    glove: process.env.CURVEWRIGHT_GLOVE !== 'off',
    quit: code => session.quit(code),
    suspend: () => session.suspend(),
    redraw,
    openBuild: (path, demo) => {
      if (!demo) return opened(path);
      const copy = copyDemo(path, folders.builds, understandEntry, clock);
      return copy.ok ? opened(copy.value) : `No copy could be made: ${copy.fault.message}.`;
    },
    newBuild: (name: string, system: System) => {
      const entries = newBuildEntries(name, system, [], clock, false, false, shopNumbers(folders.builds));
      if (!entries.ok) return refusalText({ content, system }, null, entries.refusal).says;
      const made = createBuild(folders.builds, name, entries.value, clock);
      return made.ok ? opened(made.value) : `The build cannot be made: ${made.fault.message}.`;
    },
    ways: waysBetween(opening),
    think: keeper => thinker.think(keeper),
    units: () => settings.preferences().units ?? 'metric',
    setUnits: system => {
      remember({ units: system });
    },
    leftBuild: keeper => {
      const view = keeper.view();
      const resume = process.env.npm_lifecycle_event === 'start' ? 'npm start' : 'curvewright';
      lastWords = farewell(view, { content, system: view.build.system }, resume);
    },
    failed: error => {
      throw error;
    },
  });

  const startWith = options.build ?? settings.preferences().lastBuild ?? undefined;
  let notice = settings.notice;
  if (startWith !== undefined) {
    const found = findBuild(folders.builds, startWith);
    const keeper = found.ok ? opened(found.value) : null;
    if (keeper !== null && typeof keeper !== 'string') showBuild(desk, keeper);
    else if (options.build !== undefined)
      notice = typeof keeper === 'string' ? keeper : `There is no build called ${options.build}.`;
  }
  if (notice !== null) desk.say(notice);

  let painted: readonly string[] = [];
  session.enter();
  const app = startInk(
    <Bench
      desk={desk}
      colour={options.colour}
      ascii={options.ascii}
      redraw={{
        subscribe: changed => {
          listeners.add(changed);
          return () => {
            listeners.delete(changed);
          };
        },
        count: () => count,
      }}
      paint={rows => {
        painted = rows;
      }}
    />,
    session,
    () => painted,
  );
  // Coats dry and fires are watched by the clock: what a page says of hours is said anew, once a minute and no more.
  const minute = setInterval(() => {
    const open = desk.keeper;
    if (open === null) return;
    open.know(open.view().situation.answers);
    redraw();
  }, MINUTE_MS).unref();
  const code = await session.until(app);
  clearInterval(minute);
  // A signal ends the bench past the desk: the build is let go here, and its leaving noted.
  desk.leaveBuild();
  thinker.stop();
  session.leave();
  if (lastWords !== '') process.stdout.write(lastWords);
  return code;
};
