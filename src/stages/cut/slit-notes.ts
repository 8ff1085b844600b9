import type { EntryOf } from '../../build/entries.ts';
import type { RailPlan, SlitSpot } from '../../ramp/rail-plan.ts';
import type { Fills, Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';
import { RAIL_LIMIT, railRun } from './rail-run.ts';

type Note = EntryOf<'slit-noted'>;

/** No upright stands within this of a nicked back wall, mm (common practice). */
const CLEAR_OF_NICK = 50;

type About = Readonly<{ plan: RailPlan; slit: SlitSpot; note: Note; limit: number; fills: Fills }>;

const after = (a: About, v: number): NonNullable<Offer['after']> => ({
  v: Math.abs(v),
  as: 'length',
  within: Math.abs(v) <= a.limit,
});

const base = (a: About): Offer['plan'] => ({ rail: a.plan.rail, slit: a.slit.number });

const nicked = (a: About): readonly Offer[] => [
  { remedy: 'nick-bead', fills: a.fills, minutes: 10, plan: base(a) },
  { remedy: 'nick-new-rail', fills: a.fills, minutes: 12 * a.plan.slits.length, plan: base(a) },
  { remedy: 'leave-nick', fills: a.fills, minutes: 0, plan: base(a) },
];

const shallow = (a: About): readonly Offer[] => [
  { remedy: 'shallow-deepen', fills: a.fills, minutes: 4, plan: base(a) },
  { remedy: 'shallow-clamp', fills: a.fills, minutes: 6, plan: base(a) },
  { remedy: 'leave-shallow', fills: a.fills, minutes: 0, plan: base(a) },
];

const moved = (a: About): readonly Offer[] => {
  const at = a.note.at_mm ?? a.slit.at_mm;
  const run = railRun(
    { ...a.plan, slits: a.plan.slits.map(slit => (slit === a.slit ? { ...slit, at_mm: at } : slit)) },
    slit => slit.close_rad,
  );
  return [
    { remedy: 'leave-moved', fills: a.fills, minutes: 0, plan: base(a), after: after(a, run.worst_mm) },
    {
      remedy: 'moved-uprights',
      fills: a.fills,
      minutes: 5,
      plan: { ...base(a), at_mm: at },
      after: after(a, run.worst_mm),
    },
    {
      remedy: 'moved-weld-shut',
      fills: a.fills,
      minutes: 30,
      plan: { ...base(a), at_mm: a.slit.at_mm },
      after: after(a, 1),
    },
  ];
};

const missed = (a: About): readonly Offer[] => {
  const without = railRun(a.plan, slit => (slit === a.slit ? -a.plan.pull.rad : slit.close_rad));
  const others = a.plan.slits.filter(slit => slit !== a.slit && slit.third === a.slit.third);
  const share = others.length === 0 ? 0 : (a.slit.close_rad + a.plan.pull.rad) / others.length;
  const spread = railRun(a.plan, slit =>
    slit === a.slit ? -a.plan.pull.rad : others.includes(slit) ? slit.close_rad + share : slit.close_rad,
  );
  return [
    { remedy: 'missed-saw', fills: a.fills, minutes: 6, plan: base(a), after: after(a, 0.5) },
    ...(others.length === 0
      ? []
      : [
          {
            remedy: 'missed-share',
            fills: { ...a.fills, share: { v: share, as: 'angle' } as const },
            minutes: 5,
            plan: { ...base(a), share_rad: share },
            after: after(a, spread.worst_mm),
          },
        ]),
    { remedy: 'leave-missed', fills: a.fills, minutes: 0, plan: base(a), after: after(a, without.worst_mm) },
  ];
};

const OFFERS = { nicked, shallow, moved, missed } as const;

/** Slits that came out other than planned, as noted at the saw: the last note of each slit counts. */
export const slitNoteFindings = (s: Situation): readonly Finding[] => {
  const last = new Map<string, Note>();
  for (const note of s.build.slitNotes) last.set(`${note.rail}:${note.slit}`, note);
  const limit = RAIL_LIMIT[s.ramp.design.tolerance];
  return [...last.values()].flatMap((note): Finding[] => {
    const plan = s.ramp.plans.get(note.rail);
    const slit = plan?.slits.find(x => x.number === note.slit);
    if (plan === undefined || slit === undefined) return [];
    const fills: Fills = {
      rail: note.rail,
      slit: note.slit,
      at: { v: note.at_mm ?? slit.at_mm, as: 'slit' },
      mark: { v: slit.at_mm, as: 'slit' },
      moved: { v: Math.abs((note.at_mm ?? slit.at_mm) - slit.at_mm), as: 'slit' },
      clear: { v: CLEAR_OF_NICK, as: 'length' },
      close: { v: slit.close_rad, as: 'angle' },
      stop: { v: 2 * s.ramp.design.tube.wall_mm, as: 'length' },
    };
    const about: About = { plan, slit, note, limit, fills };
    return [
      {
        key: `slit-${note.note}@${note.rail}:${note.slit}`,
        stage: 'cut',
        severity: note.note === 'moved' || note.note === 'shallow' ? 'watch' : 'fix',
        words: `slit-${note.note}`,
        fills,
        offers: sortOffers(OFFERS[note.note](about)),
      },
    ];
  });
};
