import { plainText } from '../../build/plain-text.ts';
import type { Keeper } from '../../coach/keeper.ts';
import { row, wrap } from '../../drawing/cells.ts';
import { stepListRows } from '../pages/around-rows.ts';
import { echoRow, page, ruleRow, stripRow, titleRow } from '../pages/frame.ts';
import { commonAct, goNow } from './common.ts';
import type { Place } from './desk.ts';

/** The build can be looked at, not written: another program holds it, or a newer one wrote it. */
export const heldPlace = (keeper: Keeper): Place => {
  const place: Place = {
    rows: desk => {
      const c = desk.context();
      const held = keeper.open.heldBy();
      const who =
        held?.code === 'held' && held.holder !== null
          ? `since ${held.holder.since.slice(11, 16)} on ${held.holder.since.slice(0, 10)}, on ${held.holder.host} (process ${held.holder.pid}).`
          : (keeper.open.barred() ?? '');
      const stage = c.view.next?.stage ?? 'finish';
      const steps = c.view.steps.filter(s => s.stage === stage);
      const body = [
        row(' ', [
          'lead',
          `– READ ONLY  ${held?.code === 'held' ? 'Another Curvewright has this build open' : 'This build can only be looked at'}`,
        ]),
        ...wrap(plainText(who), c.look.columns - 3).map(l => row(' ', l)),
        row(' ', 'You can look at every page. Keys that write are off.'),
        [],
        row(
          ' ',
          ['lead', '▸ '],
          'Try again      Enter. If that program has ended, you get the build at once.',
        ),
        row(' ', '  Look around    0, 1 to 8: every page as it stands there.'),
        ...(held?.code === 'held' && held.mayTakeOver
          ? [row(' ', '  Take it over   y, when you know that program is gone (another computer).')]
          : []),
        [],
        ruleRow(c, 'as it stands there'),
        ...stepListRows(c, steps, c.view.next, 8, c.look.columns),
      ];
      return page(c, [titleRow(c), stripRow(c.view, stage), ruleRow(c, 'look, do not touch')], body, [
        echoRow(c, 'Nothing you do here is written.'),
        desk.keyRow(place),
      ]);
    },
    own: [{ char: 'y', act: 'take-over', word: 'take over', help: 'take the build over', writes: true }],
    keys: () => [
      { act: 'open', words: 'try again' },
      { act: 'now', words: 'look around' },
      { act: 'findings' },
      { act: 'builds' },
      { act: 'leave' },
    ],
    act: (desk, act, char) => {
      if (act === 'open' || act === 'take-over') {
        const got = keeper.open.tryAgain(act === 'take-over');
        keeper.refresh();
        if (got) {
          desk.say('The build is yours to write now.');
          goNow(desk);
        } else desk.say('Still held.');
        return true;
      }
      return commonAct(desk, act, char, { stage: 'plan', step: null, item: 0 });
    },
  };
  return place;
};
