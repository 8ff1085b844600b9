import type { Build, Conflict } from '../build/fold.ts';
import type { Finding, Offer } from '../stages/sheet.ts';

/** A conflict's subject in words: "the width", "a reading of weather", "station 7". */
const subject = (c: Conflict): string => {
  const [kind, ...rest] = c.about.split(' ');
  const what = rest.join(' ');
  if (kind === 'design') return `the ${what}`;
  if (kind === 'station') return `station ${rest.at(-1) ?? ''}`;
  const [step = '', ask = ''] = what.split('#');
  return `${ask.replaceAll('-', ' ')} (${step.split('/')[1]?.replaceAll('-', ' ') ?? step})`;
};

const offers = (c: Conflict): readonly Offer[] => [
  { remedy: 'keep-later', minutes: 0, plan: { replaces: [c.other] } },
  { remedy: 'keep-earlier', minutes: 0, plan: { replaces: [c.kept] } },
  { remedy: 'leave-both', minutes: 0, plan: {} },
];

/**
 * What the journal itself has to say: two entries for one thing that did not know of each other (two copies were joined), and
 * entries whose subject was taken back.
 */
export const journalFindings = (b: Build): readonly Finding[] => {
  const twice = b.conflicts.map(
    (c): Finding => ({
      key: `read-twice@${c.about.replaceAll(' ', '-')}`,
      stage: 'plan',
      severity: 'watch',
      words: 'read-twice',
      fills: { what: subject(c) },
      offers: offers(c),
    }),
  );
  if (b.idle.length === 0) return twice;
  return [
    ...twice,
    {
      key: 'idle-entries',
      stage: 'plan',
      severity: 'watch',
      words: 'idle-entries',
      fills: { count: b.idle.length },
      worst_mm: b.idle.length,
      offers: [
        { remedy: 'put-subject-back', minutes: 1, plan: {} },
        { remedy: 'strike-idle', minutes: 0, plan: { replaces: b.idle.map(e => e.id) } },
        { remedy: 'leave-idle', minutes: 0, plan: {} },
      ],
    },
  ];
};
