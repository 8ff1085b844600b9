import { expect, test } from 'vitest';
import type { Keeper } from '../../src/coach/keeper.ts';
import { asksOf } from '../../src/coach/tasks.ts';
import { startThinker } from '../../src/coach/thinker.ts';
import { openFindings, viewOf } from '../../src/coach/view.ts';
import type { Answers } from '../../src/stages/situation.ts';
import { set } from '../stages/doings.ts';
import { entriesOf, NOW } from '../stages/situation-for.ts';

/** As much of an open build as what is asked of it needs. */
const keeperOf = (...doings: Parameters<typeof entriesOf>[0]): Keeper => {
  const entries = entriesOf(doings);
  let view = viewOf(entries, NOW);
  return {
    view: () => view,
    know: (answers: Answers) => {
      view = viewOf(entries, NOW, answers);
    },
  } as Keeper;
};

test('what an answer brings up is asked in its turn, without a key: the frame is used too far, so what mends it', async () => {
  const keeper = keeperOf(
    { kind: 'build-begun', name: 'Quarry Lane kicker', system: 'metric' },
    set('spacing', 900),
  );
  const done = new Promise<void>(resolve => {
    const thinker = startThinker(() => {
      if (asksOf(keeper.view()).length === 0) resolve();
    });
    thinker.think(keeper);
  });
  await done;
  const over = openFindings(keeper.view()).find(f => f.key === 'ride-over-used');
  expect(over?.pending).toBeUndefined();
  expect(over?.offers.map(o => o.remedy)).toContain('strength-closer');
});
