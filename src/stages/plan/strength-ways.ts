import type { DesignAnswers } from '../../ramp/design.ts';
import { YARD_WALLS_MM } from '../../reckon/strength/fixes.ts';
import type { SideFrameInput } from '../../reckon/strength/side-frame-input.ts';
import { willItHold } from '../../reckon/strength/will-it-hold.ts';
import { EASY } from '../heavy/held.ts';
import { fastestAt, loadsOf, saidSpeed } from '../riding.ts';
import type { Fills, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import type { WorstFrame } from './mends-asked.ts';
import { type Change, changed } from './ride-change.ts';
import { tenthDown } from './ride-try.ts';
import { type Proven, provenAfter, sideFrameOf } from './strength-frame.ts';

const inches = (...list: readonly number[]): readonly number[] => list.map(inch => inch * 25.4);

/** Spacings of uprights that are tried, mm: each a stride nearer (common practice). */
const SPACINGS = {
  metric: [640, 480, 400, 320, 280, 240, 200, 160],
  us: inches(24, 20, 16, 12, 10, 8, 6),
} as const;
/** Least clear heights of a bay that gets a diagonal, mm, each a step lower: down to what a saw still fits into (common practice). */
const BRACED_BAYS = { metric: [200, 160, 120], us: inches(8, 6, 5) } as const;
/** Changes that are shown although none of them mends the frame alone. */
const MOST_HELPS = 3;
/** A change that takes off less than this of the use is none. */
const WORTH = 0.98;

type Step = Readonly<{ plan: Offer['plan']; fills: Fills; frame: SideFrameInput }>;
type Way = Readonly<{ remedy: string; minutes: number; steps: readonly Step[] }>;
type WayEnds = Readonly<{ way: Way; step: Step; utilisation: number; holds: boolean }> | null;

const length = (v: number) => ({ v, as: 'length' }) as const;
const thickness = (v: number) => ({ v, as: 'thickness' }) as const;

/** The frame after a change, if the build takes it. */
const afterChange = (
  s: Situation,
  proven: Proven,
  rail: string,
  change: Change,
  fills: Fills,
): readonly Step[] => {
  const next = changed(s, change);
  const loads = next === null ? null : loadsOf(next);
  const frame =
    next === null || loads === null
      ? null
      : sideFrameOf(next.ramp, rail, loads, provenAfter(proven, s, next));
  return frame === null ? [] : [{ plan: { ...change }, fills, frame }];
};

/**
 * A tie between the tallest uprights is none of them: what it mends, by a few per cent, is mended better by each of the others
 * (derived: 6400 frames in the tests).
 */
const waysFor = (s: Situation, proven: Proven, { rail, governing }: WorstFrame): readonly Way[] => {
  const d = s.ramp.design;
  const after = (change: Change, fills: Fills) => afterChange(s, proven, rail, change, fills);
  // A yard sells what its units have, whichever standard judges it.
  const walls = YARD_WALLS_MM[s.build.system === 'us' ? 'AISC' : 'EN'];
  const more = s.build.system === 'us' ? 12.7 : 10;
  const tube = (value: DesignAnswers['tube']) =>
    after({ field: 'tube', value }, { depth: length(value.depth_mm), wall: thickness(value.wall_mm) });
  const post = (value: DesignAnswers['post']) =>
    after({ field: 'post', value }, { depth: length(value.depth_mm), wall: thickness(value.wall_mm) });
  const thicker = (wall: number): readonly number[] => walls.filter(w => w > wall + 0.1).slice(0, 2);
  const covered = tenthDown(fastestAt(d.arc.radius_mm / 1000), s.build.system);
  const loads = loadsOf(s);
  const piece = (test: string, held: Partial<Proven>): readonly Step[] => {
    const frame = loads === null ? null : sideFrameOf(s.ramp, rail, loads, { ...proven, ...held });
    return frame === null ? [] : [{ plan: { step: 'weld/coupons', test }, fills: {}, frame }];
  };
  return [
    ...((saidSpeed(s) ?? 0) > covered
      ? [
          {
            remedy: 'strength-slower',
            minutes: 3,
            steps: after(
              { readings: [{ step: 'plan/ride', ask: 'entry-speed', value: covered }] },
              { speed: { v: covered, as: 'speed' } },
            ),
          },
        ]
      : []),
    {
      remedy: 'strength-closer',
      minutes: 40,
      steps: SPACINGS[s.build.system]
        .filter(x => x < d.spacing - 1)
        .flatMap(value => after({ field: 'spacing', value }, { spacing: length(value) })),
    },
    {
      remedy: 'strength-diagonals',
      minutes: 30,
      steps: BRACED_BAYS[s.build.system]
        .filter(x => x < d.diagonals - 1)
        .flatMap(value => after({ field: 'diagonals', value }, { height: length(value) })),
    },
    {
      remedy: 'strength-rail',
      minutes: 240,
      steps: after({ field: 'rails', value: s.ramp.rails.length + 1 }, { count: s.ramp.rails.length + 1 }),
    },
    {
      remedy: 'strength-wall',
      minutes: 5,
      steps: thicker(d.tube.wall_mm).flatMap(wall_mm => tube({ ...d.tube, wall_mm })),
    },
    {
      remedy: 'strength-tube',
      minutes: 6,
      steps: tube({ ...d.tube, depth_mm: d.tube.depth_mm + more, width_mm: d.tube.width_mm + more }),
    },
    {
      remedy: 'strength-post-wall',
      minutes: 5,
      steps: thicker(d.post.wall_mm).flatMap(wall_mm => post({ ...d.post, wall_mm })),
    },
    {
      remedy: 'strength-post',
      minutes: 6,
      steps: post({ ...d.post, depth_mm: d.post.depth_mm + more, width_mm: d.post.width_mm + more }),
    },
    ...(proven.slit || governing.what !== 'slit'
      ? []
      : [{ remedy: 'strength-slit-piece', minutes: 90, steps: piece('slit', { slit: true }) }]),
    ...(proven.joint || governing.what !== 'joint'
      ? []
      : [{ remedy: 'strength-joint-piece', minutes: 90, steps: piece('joint', { joint: true }) }]),
  ].filter(way => way.steps.length > 0);
};

/** How a way ends: the first step of it that holds with ease, else the one that is used least; null where none can be reckoned. */
const wayEnds = async (way: Way): Promise<WayEnds> => {
  let best: WayEnds = null;
  for (const step of way.steps) {
    const tried = await willItHold(step.frame);
    if (!tried.ok) continue;
    const { utilisation } = tried.value.governing;
    if (best === null || utilisation < best.utilisation)
      best = { way, step, utilisation, holds: tried.value.holds };
    if (utilisation <= EASY) break;
  }
  return best;
};

/** Those with ease first, then those that just hold, cheapest first; where none holds, the few that help most. */
const bestOf = (ends: readonly NonNullable<WayEnds>[]): readonly NonNullable<WayEnds>[] => {
  const hold = ends.filter(end => end.holds);
  return hold.length > 0
    ? hold.sort(
        (a, b) =>
          Number(b.utilisation <= EASY) - Number(a.utilisation <= EASY) || a.way.minutes - b.way.minutes,
      )
    : [...ends].sort((a, b) => a.utilisation - b.utilisation).slice(0, MOST_HELPS);
};

/** Single changes that mend a side frame, each with how far the frame is used after it; where none does, those that help most. */
export const strengthMends = async (
  s: Situation,
  proven: Proven,
  worst: WorstFrame,
): Promise<readonly Offer[]> => {
  const ends: NonNullable<WayEnds>[] = [];
  for (const way of waysFor(s, proven, worst)) {
    const end = await wayEnds(way);
    if (end !== null && end.utilisation <= WORTH * worst.governing.utilisation) ends.push(end);
  }
  return bestOf(ends).map(({ way, step, utilisation }) => ({
    remedy: way.remedy,
    minutes: way.minutes,
    fills: { ...step.fills, use: { v: 100 * utilisation, as: 'percent' } },
    plan: { ...step.plan, use: utilisation },
  }));
};
