import { bandOf, groundOf, launchOf, saidLanding } from '../flight-band.ts';
import { TURN } from '../order.ts';
import { LANDING_MARKS, SPEED_READS, saidSpeed } from '../riding.ts';
import type { Figure, Gate, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { anchorGate } from './anchors.ts';
import { engineerGate, fastestCovered, proofGate } from './proof.ts';
import { unseenGate, weldGates } from './weld-gates.ts';

/** Free ground behind the landing and beside it, m (found in reports of EN 14974: 5 m behind a jump ramp, 2 m all round). */
const BEHIND_m = 5;
const BESIDE_m = 2;

/** What is done before and at the first rides, in this order. */
const FIRST: readonly string[] = [
  'ground',
  'people',
  'kit',
  'up-and-back',
  'speed',
  'roll-off',
  'look-1',
  'look-5',
];

/** The speed the plan was made for, m/s; unsaid, half of what the proof load covers. */
const wanted = (s: Situation): number => saidSpeed(s) ?? 0.5 * fastestCovered(s);

/** Who rides when, on what ground, and how the unfinished ramp is kept from those who should not. */
export const rideSteps = (s: Situation): readonly StepDraft[] => {
  const us = s.build.system === 'us';
  return [
    {
      key: 'finish/keep-safe',
      stage: 'finish',
      words: 'keep-safe',
      fills: {},
      // From the evening it stands on its feet: anyone who finds it will try it.
      turn: TURN.finish - 10,
      needs: ['assemble/feet'],
      uses: [],
      minutes: [5, 10],
    },
    {
      key: 'finish/speeds',
      stage: 'finish',
      words: 'speeds',
      fills: {
        reads: SPEED_READS,
        mark: { v: us ? 1.8288 : 2, as: 'distance' },
        coast: { v: us ? 3.048 : 3, as: 'distance' },
      },
      turn: TURN.finish + 145,
      needs: ['finish/inspect', 'finish/proof', 'finish/deck', 'finish/anchors'],
      uses: ['fastest', 'lands-now'],
      tall: ['fastest'],
      asks: Array.from({ length: SPEED_READS }, (_, k) => ({
        ask: `speed${k + 1}`,
        as: 'speed',
        expected: [0.5 * wanted(s), Math.max(wanted(s), 0.6 * fastestCovered(s))],
        possible: [0.5, 20],
      })),
      gates: gates(s),
      cautions: ['first-ride'],
      minutes: [20, 40],
    },
    {
      key: 'finish/first-use',
      stage: 'finish',
      words: 'first-use',
      fills: {
        behind: { v: BEHIND_m, as: 'distance', step: 1 },
        beside: { v: BESIDE_m, as: 'distance', step: 1 },
        reads: SPEED_READS,
        rider: { v: s.ramp.design.rider, as: 'mass' },
      },
      turn: TURN.finish + 150,
      needs: [
        'finish/inspect',
        'finish/proof',
        'finish/edges',
        'finish/drains',
        'finish/deck-check',
        'finish/stickers',
        'finish/anchors',
      ],
      uses: ['fastest'],
      tall: ['fastest'],
      items: FIRST.map(
        (what, k): Item => ({
          key: `finish/first-use#${what}`,
          name: String(k + 1),
          note: { words: `says.finish-first-${what}` },
        }),
      ),
      gates: gates(s),
      cautions: ['first-ride'],
      minutes: [60, 120],
    },
    {
      key: 'finish/landings',
      stage: 'finish',
      words: 'landings',
      fills: { marks: LANDING_MARKS },
      turn: TURN.finish + 155,
      needs: ['finish/first-use', 'finish/speeds'],
      uses: ['lands-now', 'launch-told'],
      tall: ['lands-now'],
      asks: Array.from({ length: LANDING_MARKS }, (_, k) => ({
        ask: `mark${k + 1}`,
        as: 'reach',
        expected: marksExpected(s),
        possible: [0, 30],
      })),
      minutes: [30, 60],
    },
  ];
};

/** Dangers of the ride that were accepted in plan and not taken back: each finding's last word. */
const accepted = (s: Situation): number => {
  const last = new Map<string, string>();
  for (const c of s.build.chosen) last.set(c.finding.split(':')[0] ?? '', c.remedy);
  return [...last.values()].filter(remedy => remedy.startsWith('accept-')).length;
};

/** Whoever accepted a danger in plan writes, before the first ride, which it is and who takes it on. */
const acceptedGate = (s: Situation): Gate => ({
  id: 'ride-accepted',
  shut: accepted(s) > 0,
  fills: { count: accepted(s) },
});

const gates = (s: Situation): readonly Gate[] => [
  ...weldGates(s),
  unseenGate(s),
  anchorGate(s),
  proofGate(s),
  engineerGate(s),
  acceptedGate(s),
];

const rideNow = (s: Situation) => {
  const landing = saidLanding(s);
  const ground = landing === null ? null : groundOf(landing);
  const launch = launchOf(s, ground);
  return { launch, band: launch === null || ground === null ? null : bandOf(s, launch, ground) };
};

/** Marks of landings are expected within the band, or within reach where no landing was said. */
const marksExpected = (s: Situation): readonly [number, number] => {
  const { band } = rideNow(s);
  return band === null ? [0.5, 4] : [band.all.near_m, band.all.far_m];
};

/** Where the rider comes down by what was read and marked so far: a band that narrows. */
export const rideFigures = (s: Situation): readonly Figure[] => {
  const { launch, band } = rideNow(s);
  return [
    {
      id: 'lands-now',
      kind: 'size',
      as: 'reach',
      matters: 0.05,
      value:
        band === null
          ? { is: 'unknown', needs: launch === null ? 'plan/ride' : 'plan/landing' }
          : { is: 'band', low: band.all.near_m, likely: band.plain_m, high: band.all.far_m },
    },
    {
      id: 'launch-told',
      kind: 'size',
      as: 'angle',
      matters: 0.01,
      value:
        launch?.told_rad == null
          ? { is: 'unknown', needs: 'finish/landings' }
          : {
              is: 'band',
              low: launch.told_rad.likely - launch.told_rad.spread,
              likely: launch.told_rad.likely,
              high: launch.told_rad.likely + launch.told_rad.spread,
            },
    },
  ];
};
