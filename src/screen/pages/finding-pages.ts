import type { Chosen } from '../../build/fold.ts';
import { asksOf } from '../../coach/tasks.ts';
import { type UnderWay, underWay } from '../../coach/under-way.ts';
import { openFindings } from '../../coach/view.ts';
import { cutRow, cutTo, padTo, row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { SIGNS } from '../../drawing/signs.ts';
import type { Quantity } from '../../quantity/quantities.ts';
import { write } from '../../quantity/write.ts';
import type { Fills, Finding, Offer, Stage } from '../../stages/sheet.ts';
import { say, sayLines } from '../../words/say.ts';
import type { PageContext } from './context.ts';
import { echoRow, page, ruleRow, stripRow, titleRow } from './frame.ts';
import { findingLines, findingText, stepText } from './step-words.ts';
import { tallRows, tallValue } from './tall-figures.ts';

/** What was last chosen about a finding, if anything. */
export const chosenFor = (c: PageContext, f: Finding) =>
  c.view.build.chosen.filter(x => x.finding === f.key).at(-1) ?? null;

/** What was chosen, as a deed; its numbers are those frozen with it, else as it is offered now. */
const chosenDeed = (c: PageContext, chosen: Chosen, f?: Finding): string =>
  say(c.voice, {
    words: `remedies.${chosen.remedy}.deed`,
    fills:
      (chosen.plan.fills as Fills | undefined) ??
      f?.offers.find(o => o.remedy === chosen.remedy)?.fills ??
      {},
  });

const offerDeed = (c: PageContext, o: Offer): string =>
  say(c.voice, { words: `remedies.${o.remedy}.deed`, fills: o.fills ?? {} });

/** Cells of a remedy's row that are not its deed: mark, worst after it, minutes. */
const AFTER = 13;
const MINUTES = 7;

/** What a remedy leaves, in or over; one that is over by less than a rule shows is written finer, or it would read as within. */
const afterText = (c: PageContext, { after }: Offer, limit: Finding['limit']): string => {
  if (after === undefined) return '';
  const { system } = c.voice;
  const as = (v: number, quantity: Quantity): string => write(v, quantity, system, { unit: false });
  const alike = limit !== undefined && as(after.v, after.as) === as(limit.v, limit.as);
  const finer = !after.within && alike && after.as === 'length' ? 'slit' : after.as;
  return `${as(after.v, finer)} ${after.within ? 'within' : 'over'}`;
};

/** One remedy, one row: deed, worst after it with in or over, minutes. What it costs later stands under the list, for the lit one. */
export const offerRow = (c: PageContext, o: Offer, lit: boolean, limit?: Finding['limit']): Row => {
  const columns = c.look.columns;
  const after = afterText(c, o, limit);
  const deedWidth = columns - 4 - AFTER - MINUTES;
  return cutRow(
    row(
      ' ',
      [lit ? 'lead' : 'quiet', lit ? '▸ ' : '· '],
      [lit ? 'lead' : 'plain', padTo(cutTo(offerDeed(c, o), deedWidth), deedWidth)],
      [o.after?.within === false ? 'attention' : 'plain', padTo(after, AFTER, 'right')],
      padTo(String(o.minutes), MINUTES, 'right'),
    ),
    columns,
  );
};

/** Rows of a finding in the list: its title, and two of what it says. */
const EACH = 3;

/** Rows of one thing of the list: its sign and title, and two rows of what is said of it. */
const eachRows = (c: PageContext, lit: boolean, sign: Row, title: string, said: string): Row[] => {
  const lines = wrap(said, c.look.columns - 13).slice(0, EACH - 1);
  return [
    [
      ...row(' ', [lit ? 'lead' : 'quiet', lit ? '▸ ' : '  ']),
      ...sign,
      ...row([lit ? 'lead' : 'plain', title]),
    ],
    ...Array.from({ length: EACH - 1 }, (_, k) => row('            ', ['quiet', lines[k] ?? ''])),
  ];
};

/** One thing of the list: a finding, or a remedy that was chosen and is not done. */
type Listed =
  | Readonly<{ is: 'open' | 'decided'; finding: Finding }>
  | Readonly<{ is: 'under way'; work: UnderWay }>;

/** The list as the page has it: open findings, then what was chosen and is not done, then what was decided. */
export const listed = ({ view }: PageContext): readonly Listed[] => {
  const open = openFindings(view);
  return [
    ...open.map(finding => ({ is: 'open', finding }) as const),
    ...underWay(view).map(work => ({ is: 'under way', work }) as const),
    ...view.findings.filter(f => !open.includes(f)).map(finding => ({ is: 'decided', finding }) as const),
  ];
};

const underWayRows = (c: PageContext, { chosen, next, open }: UnderWay, lit: boolean): Row[] =>
  eachRows(
    c,
    lit,
    row([SIGNS.waiting.role, `${SIGNS.waiting.sign} ${padTo('chose', 6)}`]),
    `${chosenDeed(c, chosen)}${typeof chosen.plan.rail === 'string' ? `, rail ${chosen.plan.rail}` : ''}`,
    say(c.voice, {
      words: open === 0 ? 'says.chosen-to-read' : 'says.chosen-not-done',
      fills: { step: stepText(c.view, c.voice, next, 'title') ?? next.key },
    }),
  );

const listedRows = (c: PageContext, thing: Listed, lit: boolean): Row[] => {
  if (thing.is === 'under way') return underWayRows(c, thing.work, lit);
  const { is, finding: f } = thing;
  const sign = SIGNS[f.severity];
  const chosen = chosenFor(c, f);
  return eachRows(
    c,
    lit,
    row(
      is === 'open'
        ? [sign.role, `${sign.sign} ${padTo(sign.word, 6)}`]
        : ['quiet', `✓ ${padTo('chose', 6)}`],
    ),
    findingText(c.voice, f, 'title') ?? f.key,
    chosen === null ? (findingLines(c.voice, f)[0] ?? '') : `Chosen: ${chosenDeed(c, chosen, f)}`,
  );
};

/** All findings: open ones first, then what was decided. */
export const findingsPage = (c: PageContext, stage: Stage, lit: number, keys: Row): Row[] => {
  const list = listed(c);
  const count = (is: Listed['is']): number => list.filter(thing => thing.is === is).length;
  const [open, mending, decided] = [count('open'), count('under way'), count('decided')];
  const head = [
    titleRow(c),
    stripRow(c.view, stage),
    ruleRow(
      c,
      open === 0 ? 'findings: none open' : `findings: ${open} open`,
      [
        ...(mending === 0 ? [] : [`${mending} chosen, not done`]),
        ...(decided === 0 ? [] : [`${decided} decided`]),
      ].join(' · '),
    ),
  ];
  const body: Row[] =
    list.length === 0
      ? [
          [],
          row(
            ' ',
            asksOf(c.view).length === 0
              ? 'Nothing to fix.'
              : 'Nothing found yet. Some is still being worked out: more in a moment.',
          ),
        ]
      : list.flatMap((thing, i) => listedRows(c, thing, i === lit));
  const rows = Math.max(2, c.look.rows - 7);
  const from = Math.max(0, Math.min((lit - 1) * EACH, body.length - rows));
  return page(c, head, body.slice(from, from + rows), [[], echoRow(c), keys]);
};

/** One finding: what was found, how sure, and what can be done, best first. */
export const findingPage = (c: PageContext, f: Finding, lit: number, keys: Row): Row[] => {
  const sign = SIGNS[f.severity];
  const word = f.severity === 'fix' ? 'TO FIX' : f.severity.toUpperCase();
  const limit = f.limit === undefined ? '' : `limit ${write(f.limit.v, f.limit.as, c.voice.system)}`;
  const head = [titleRow(c), stripRow(c.view, f.stage), ruleRow(c, `a finding in ${f.stage}`, limit)];
  const columns = c.look.columns - 3;
  const lines = findingLines(c.voice, f);
  const tall =
    f.tall === undefined
      ? []
      : tallRows(
          [tallValue(c.voice, f.tall.v, f.tall.as, lines[0] ?? '', f.tall.sign === true)],
          columns,
          c.look.ascii,
        );
  const text = (f.tall === undefined ? lines : lines.slice(1)).flatMap(l => wrap(l, columns)).slice(0, 5);
  const label = (name: string, words: string | null, most: number): Row[] =>
    wrap(words ?? '', columns - 11)
      .slice(0, words === null ? 0 : most)
      .map((l, i) => row(' ', ['quiet', padTo(i === 0 ? name : '', 10)], l));
  const chosen = chosenFor(c, f);
  const offers = f.offers;
  const litOffer = offers[lit];
  const fills = litOffer?.fills ?? {};
  const later =
    litOffer === undefined ? '' : say(c.voice, { words: `remedies.${litOffer.remedy}.later`, fills });
  const steps =
    litOffer === undefined ? [] : sayLines(c.voice, { words: `remedies.${litOffer.remedy}.steps`, fills });
  const pending: Row[] =
    f.pending === true
      ? [row('   ', ['quiet', 'Still being worked out: more in a moment. Nothing waits for it.'])]
      : [];
  // What can be done goes first on a short page, then the lit one's costs and steps, then how sure it is.
  const room = c.look.rows - 1 - head.length - 3 - 1 - tall.length - text.length - pending.length - 1;
  const listed = Math.max(3, Math.min(offers.length, room - 4));
  const from = Math.max(0, Math.min(lit - listed + 2, offers.length - listed));
  const told = [
    ...(litOffer === undefined ? [] : [ruleRow(c, 'the lit one', later === '' ? '' : `later: ${later}`)]),
    ...wrap(steps.join(' '), columns).map(l => row(' ', l)),
  ].slice(0, Math.max(0, room - Math.min(listed, offers.length)));
  const left = room - Math.min(listed, offers.length) - told.length;
  const sure = label('How sure', findingText(c.voice, f, 'sure'), 2);
  const not = label('Not this', findingText(c.voice, f, 'not'), 2);
  const doubts = sure.length + not.length <= left ? [...sure, ...not] : sure.length <= left ? sure : [];
  const body: Row[] = [
    row(' ', [sign.role, `${sign.sign} ${word}`], '  ', ['lead', findingText(c.voice, f, 'title') ?? f.key]),
    ...tall,
    ...text.map(l => row('   ', l)),
    ...pending,
    ...doubts,
    ruleRow(c, 'what you can do, best first', 'after · min'),
    ...offers.slice(from, from + listed).map((o, i) => offerRow(c, o, from + i === lit, f.limit)),
    ...told,
  ];
  const said =
    chosen === null ? 'Nothing chosen yet. You can decide later.' : `Chosen: ${chosenDeed(c, chosen, f)}`;
  return page(c, head, body, [[], echoRow(c, said), keys]);
};
