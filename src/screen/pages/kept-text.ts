import type { Entry } from '../../build/entries.ts';
import type { Intent } from '../../coach/intents.ts';
import type { PageContext } from './context.ts';
import { entryText } from './journal-page.ts';

/** Whether what was taken back says something of steel, which taking back does not change. */
const ofSteel = (c: PageContext, strike: Entry): boolean => {
  const target = strike.kind === 'entry-struck' ? strike.target : '';
  const struck = c.view.build.all.find(e => e.id === target);
  return struck !== undefined && /^(?:step-ticked|slits-marked|slit-noted|piece-)/.test(struck.kind);
};

/** Row 22 after an act was kept: what it was, and that it can be taken back. */
export const keptText = (c: PageContext, intent: Intent, entry: Entry): string => {
  if (intent.do === 'put-back') return 'Put back.';
  if (intent.do === 'strike')
    return `Taken out of the record${ofSteel(c, entry) ? '; the steel is as it is' : ''}. j, then y, puts it back.`;
  const { deed, value } = entryText(c, entry);
  return `Last: ${deed}${value === '' ? '' : `, ${value}`}.  z takes it back`;
};
