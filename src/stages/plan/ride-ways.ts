import { LEAST_ANCHORS } from '../../reckon/strength/anchors.ts';
import { GROUNDS } from '../../reckon/strength/ground.ts';
import type { Situation } from '../situation.ts';
import { standingStill } from '../standing-still.ts';
import { gentler, lighter, lowerLip, straightLip, wider } from './curve-ways.ts';
import { deckWays } from './deck-ways.ts';
import { fillGap, longerLanding, softer } from './landing-ways.ts';
import { downFrom, slower, stepsDown, type Way } from './ride-try.ts';

/** As wide as straight jumps want a deck (common practice). */
const WIDE_mm = { metric: 1200, us: 1219.2 } as const;

const length = (v: number) => ({ v, as: 'length' }) as const;

const anchors = (s: Situation): readonly Way[] => {
  const each = standingStill(s)?.anchors?.entry ?? LEAST_ANCHORS / 2;
  const count = Math.max(LEAST_ANCHORS, 2 * each);
  return [
    {
      remedy: 'anchors-plan',
      minutes: 90,
      tries: [
        {
          change: {
            readings: [
              { step: 'plan/ground', ask: 'anchors', value: count },
              { step: 'plan/ground', ask: 'entry-anchors', value: count / 2 },
            ],
          },
          fills: { count, entry: count / 2 },
        },
      ],
    },
  ];
};

/** Ground that is less slippery and holds a stake better, where there is a choice of where it stands. */
const firmer = (s: Situation): readonly Way[] => [
  {
    remedy: 'ground-firmer',
    minutes: 60,
    tries: (['dry lawn', 'gravel', 'concrete'] as const)
      .filter(ground => GROUNDS[ground].friction > GROUNDS[s.ramp.design.ground].friction)
      .map(ground => ({ change: { field: 'ground', value: ground }, fills: { ground } })),
  },
];

/** What may mend each limit: ways to try, none promised. */
export const WAYS: Readonly<Record<string, (s: Situation) => readonly Way[]>> = {
  'load-novice': s => lighter(s, s.ramp.design.first ? 2 : 3),
  'load-novice-band': s => lighter(s, 2),
  'load-hard': s => lighter(s, s.ramp.design.first ? 2 : 3),
  'load-engineer': s => lighter(s, s.ramp.design.first ? 2 : 3),
  'tight-and-fast': s => [...slower(s, downFrom(6)), ...wider(s, 2000), straightLip(s)],
  'speed-cap': s => [...lighter(s, 3), ...wider(s, 1400)],
  'steep-novice': gentler,
  'flat-from-high': softer,
  'fall-stop': softer,
  'fall-hard': softer,
  'window-narrow': s => [longerLanding(s)],
  'gap-first': s => [fillGap(s)],
  'anchors-few': anchors,
  'anchors-entry': anchors,
  'anchors-short': s => [...anchors(s), ...firmer(s)],
  'anchors-none-hold': s => [...firmer(s), ...slower(s, stepsDown(s)), lowerLip(s)],
  'deck-over-used': deckWays,
  'drop-engineer': s => [lowerLip(s)],
  narrow: s => [
    {
      remedy: 'ride-width',
      tries: [
        {
          change: { field: 'width', value: WIDE_mm[s.build.system] },
          fills: { width: length(WIDE_mm[s.build.system]) },
        },
      ],
    },
  ],
};
