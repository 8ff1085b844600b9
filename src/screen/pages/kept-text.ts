import type { Entry } from '../../build/entries.ts';
import type { Intent } from '../../coach/intents.ts';
import type { PageContext } from './context.ts';
import { entryText } from './journal-page.ts';

/** What was taken back: as the journal has it, and whether it says something of steel, which taking back does not change. */
const taken = (c: PageContext, strike: Entry): Readonly<{ deed: string; steel: boolean }> => {
  const target = strike.kind === 'entry-struck' ? strike.target : '';
  const struck = c.view.build.all.find(e => e.id === target);
  if (struck === undefined) return { deed: '', steel: false };
  return {
    deed: entryText(c, struck).deed,
    steel: /^(?:step-ticked|slits-marked|slit-noted|piece-)/.test(struck.kind),
  };
};

/** Row 22 after an act was kept: what it was, and that it can be taken back. */
export const keptText = (c: PageContext, intent: Intent, entry: Entry): string => {
  if (intent.do === 'put-back') return 'Put back.';
  if (intent.do === 'strike') {
    const { deed, steel } = taken(c, entry);
    return `Taken out of the record${deed === '' ? '' : `: ${deed}`}${steel ? '. The steel is as it is' : ''}. j, then y, puts it back.`;
  }
  const { deed, value } = entryText(c, entry);
  return `Last: ${deed}${value === '' ? '' : `, ${value}`}.  z takes it back`;
};
