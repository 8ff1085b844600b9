import { row, wrap } from '../../drawing/cells.ts';
import type { Stage } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import { echoRow, page, ruleRow, stripRow, titleRow } from '../pages/frame.ts';
import type { Place } from './desk.ts';

/** A stop-class caution, acknowledged once a build. */
export const cautionPlace = (stage: Stage, caution: string, then: () => void): Place => {
  const place: Place = {
    stage: () => stage,
    rows: desk => {
      const c = desk.context();
      const title = say(c.voice, { words: `cautions.${caution}.title` });
      const text = say(c.voice, { words: `cautions.${caution}.text` });
      return page(
        c,
        [titleRow(c), stripRow(c.view, stage), ruleRow(c, 'once in this build')],
        [
          row(' ', ['halt', `■ STOP  ${title}`]),
          [],
          ...wrap(text, c.look.columns - 4).map(l => row('  ', l)),
        ],
        [[], echoRow(c), desk.keyRow(place)],
      );
    },
    keys: () => [{ act: 'open', words: 'read and understood' }, { act: 'back' }, { act: 'hurt' }],
    act: (desk, act) => {
      if (act !== 'open' && act !== 'tick') return false;
      if (desk.act({ do: 'caution', caution })) {
        desk.pop();
        then();
      }
      return true;
    },
  };
  return place;
};
