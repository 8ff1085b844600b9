import { LEAST_ANCHORS, PULL_TEST } from '../../reckon/strength/anchors.ts';
import { GUARD_N, GUARD_N_mm, STANDING_POINT_N } from '../../reckon/strength/loads.ts';
import { PASSES_A_SUMMER } from '../../reckon/strength/slit-section.ts';
import { STANDING_SAFETY } from '../../reckon/strength/standing.ts';
import { readingOf } from '../riding.ts';
import type { StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { standingStill } from '../standing-still.ts';
import type { Ride } from './ride-facts.ts';
import type { Strength } from './strength-asks.ts';
import { gradeOf } from './strength-frame.ts';

/** Word keys of the steps about the ride. */
export const RIDE_STEPS = [
  'ride',
  'landing',
  'flight',
  'flight-flat',
  'flight-table',
  'ground',
  'stands',
  'stands-hard',
  'loads',
  'holds',
  'holds-rolled',
] as const;

type Words = (typeof RIDE_STEPS)[number];
export type RideSpec = Partial<Omit<StepDraft, 'key' | 'stage' | 'words' | 'turn'>> &
  Readonly<{ name: string; words: Words }>;

const KM_H = 1 / 3.6;
const DEGREE = Math.PI / 180;

const length = (v: number) => ({ v, as: 'length' }) as const;
const distance = (v: number) => ({ v, as: 'distance' }) as const;
const reach = (v: number) => ({ v, as: 'reach' }) as const;

/** What the ride is to be, where it goes, what it loads: asked and shown before steel is bought. */
export const rideSpecs = (s: Situation, ride: Ride, strength: Strength): readonly RideSpec[] => {
  const { design: d, lip } = s.ramp;
  const slit = d.route === 'slit';
  const anchors = Math.max(LEAST_ANCHORS, 2 * (standingStill(s)?.anchors?.entry ?? 0));
  const us = s.build.system === 'us';
  const table = ride.landing?.kind === 'table' && (readingOf(s, 'plan/landing', 'landing-table') ?? 0) > 0;
  const flat = ride.landing === null || ride.landing.kind === 'flat ground';
  return [
    {
      name: 'ride',
      words: 'ride',
      fills: { rider: { v: d.rider, as: 'mass' }, mark: distance(us ? 1.8288 : 2) },
      asks: [
        {
          ask: 'entry-speed',
          as: 'speed',
          expected: [10 * KM_H, 26 * KM_H],
          possible: [3 * KM_H, 60 * KM_H],
        },
      ],
      minutes: [3, 5],
    },
    {
      name: 'landing',
      words: 'landing',
      fills: {
        // The lip as the frame has it; in metres beside what is typed in metres.
        lip: us ? length(lip.y_mm) : reach(lip.y_mm / 1000),
        table: reach(us ? 0.9144 : 1),
        long: reach(us ? 4.8768 : 5),
        slope: { v: 25 * DEGREE, as: 'angle' },
      },
      asks: [
        { ask: 'landing-table', as: 'reach', expected: [0, 2], possible: [0, 20] },
        { ask: 'landing-gap', as: 'reach', expected: [0, 0], possible: [0, 20] },
        // Level with the lip to level ground below it; more than that is asked once more. Builds of before have it in mm.
        readingOf(s, 'plan/landing', 'landing-drop') === null
          ? {
              ask: 'landing-down',
              as: 'reach',
              expected: [0, Math.max(0.2, lip.y_mm / 1000)],
              possible: [-2, 5],
            }
          : {
              ask: 'landing-drop',
              as: 'length',
              expected: [0, Math.max(200, lip.y_mm)],
              possible: [-2000, 5000],
            },
        {
          ask: 'landing-slope',
          as: 'angle',
          expected: [0, 52 * DEGREE],
          possible: [0, 60 * DEGREE],
        },
        // None where it lands on level ground.
        { ask: 'landing-length', as: 'reach', expected: [0, 14], possible: [0, 60] },
      ],
      minutes: [5, 10],
    },
    {
      name: 'flight',
      words: flat ? 'flight-flat' : table ? 'flight-table' : 'flight',
      needs: ['plan/ride', 'plan/landing'],
      uses: [
        'lip-speed',
        'lands',
        'rise',
        'fall',
        'per-km-h',
        'drag-takes',
        'launch-lag',
        'kind-slope',
        'straight-lip',
        'run-in-drop',
        ...(flat || ride.window === null ? [] : ['window-low', 'window-high', 'window-wide']),
      ],
      tall: ['lands', 'fall'],
      fills:
        ride.window === null ? { 'window-low': 'none', 'window-high': 'none', 'window-wide': 'none' } : {},
      minutes: [5, 10],
    },
    {
      name: 'ground',
      words: 'ground',
      fills: { ground: d.ground, least: anchors, entry: anchors / 2 },
      asks: [
        // As many as plan wants and no fewer: fewer are asked once more.
        { ask: 'anchors', as: 'count', expected: [anchors, anchors], possible: [0, 40] },
        {
          ask: 'entry-anchors',
          as: 'count',
          expected: [anchors / 2, anchors / 2],
          possible: [0, 40],
        },
      ],
      minutes: [3, 10],
    },
    {
      name: 'stands',
      // No stake goes into a slab: bolts, or bags that hold by their weight.
      words: d.ground === 'concrete' ? 'stands-hard' : 'stands',
      needs: ['plan/ground'],
      fills: {
        ground: d.ground,
        wanted: { v: STANDING_SAFETY, as: 'ratio' },
        test: { v: PULL_TEST, as: 'ratio' },
      },
      uses: [
        'safe-slide',
        'safe-sideways',
        'safe-tip',
        'safe-tip-side',
        'anchor-count',
        'anchor-entry-holds',
        'anchor-rear-holds',
        'ballast',
        'ballast-entry',
        'use-ground',
        'foot-board',
      ],
      tall: ['anchor-count', 'anchor-entry-holds'],
      minutes: [5, 10],
    },
    {
      name: 'loads',
      words: 'loads',
      fills: {
        rider: { v: d.rider, as: 'mass' },
        guard: { v: 1000 * GUARD_N_mm, as: 'force' },
        push: { v: GUARD_N, as: 'force' },
        point: { v: STANDING_POINT_N, as: 'force' },
      },
      uses: [
        'load-factor',
        'load-at-lip',
        'load-onset',
        'load-counted',
        'load-ride',
        'load-drop',
        'load-wheel',
        'load-people',
        'load-lip',
        'load-along',
        'load-side',
      ],
      tall: ['load-ride', 'load-drop'],
      cautions: ['ride-guidance'],
      minutes: [5, 10],
    },
    {
      name: 'holds',
      words: slit ? 'holds' : 'holds-rolled',
      needs: ['plan/loads'],
      fills: {
        standard: d.standard,
        yield: { v: gradeOf(d.system).yield_MPa, as: 'stress' },
        passes:
          strength.is === 'known' ? Math.min(1e6, Math.floor((strength.held.passes ?? 0) / 1000) * 1000) : 0,
        summer: PASSES_A_SUMMER,
        spacing: length(d.spacing),
      },
      uses: [
        'use-frame',
        'use-members',
        ...(slit ? ['use-slits', 'use-range'] : []),
        'use-joints',
        'use-sag',
        'use-deck',
        'deck-span',
        'deck-span-most',
      ],
      tall: ['use-frame', 'use-deck'],
      minutes: [5, 10],
    },
  ];
};
