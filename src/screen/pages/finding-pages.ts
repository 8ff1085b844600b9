import { openFindings } from '../../coach/view.ts';
import { cutRow, padTo, row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { SIGNS } from '../../drawing/signs.ts';
import { write } from '../../quantity/write.ts';
import type { Finding, Offer, Stage } from '../../stages/sheet.ts';
import { say, sayLines } from '../../words/say.ts';
import type { PageContext } from './context.ts';
import { echoRow, page, ruleRow, stripRow, titleRow } from './frame.ts';
import { findingLines, findingText } from './step-words.ts';
import { tallRows, tallValue } from './tall-figures.ts';

/** What was last chosen about a finding, if anything. */
export const chosenFor = (c: PageContext, f: Finding) =>
  c.view.build.chosen.filter(x => x.finding === f.key).at(-1) ?? null;

const offerDeed = (c: PageContext, o: Offer): string =>
  say(c.voice, { words: `remedies.${o.remedy}.deed`, fills: o.fills ?? {} });

/** One remedy, one row: deed, worst after it with in or over, minutes, what it costs later. */
export const offerRow = (c: PageContext, o: Offer, lit: boolean): Row => {
  const columns = c.look.columns;
  const after =
    o.after === undefined
      ? padTo('', 13)
      : padTo(
          `${write(o.after.v, o.after.as, c.voice.system, { unit: false })} ${o.after.within ? 'within' : 'over'}`,
          13,
          'right',
        );
  const later = say(c.voice, { words: `remedies.${o.remedy}.later`, fills: o.fills ?? {} });
  const deedWidth = Math.max(30, columns - 2 - 13 - 6 - 24);
  return cutRow(
    row(
      ' ',
      [lit ? 'lead' : 'quiet', lit ? '▸ ' : '· '],
      [lit ? 'lead' : 'plain', padTo(cutText(offerDeed(c, o), deedWidth - 1), deedWidth - 1)],
      [o.after?.within === false ? 'attention' : 'plain', after],
      padTo(String(o.minutes), 6, 'right'),
      ['quiet', `  ${later}`],
    ),
    columns,
  );
};

const cutText = (text: string, columns: number): string =>
  text.length <= columns ? text : `${text.slice(0, columns - 1)}…`;

/** All findings: open ones first, then what was decided. */
export const findingsPage = (c: PageContext, stage: Stage, lit: number, keys: Row): Row[] => {
  const open = openFindings(c.view);
  const list = listedFindings(c);
  const head = [
    titleRow(c),
    stripRow(c.view, stage),
    ruleRow(c, `findings: ${open.length} open`, `${list.length - open.length} decided`),
  ];
  const body: Row[] =
    list.length === 0
      ? [[], row(' ', 'Nothing to fix.')]
      : list.flatMap((f, i): Row[] => {
          const sign = SIGNS[f.severity];
          const chosen = chosenFor(c, f);
          const isOpen = open.includes(f);
          const first = row(
            ' ',
            [i === lit ? 'lead' : 'quiet', i === lit ? '▸ ' : '  '],
            isOpen ? [sign.role, `${sign.sign} ${padTo(sign.word, 6)}`] : ['quiet', `✓ ${padTo('chose', 6)}`],
            [i === lit ? 'lead' : 'plain', findingText(c.voice, f, 'title') ?? f.key],
          );
          const second =
            chosen === null
              ? (findingLines(c.voice, f)[0] ?? '')
              : `Chosen: ${say(c.voice, { words: `remedies.${chosen.remedy}.deed`, fills: f.offers.find(o => o.remedy === chosen.remedy)?.fills ?? {} })}`;
          return [first, row('            ', ['quiet', second])];
        });
  const rows = Math.max(2, c.look.rows - 7);
  const from = Math.max(0, Math.min(lit * 2 - 4, body.length - rows));
  return page(c, head, body.slice(from, from + rows), [[], echoRow(c), keys]);
};

/** Findings in the order of the page: open ones first. */
export const listedFindings = (c: PageContext): readonly Finding[] => {
  const open = openFindings(c.view);
  return [...open, ...c.view.findings.filter(f => !open.includes(f))];
};

/** One finding: what was found, how sure, and what can be done, best first. */
export const findingPage = (c: PageContext, f: Finding, lit: number, keys: Row): Row[] => {
  const sign = SIGNS[f.severity];
  const word = f.severity === 'fix' ? 'TO FIX' : f.severity.toUpperCase();
  const limit = f.limit === undefined ? '' : `limit ${write(f.limit.v, f.limit.as, c.voice.system)}`;
  const head = [
    titleRow(c),
    stripRow(c.view, f.stage),
    ruleRow(c, findingText(c.voice, f, 'title') ?? f.key, limit),
  ];
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
  const sure = findingText(c.voice, f, 'sure');
  const not = findingText(c.voice, f, 'not');
  const label = (name: string, words: string): Row[] =>
    wrap(words, columns - 11)
      .slice(0, 2)
      .map((l, i) => row(' ', ['quiet', padTo(i === 0 ? name : '', 10)], l));
  const chosen = chosenFor(c, f);
  const room = Math.max(3, c.look.rows - 1 - 3 - 3 - 1 - tall.length - text.length - 6);
  const offers = f.offers;
  const from = Math.max(0, Math.min(lit - 2, offers.length - room));
  const litOffer = offers[lit];
  const steps =
    litOffer === undefined
      ? []
      : sayLines(c.voice, { words: `remedies.${litOffer.remedy}.steps`, fills: litOffer.fills ?? {} });
  const body: Row[] = [
    row(' ', [sign.role, `${sign.sign} ${word}`], '  ', ['lead', findingText(c.voice, f, 'title') ?? f.key]),
    ...tall,
    ...text.map(l => row('   ', l)),
    ...(f.pending === true
      ? [row('   ', ['quiet', 'Still being worked out: more in a moment. Nothing waits for it.'])]
      : []),
    ...(sure === null ? [] : label('How sure', sure)),
    ...(not === null ? [] : label('Not this', not)),
    ruleRow(c, 'what you can do, best first', 'after · min · later'),
    ...offers.slice(from, from + room).map((o, i) => offerRow(c, o, from + i === lit)),
    ...(steps.length === 0 ? [] : [ruleRow(c, 'the lit one, step by step')]),
    ...wrap(steps.join(' '), columns).map(l => row(' ', l)),
  ];
  const said =
    chosen === null
      ? 'Nothing chosen yet. You can decide later.'
      : `Chosen: ${say(c.voice, { words: `remedies.${chosen.remedy}.deed`, fills: offers.find(o => o.remedy === chosen.remedy)?.fills ?? {} })}`;
  return page(c, head, body, [[], echoRow(c, said), keys]);
};
