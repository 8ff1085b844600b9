import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Entry } from '../../src/build/entries.ts';
import { understandEntry } from '../../src/build/versions/understand.ts';
import { compute } from '../../src/coach/compute.ts';
import { type Keeper, openKeeper } from '../../src/coach/keeper.ts';
import { newBuildEntries } from '../../src/coach/new-build.ts';
import { asksOf, withAnswer } from '../../src/coach/tasks.ts';
import { viewOf } from '../../src/coach/view.ts';
import { toAscii } from '../../src/drawing/ascii-twin.ts';
import { rowText } from '../../src/drawing/cells.ts';
import { copyDemo, createBuild, type ListedBuild, listBuilds } from '../../src/machine/builds.ts';
import { folders } from '../../src/machine/folders.ts';
import type { System } from '../../src/quantity/quantities.ts';
import { Desk } from '../../src/screen/places/desk.ts';
import { showBuild } from '../../src/screen/places/opening-place.ts';
import { waysBetween } from '../../src/screen/places/ways.ts';
import { splitKeys } from '../../src/screen/terminal/split-keys.ts';
import { sideView } from '../../src/stages/side-view.ts';
import type { Content } from '../../src/words/schema.ts';

export type TestDesk = Readonly<{
  desk: Desk;
  folder: string;
  /** Keys as a terminal sends them: 'j', '\r', ' ', '\x1b', '\x1b[B' … */
  press: (...keys: readonly string[]) => void;
  /** A line of free text, and Enter. */
  type: (text: string) => void;
  text: (columns?: number, rows?: number, ascii?: boolean) => string;
  /** Waits for the heavy answers that the shown pages ask. */
  think: () => Promise<void>;
  quitWith: () => number | null;
}>;

/** A whole bench without a terminal: real files in a temporary folder, a clock of the test's own. */
export const deskFor = (
  content: Content,
  options: { now?: () => Date; folder?: string; demo?: string | null } = {},
): TestDesk => {
  const folder = options.folder ?? mkdtempSync(join(tmpdir(), 'curvewright-desk-'));
  const now = options.now ?? (() => new Date('2026-11-20T19:00:00Z'));
  let units: System = 'metric';
  let quit: number | null = null;
  /** Whoever has heavy questions: the open build, and pages with questions of their own. */
  const asking = new Set<Pick<Keeper, 'view' | 'know'>>();
  const demoFolder = options.demo === undefined ? folders().demo : options.demo;
  const opened = (path: string): Keeper | string => {
    const keeper = openKeeper(path, { now });
    return keeper.ok ? keeper.value : keeper.fault.message;
  };
  const rows = (list: readonly ListedBuild<Entry>[], demo: boolean) =>
    list.map(b => {
      const begun = b.entries.find(e => e.kind === 'build-begun');
      const name = begun?.kind === 'build-begun' ? begun.name : b.name;
      return { name, path: b.path, lastAt: b.lastAt, count: b.count, demo };
    });
  const found = (where: string | null) => {
    const list = where === null ? null : listBuilds<Entry>(where, understandEntry);
    return list?.ok === true ? [...list.value.builds] : [];
  };
  const desk: Desk = new Desk({
    content,
    now,
    steady_ms: () => 0,
    glove: false,
    quit: code => {
      quit = code;
    },
    suspend: () => {},
    redraw: () => {},
    openBuild: (path, demo) => {
      if (!demo) return opened(path);
      const copy = copyDemo(path, folder, understandEntry, now);
      return copy.ok ? opened(copy.value) : copy.fault.message;
    },
    newBuild: (name, system) => {
      const entries = newBuildEntries(name, system, [], now, false);
      if (!entries.ok) return entries.refusal.code;
      const made = createBuild(folder, name, entries.value, now);
      return made.ok ? opened(made.value) : made.fault.message;
    },
    ways: waysBetween(() => ({
      builds: () => rows(found(folder), false),
      demos: () =>
        rows(
          [...found(demoFolder)].sort((a, b) => b.count - a.count),
          true,
        ),
      folder: 'sessions',
      scene: () => sideView(viewOf([], now().getTime()).situation),
    })),
    think: keeper => {
      asking.add(keeper);
    },
    units: () => units,
    setUnits: system => {
      units = system;
    },
    leftBuild: () => {},
    failed: error => {
      throw error;
    },
  });
  return {
    desk,
    folder,
    press: (...keys) => {
      for (const key of keys) desk.keys(splitKeys(key).keys);
    },
    type: text => {
      desk.keys(splitKeys(text).keys);
      desk.keys([{ name: 'enter' }]);
    },
    text: (columns = 80, height = 24, ascii = false) => {
      desk.look = { columns, rows: height, ascii };
      const shown = desk.rows();
      return (ascii ? toAscii(shown, columns) : shown).map(r => rowText(r).trimEnd()).join('\n');
    },
    think: async () => {
      for (let round = 0; round < 8; round++) {
        if (desk.keeper !== null) asking.add(desk.keeper);
        let any = false;
        for (const keeper of asking) {
          let answers = keeper.view().situation.answers;
          for (const ask of asksOf(keeper.view())) {
            any = true;
            answers = withAnswer(answers, ask, await compute(ask));
          }
          keeper.know(answers);
        }
        desk.rows();
        if (!any) return;
      }
    },
    quitWith: () => quit,
  };
};

/** Opens a copy of a demo build on a desk. */
export const openDemo = (t: TestDesk, name: string): void => {
  const demo = folders().demo;
  const keeper = t.desk.around.openBuild(join(demo ?? '', `${name}.jsonl`), true);
  if (typeof keeper === 'string') throw new Error(keeper);
  showBuild(t.desk, keeper);
};
