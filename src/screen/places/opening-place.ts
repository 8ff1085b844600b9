import type { Keeper } from '../../coach/keeper.ts';
import type { Scene } from '../../scene/scene.ts';
import { typedLine } from '../fields/typed-line.ts';
import { type Listed, openingChoices, openingPage } from '../pages/opening-page.ts';
import { backPlace, isLongAway } from './back-place.ts';
import { beginPlace } from './begin-place.ts';
import { goNow } from './common.ts';
import type { Desk, Place } from './desk.ts';

export type OpeningOptions = Readonly<{
  builds: () => readonly Listed[];
  demos: () => readonly Listed[];
  folder: string;
  scene: () => Scene | null;
}>;

/** Shows the build that was just opened: where you stopped, the questions of its beginning, or the next step. */
export const showBuild = (desk: Desk, keeper: Keeper): void => {
  desk.open(keeper);
  if (keeper.open.barred() !== null) {
    desk.root(desk.around.ways.held(keeper));
    return;
  }
  if (!keeper.view().build.agreed) {
    desk.root(beginPlace(desk));
    return;
  }
  goNow(desk);
  if (isLongAway(keeper.view())) desk.push(backPlace(keeper.view()));
};

/** A name for who has none in mind: what is built and in which month, counted on where that is taken. */
export const nameOffered = (now: Date, builds: readonly Pick<Listed, 'name'>[]): string => {
  const name = `${now.toLocaleDateString('en-GB', { month: 'long' })} ramp`;
  const taken = new Set(builds.map(b => b.name.toLowerCase()));
  let count = 1;
  const counted = (): string => (count === 1 ? name : `${name} ${count}`);
  while (taken.has(counted().toLowerCase())) count++;
  return counted();
};

/** The first page: no build is open yet. */
export const openingPlace = (options: OpeningOptions): Place => {
  let lit = 0;
  const context = (desk: Desk) => ({
    look: desk.look,
    system: desk.around.units(),
    builds: options.builds(),
    demos: options.demos(),
    folder: options.folder,
    message: desk.message,
    scene: options.scene(),
  });
  const begin = (desk: Desk): void => {
    const offered = nameOffered(desk.around.now(), options.builds());
    desk.say(`Enter takes "${offered}", or type a name of your own.`);
    desk.ask({
      title: 'A name for the build:',
      line: typedLine(),
      submit: typed => {
        const name = typed.trim() === '' ? offered : typed;
        const made = desk.around.newBuild(name, desk.around.units());
        if (typeof made === 'string') desk.say(made);
        else {
          desk.say('Begun. Every answer is on disk as you give it.');
          showBuild(desk, made);
        }
      },
    });
  };
  const place: Place = {
    rows: desk => openingPage(context(desk), lit, desk.textRow() ?? desk.keyRow(place)),
    keys: () => [
      { act: 'open', words: 'choose' },
      { act: 'next', words: 'move', shown: '↑ ↓' },
      { act: 'drawing', words: 'demo' },
      { act: 'units' },
      { act: 'leave' },
    ],
    act: (desk, act) => {
      const choices = openingChoices(context(desk));
      lit = Math.max(0, Math.min(lit, choices.length - 1));
      switch (act) {
        case 'next':
          lit = Math.min(choices.length - 1, lit + 1);
          return true;
        case 'previous':
          lit = Math.max(0, lit - 1);
          return true;
        case 'drawing': {
          // d: the demo, here where there is nothing to draw yet.
          const demo = choices.findIndex(ch => ch.is === 'open' && ch.build.demo);
          if (demo >= 0) lit = demo;
          else desk.say('d: no demo builds came with this copy');
          return true;
        }
        case 'units': {
          const to = desk.around.units() === 'us' ? 'metric' : 'us';
          desk.around.setUnits(to);
          desk.system = to;
          desk.say(to === 'us' ? 'A new build will be in feet and inches.' : 'A new build will be metric.');
          return true;
        }
        case 'open': {
          const choice = choices[lit];
          if (choice === undefined || choice.is === 'begin') begin(desk);
          else if (choice.is === 'units') return place.act(desk, 'units', '');
          else {
            const keeper = desk.around.openBuild(choice.build.path, choice.build.demo);
            if (typeof keeper === 'string') desk.say(keeper);
            else showBuild(desk, keeper);
          }
          return true;
        }
        case 'back':
          desk.say('q leaves');
          return true;
        default:
          return false;
      }
    },
  };
  return place;
};
