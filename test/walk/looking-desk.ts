import type { View } from '../../src/coach/view.ts';
import type { System } from '../../src/quantity/quantities.ts';
import { Desk } from '../../src/screen/places/desk.ts';
import { waysBetween } from '../../src/screen/places/ways.ts';
import type { Content } from '../../src/words/schema.ts';

/** A bench at which pages are looked at and nothing is kept: any view can be laid on it. */
export const lookingDesk = (content: Content, system: System): { desk: Desk; lay: (view: View) => void } => {
  let shown: View | null = null;
  const desk: Desk = new Desk({
    content,
    now: () => new Date('2026-11-20T19:00:00Z'),
    steady_ms: () => 0,
    glove: false,
    quit: () => {},
    suspend: () => {},
    redraw: () => {},
    openBuild: () => 'nothing is opened here',
    newBuild: () => 'nothing is begun here',
    ways: waysBetween(() => ({ builds: () => [], demos: () => [], folder: 'sessions', scene: () => null })),
    think: () => {},
    units: () => system,
    setUnits: () => {},
    leftBuild: () => {},
    failed: error => {
      throw error;
    },
  });
  desk.keeper = {
    path: 'no-such-folder/no-build.jsonl',
    open: { barred: () => null, release: () => {} } as never,
    view: () => {
      if (shown === null) throw new Error('no view lies on the desk');
      return shown;
    },
    act: () => ({ is: 'barred', why: 'pages are only looked at' }),
    know: () => desk.view,
    refresh: () => desk.view,
  };
  desk.system = system;
  return {
    desk,
    lay: view => {
      shown = view;
    },
  };
};
