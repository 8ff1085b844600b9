import { discSpeed, RIM_m_s } from '../../reckon/welding/disc-speed.ts';
import { TURN } from '../order.ts';
import type { Ask, Finding, Gate, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';
import { readAt, valueAt } from './reading.ts';
import { discsAsk } from './thin-discs.ts';

export const DISCS = 'prep/discs';
/** Where a disc is slower than its grinder, nothing is ground or cut with it. */
export const DISC_FITS = 'prep/disc-fits';

/** Idling speed of a hand grinder against what its discs allow, as a share (makers leave a tenth to a third; common practice). */
const IDLES = [0.68, 0.95] as const;

/** Turns a minute that a disc of this size allows, by its rim. */
const allowed = (s: Situation): number => (RIM_m_s * 60_000) / (Math.PI * s.ramp.design.grinder);

const asksOf = (s: Situation): readonly Ask[] => {
  const most = allowed(s);
  const whole = (v: number): number => Math.round(v / 100) * 100;
  const grinder: Ask = {
    ask: 'grinder',
    as: 'count',
    expected: [whole(IDLES[0] * most), whole(IDLES[1] * most)],
    possible: [500, 50_000],
  };
  const disc: Ask = {
    ask: 'disc',
    as: 'count',
    expected: [whole(0.99 * most), whole(1.02 * most)],
    possible: [500, 50_000],
  };
  // The disc is what is changed: it comes first, so that it is the one that is read again.
  return discGates(s).length > 0 ? [disc, grinder, ...discsAsk(s)] : [grinder, disc, ...discsAsk(s)];
};

/** A disc that would run faster than is printed on it flies apart: no reason opens it. */
export const discGates = (s: Situation): readonly Gate[] => {
  const grinder_rpm = valueAt(s, DISCS, 'grinder');
  const marked_rpm = valueAt(s, DISCS, 'disc');
  if (grinder_rpm === undefined || marked_rpm === undefined) return [];
  const found = discSpeed({ disc_mm: s.ramp.design.grinder, grinder_rpm, marked_rpm });
  if (found.ok && found.value.fits) return [];
  return [
    {
      id: found.ok ? 'disc-slow' : 'disc-misread',
      shut: true,
      never: true,
      fills: {
        disc: marked_rpm,
        grinder: grinder_rpm,
        size: { v: s.ramp.design.grinder, as: 'length' },
        rim: { v: found.ok ? found.value.rim_m_s : 0, as: 'speed' },
        allowed: Math.round(allowed(s) / 10) * 10,
      },
      measure: DISCS,
    },
  ];
};

/** Read what is printed on disc and grinder before either touches steel. */
export const discSteps = (s: Situation): readonly StepDraft[] => {
  const gates = discGates(s);
  const read: StepDraft = {
    key: DISCS,
    stage: 'prep',
    words: 'discs',
    fills: { size: { v: s.ramp.design.grinder, as: 'length' } },
    turn: TURN.receive + 35,
    needs: ['plan/dangers'],
    uses: [],
    asks: asksOf(s),
    cautions: ['cut-guard'],
    minutes: [2, 5],
  };
  return gates.length === 0
    ? [read]
    : [
        read,
        {
          key: DISC_FITS,
          stage: 'prep',
          words: 'disc-fits',
          fills: gates[0]?.fills ?? {},
          turn: TURN.receive + 36,
          needs: [],
          uses: [],
          gates,
          minutes: [5, 10],
        },
      ];
};

/** Steps of cutting that a grinder does. */
const ground = (s: Situation): readonly string[] => [
  'cut/test-piece',
  ...s.ramp.rails.flatMap(rail => [
    `cut/clean-rail@${rail}`,
    ...[1, 2, 3].flatMap(third => [`cut/saw-third@${rail}:${third}`, `cut/deburr-third@${rail}:${third}`]),
  ]),
];

/**
 * The same on every page, and what keeps the grinder off the rails: whatever is chosen about it, only another disc or grinder read
 * here ends it, so each choice leaves it as it was.
 */
export const discFindings = (s: Situation): readonly Finding[] => {
  const gate = discGates(s)[0];
  const read = readAt(s, DISCS, 'disc');
  if (gate === undefined || read === undefined) return [];
  const fills = gate.fills ?? {};
  const key = `disc-slow@${read.entry}`;
  const chosen = s.build.chosen.filter(c => c.finding.startsWith(key)).length;
  const plan = { disc: read.value };
  return [
    {
      key: `${key}:${chosen}`,
      stage: 'prep',
      severity: 'stop',
      words: 'disc-slow',
      fills,
      offers: sortOffers([
        { remedy: 'disc-again', fills, minutes: 5, plan },
        { remedy: 'disc-other', fills, minutes: 40, plan },
        { remedy: 'disc-hand-saw', fills, minutes: 120, plan },
      ]),
      blocks: ground(s),
    },
  ];
};
