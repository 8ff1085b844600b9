import type { DesignAnswers } from '../../ramp/design.ts';
import { YARD_WALLS_MM } from '../../reckon/strength/fixes.ts';
import type { SideFrameInput } from '../../reckon/strength/side-frame-input.ts';
import type { WayEnds } from '../heavy/strength-answer.ts';
import { fastestAt, loadsOf, saidSpeed } from '../riding.ts';
import type { Fills, Offer } from '../sheet.ts';
import { type Answer, type Ask, answer, type Situation } from '../situation.ts';
import { type Change, changed } from './ride-change.ts';
import type { Strength } from './strength-asks.ts';
import { provenOf, sideFrameOf } from './strength-frame.ts';

/** Spacings of uprights that are tried, mm: each a stride nearer (common practice). */
const SPACINGS = [640, 480, 400, 320, 280, 240, 200, 160] as const;
/** A change that takes off less than this of the use is none. */
const WORTH = 0.98;

type Step = Readonly<{ plan: Offer['plan']; fills: Fills; frame: SideFrameInput }>;
type Way = Readonly<{ remedy: string; minutes: number; steps: readonly Step[] }>;

type Known = Extract<Strength, { is: 'known' }>;

const length = (v: number) => ({ v, as: 'length' }) as const;
const thickness = (v: number) => ({ v, as: 'thickness' }) as const;

/** The frame after a change, if the build takes it. */
const after = (s: Situation, rail: string, change: Change, fills: Fills): readonly Step[] => {
  const next = changed(s, change);
  const loads = next === null ? null : loadsOf(next);
  const frame = next === null || loads === null ? null : sideFrameOf(next.ramp, rail, loads, provenOf(next));
  return frame === null ? [] : [{ plan: { ...change }, fills, frame }];
};

const waysFor = (s: Situation, { rail, frame, held }: Known): readonly Way[] => {
  const d = s.ramp.design;
  const walls = YARD_WALLS_MM[d.standard];
  const more = s.build.system === 'us' ? 12.7 : 10;
  const tube = (value: DesignAnswers['tube']) =>
    after(
      s,
      rail,
      { field: 'tube', value },
      { depth: length(value.depth_mm), wall: thickness(value.wall_mm) },
    );
  const post = (value: DesignAnswers['post']) =>
    after(
      s,
      rail,
      { field: 'post', value },
      { depth: length(value.depth_mm), wall: thickness(value.wall_mm) },
    );
  const thicker = (wall: number): readonly number[] => walls.filter(w => w > wall + 0.1).slice(0, 2);
  const covered = Math.floor(fastestAt(d.arc.radius_mm / 1000) * 36) / 36;
  const piece = (test: string, proven: Partial<SideFrameInput>): readonly Step[] => [
    { plan: { step: 'weld/coupons', test }, fills: {}, frame: { ...frame, ...proven } },
  ];
  return [
    ...((saidSpeed(s) ?? 0) > covered
      ? [
          {
            remedy: 'strength-slower',
            minutes: 3,
            steps: after(
              s,
              rail,
              { readings: [{ step: 'plan/ride', ask: 'entry-speed', value: covered }] },
              { speed: { v: covered, as: 'speed' } },
            ),
          },
        ]
      : []),
    {
      remedy: 'strength-closer',
      minutes: 40,
      steps: SPACINGS.filter(x => x < d.spacing - 1).flatMap(value =>
        after(s, rail, { field: 'spacing', value }, { spacing: length(value) }),
      ),
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
    ...(frame.slitProven || held.governing.what !== 'slit'
      ? []
      : [{ remedy: 'strength-slit-piece', minutes: 90, steps: piece('slit', { slitProven: true }) }]),
    ...(frame.jointProven || held.governing.what !== 'joint'
      ? []
      : [{ remedy: 'strength-joint-piece', minutes: 90, steps: piece('joint', { jointProven: true }) }]),
  ].filter(way => way.steps.length > 0);
};

/** Single changes that mend a side frame, each with how far the frame is used after it; those that mend it first. */
export const strengthMends = (
  s: Situation,
  known: Known,
): Readonly<{ offers: readonly Offer[]; ask: Ask | null }> => {
  const ways = waysFor(s, known);
  const asked: Answer<readonly WayEnds[]> = answer(s.answers, {
    topic: 'strength',
    input: { ways: ways.map(w => ({ way: w.remedy, steps: w.steps.map(step => step.frame) })) },
  });
  if (asked.is === 'pending') return { offers: [], ask: asked.ask };
  const now = known.held.governing.utilisation;
  const ends = asked.value.flatMap(end => {
    const way = ways.find(w => w.remedy === end?.way);
    const step = end === null ? undefined : way?.steps[end.step];
    return end === null || way === undefined || step === undefined || end.utilisation > WORTH * now
      ? []
      : [{ end, way, step }];
  });
  return {
    ask: null,
    offers: ends
      .sort(
        (a, b) =>
          Number(b.end.holds) - Number(a.end.holds) ||
          (a.end.holds ? a.way.minutes - b.way.minutes : a.end.utilisation - b.end.utilisation),
      )
      .map(({ end, way, step }) => ({
        remedy: way.remedy,
        minutes: way.minutes,
        fills: { ...step.fills, use: { v: 100 * end.utilisation, as: 'percent' } },
        plan: { ...step.plan, use: end.utilisation },
      })),
  };
};
