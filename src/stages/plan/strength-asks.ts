import type { Outcome } from '../../quantity/outcome.ts';
import type { Ramp } from '../../ramp/ramp.ts';
import type { SideFrameInput } from '../../reckon/strength/side-frame-input.ts';
import { momentAtCap } from '../../reckon/strength/slit-check.ts';
import { slitSection } from '../../reckon/strength/slit-section.ts';
import { tubeStrength } from '../../reckon/strength/tube-strength.ts';
import type { Held } from '../heavy/held.ts';
import { loadsOf } from '../riding.ts';
import { type Ask, answer, askKey, type Situation } from '../situation.ts';
import { provenOf, sideFrameOf } from './strength-frame.ts';

type Frames = readonly Readonly<{ rail: string; frame: SideFrameInput; input: { frame: SideFrameInput } }>[];

/** Frames of a ramp by what is loaded and proven, kept while the ramp stands as it does. */
const kept = new WeakMap<Ramp, { key: string; frames: Frames }>();

const framesOf = (
  ramp: Ramp,
  loads: NonNullable<ReturnType<typeof loadsOf>>,
  proven: ReturnType<typeof provenOf>,
): Frames => {
  const key = JSON.stringify([loads, proven]);
  const before = kept.get(ramp);
  if (before?.key === key) return before.frames;
  const frames = ramp.rails.flatMap(rail => {
    const frame = sideFrameOf(ramp, rail, loads, proven);
    return frame === null ? [] : [{ rail, frame, input: { frame } }];
  });
  kept.set(ramp, { key, frames });
  return frames;
};

/** What is known of the side frames by now. The worst of the rails stands for all. */
export type Strength =
  | Readonly<{ is: 'pending'; asks: readonly Ask[]; meanwhile: number }>
  | Readonly<{ is: 'known'; rail: string; frame: SideFrameInput; held: Held }>
  /** The kernel takes no such frame, or there is no rail. */
  | Readonly<{ is: 'unknown'; why: string }>;

/** Moment of a wheel midway between uprights, as a share of load times length, over more spans than one (common practice: 400 mm where a single span takes 320). */
const CONTINUOUS = 1 / 5;

/**
 * A use that needs no frame: the widest stretch of rail with the wheel on it, against the cap at a slit, or a whole tube's moment.
 * It stands on the page until the frame itself has been reckoned [derived from practice].
 */
export const quickUse = (frame: SideFrameInput): number => {
  const at = [frame.base.from_x_mm, ...frame.uprights.map(u => u.x_mm)].sort((a, b) => a - b);
  const widest = at.slice(1).reduce((most, x, k) => Math.max(most, x - (at[k] ?? 0)), 0);
  const moment = frame.loads.riding_N * widest * CONTINUOUS;
  const { tube, opened } = frame.rail;
  if (frame.rail.points.some(p => p.slit === true)) {
    const section = slitSection(
      { shape: 'rect', ...tube, rule: frame.standard === 'AISC' ? 'AISC' : 'EN10219' },
      opened,
    );
    if (section.ok) return moment / momentAtCap(section.value);
  }
  const whole = tubeStrength(tube, frame.standard, frame.grade);
  return whole.ok ? moment / whole.value.moment_Nmm : 0;
};

export const strengthOf = (s: Situation): Strength => {
  const loads = loadsOf(s);
  if (loads === null) return { is: 'unknown', why: 'no load is known for this curve' };
  const proven = provenOf(s);
  const frames = framesOf(s.ramp, loads, proven);
  const first = frames[0];
  if (first === undefined) return { is: 'unknown', why: 'there is no rail' };
  const asks = new Map<string, Ask>();
  let worst: Extract<Strength, { is: 'known' }> | null = null;
  let refused: string | null = null;
  for (const { rail, frame, input } of frames) {
    const known = answer<Outcome<Held>>(s.answers, { topic: 'strength', input });
    if (known.is === 'pending') asks.set(askKey(known.ask), known.ask);
    else if (!known.value.ok) refused = known.value.fault.message;
    else if (worst === null || known.value.value.governing.utilisation > worst.held.governing.utilisation)
      worst = { is: 'known', rail, frame, held: known.value.value };
  }
  if (asks.size > 0)
    return {
      is: 'pending',
      asks: [...asks.values()],
      meanwhile: Math.max(...frames.map(f => quickUse(f.frame))),
    };
  if (refused !== null || worst === null) return { is: 'unknown', why: refused ?? '' };
  return worst;
};
