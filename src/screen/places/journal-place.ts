import type { Stage } from '../../stages/sheet.ts';
import type { PageKey } from '../keys.ts';
import { journalEntries, journalPage } from '../pages/journal-page.ts';
import { commonAct } from './common.ts';
import type { Place } from './desk.ts';

const PUT_BACK: PageKey = {
  char: 'y',
  act: 'put-back',
  word: 'put back',
  help: 'put a struck entry back',
  writes: true,
};

/** The journal: any entry can be struck, a struck one put back. */
export const journalPlace = (stage: Stage): Place => {
  let lit = 0;
  const place: Place = {
    stage: () => stage,
    own: [PUT_BACK],
    rows: desk => journalPage(desk.context(), stage, lit, desk.keyRow(place)),
    keys: () => [
      { act: 'take-back', words: 'take back the lit one' },
      { act: 'put-back', words: 'put a struck one back' },
      { act: 'next', words: 'move', shown: '↑ ↓' },
      { act: 'back' },
      { act: 'leave' },
    ],
    act: (desk, act, char) => {
      const list = journalEntries(desk.context());
      lit = Math.max(0, Math.min(lit, list.length - 1));
      const entry = list[lit];
      if (act === 'next') lit = Math.min(list.length - 1, lit + 1);
      else if (act === 'previous') lit = Math.max(0, lit - 1);
      else if (act === 'take-back') {
        if (entry !== undefined) desk.act({ do: 'strike', entry: entry.id });
      } else if (act === 'put-back') {
        if (entry !== undefined) desk.act({ do: 'put-back', entry: entry.id });
      } else return commonAct(desk, act, char, { stage, step: null, item: 0 });
      return true;
    },
  };
  return place;
};
