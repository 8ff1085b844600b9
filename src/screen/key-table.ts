/** Everything a key can ask for, whatever the page. A page may add letters of its own (PageKey). */
export type Act =
  | 'tick'
  | 'open'
  | 'skip'
  | 'measure'
  | 'remark'
  | 'take-back'
  | 'hurt'
  | 'why'
  | 'findings'
  | 'drawing'
  | 'journal'
  | 'order'
  | 'large'
  | 'stage'
  | 'now'
  | 'next'
  | 'previous'
  | 'back'
  | 'leave'
  | 'builds'
  | 'units'
  | 'help'
  | 'keep'
  | 'erase'
  | 'flip'
  | 'other-way'
  | 'reopen'
  | 'close'
  | 'interrupt'
  | 'suspend';

/** Where the help page lists a key. */
export type KeyGroup = 'DO' | 'LOOK' | 'GO' | 'LEAVE' | 'IN A FIELD';

/** Where a key has its meaning: on a page, in a number field, in a text field. */
export type KeyPlace = 'page' | 'number' | 'text';

export type KeyRow = Readonly<{
  act: Act;
  /** Names of keys as `keyId` gives them. */
  keys: readonly string[];
  /** How the key is written; `ascii` where it has a sign of its own. */
  shown: string;
  ascii?: string;
  /** How the help page writes the key, where it lists more than the bottom row. */
  onHelp?: Readonly<{ shown: string; ascii: string }>;
  /** Words on the help page; null for keys everybody knows, which are not listed. */
  help: string | null;
  /** The word after the key on the bottom row. */
  word: string;
  /** What is said when the key has nothing to do here. */
  nothing: string;
  group: KeyGroup;
  places: readonly KeyPlace[];
  /** Writes an entry, or opens a field that the next press would write into: guarded against a leaning glove. */
  writes: boolean;
}>;

const NOTHING = 'nothing to do here. h shows the keys';

const page = (
  act: Act,
  keys: readonly string[],
  shown: string,
  group: KeyGroup,
  help: string | null,
  word: string,
  more: Partial<KeyRow> = {},
): KeyRow => ({
  act,
  keys,
  shown,
  group,
  help,
  word,
  nothing: NOTHING,
  places: ['page'],
  writes: false,
  ...more,
});

const field = (
  act: Act,
  keys: readonly string[],
  shown: string,
  help: string | null,
  word: string,
  more: Partial<KeyRow> = {},
): KeyRow => page(act, keys, shown, 'IN A FIELD', help, word, { places: ['number'], ...more });

/** The one table of keys. The help page, the bottom row and the dispatcher are made from it. */
export const KEY_TABLE: readonly KeyRow[] = [
  page('tick', ['space'], 'Space', 'DO', 'tick the lit step', 'tick', {
    writes: true,
    nothing: 'nothing to tick here',
  }),
  page('open', ['enter'], 'Enter', 'DO', 'measure, accept, go on', 'go on', { writes: true }),
  page('skip', ['s'], 's', 'DO', 'skip, say why', 'skip', { writes: true, nothing: 'nothing to skip here' }),
  page('measure', ['m'], 'm', 'DO', 'measure something else here', 'measure', {
    writes: true,
    nothing: 'nothing to measure in this step',
  }),
  page('remark', ['r'], 'r', 'DO', 'remark: a note to yourself', 'remark', { writes: true }),
  page('take-back', ['z'], 'z', 'DO', 'take back the last entry', 'take back', {
    writes: true,
    nothing: 'nothing to take back',
  }),
  page('hurt', ['i'], 'i', 'DO', "I'm hurt: what to do now", 'hurt'),

  page('why', ['w'], 'w', 'LOOK', 'why, in full', 'more', { nothing: 'nothing more is known here' }),
  page('findings', ['f'], 'f', 'LOOK', 'findings', 'findings'),
  page('drawing', ['d'], 'd', 'LOOK', 'drawing, whole screen', 'drawing', {
    nothing: 'nothing is drawn in this step',
  }),
  page('journal', ['j'], 'j', 'LOOK', 'journal', 'journal'),
  page('order', ['o'], 'o', 'LOOK', 'order sheet', 'order sheet'),
  page('large', ['l'], 'l', 'LOOK', 'large figures, whole screen', 'large', {
    nothing: 'no figure in this step',
  }),

  page('stage', ['1', '2', '3', '4', '5', '6', '7', '8'], '1 to 8', 'GO', 'that stage', 'stage'),
  page('now', ['0'], '0', 'GO', 'to the next step, wherever', 'now'),
  page('next', ['n', 'down'], 'n p', 'GO', 'next, previous step', 'move', {
    onHelp: { shown: 'n p ↓ ↑', ascii: 'n p Dn Up' },
    nothing: 'this is the last one',
  }),
  page('previous', ['p', 'up'], 'p', 'GO', null, 'previous', { nothing: 'this is the first one' }),
  page('back', ['esc'], 'Esc', 'GO', 'one page back', 'back', { nothing: 'q leaves' }),

  page('leave', ['q'], 'q', 'LEAVE', 'leave: all is on disk', 'leave'),
  page('builds', ['b'], 'b', 'LEAVE', 'other builds', 'other builds'),
  page('units', ['u'], 'u', 'LEAVE', 'units: mm, or ft and in', 'units', { writes: true }),
  page('help', ['h', '?'], 'h', 'LEAVE', 'this page (or ?)', 'keys'),

  field('keep', ['enter'], 'Enter', 'keep the number', 'keep', { writes: true }),
  field('flip', ['-'], '-', 'the other side: toward or away', 'away', { nothing: 'this number has no side' }),
  field('other-way', ['tab'], 'Tab', 'take the other way offered', 'other way', {
    nothing: 'no other way is offered here',
  }),
  field('reopen', ['up'], '↑', 'back to the last one kept', 'back one', {
    ascii: 'Up',
    nothing: 'nothing was kept before this one',
  }),
  field('erase', ['back'], 'Backspace', null, '', {}),
  field('why', ['w'], 'w', 'why, then back to the field', 'why'),
  field('hurt', ['i'], 'i', "I'm hurt, with nothing typed", 'hurt'),
  field('help', ['h', '?'], 'h', 'these keys, with nothing typed', 'keys'),
  // Guarded: a glove that leans on q must not leave past the word that something is typed.
  field('leave', ['q'], 'q', 'leave', 'leave', { writes: true }),
  field('close', ['esc', 'ctrl-c'], 'Esc', 'close the field', 'close', { places: ['number', 'text'] }),

  page('interrupt', ['ctrl-c'], 'Ctrl-C', 'LEAVE', null, 'leave'),
  page('suspend', ['ctrl-z'], 'Ctrl-Z', 'LEAVE', null, 'suspend', { places: ['page', 'number', 'text'] }),
];
