import { good, type Outcome } from '../../quantity/outcome.ts';
import type { SideFrameInput } from '../../reckon/strength/side-frame-input.ts';
import { type Governing, type Holding, willItHold } from '../../reckon/strength/will-it-hold.ts';

/** One side frame, or frames that are the same with one thing changed, each a step further. Plain data. */
export type StrengthQuestion =
  | Readonly<{ frame: SideFrameInput }>
  | Readonly<{ ways: readonly Readonly<{ way: string; steps: readonly SideFrameInput[] }>[] }>;

/** What a page says of a side frame. Shares are of what is allowed: 1 and no more is wanted. */
export type Held = Readonly<{
  governing: Pick<Governing, 'what' | 'name' | 'kind' | 'check' | 'utilisation' | 'x_mm'>;
  holds: boolean;
  shares: Readonly<{ member: number; slit: number; range: number; joint: number; sag: number }>;
  /** Axle passes that the most ridden slit bears; null for a rail without slits. */
  passes: number | null;
  lipSag_mm: number;
  /** Greatest push of one foot on the ground, unfactored, N. */
  foot_N: number;
}>;

/** A frame used no more than this wants nobody's second look, share of what is allowed [judgement]; a way is gone on with until then. */
export const EASY = 0.8;

/** How a way ends: the first step of it that holds with ease, else the one that is used least; null where none can be reckoned. */
export type WayEnds = Readonly<{ way: string; step: number; utilisation: number; holds: boolean }> | null;

const most = (list: readonly number[]): number => list.reduce((a, b) => Math.max(a, b), 0);

const told = (h: Holding): Held => {
  const { what, name, kind, check, utilisation, x_mm } = h.governing;
  return {
    governing: { what, name, kind, check, utilisation, x_mm },
    holds: h.holds,
    shares: {
      member: most(h.members.filter(m => m.kind !== 'side plates').map(m => m.utilisation)),
      slit: most(h.slits.map(s => s.utilisation)),
      range: most(h.slits.map(s => s.range_utilisation)),
      joint: most(h.joints.map(j => j.utilisation)),
      sag: most([h.sags.lip, h.sags.span].map(s => s.sag_mm / s.allowed_mm)),
    },
    passes: h.slits.length === 0 ? null : Math.min(...h.slits.map(s => s.passes)),
    lipSag_mm: h.sags.lip.sag_mm,
    foot_N: most(h.feet.map(f => f.down_N)),
  };
};

const wayEnds = async (way: string, steps: readonly SideFrameInput[]): Promise<WayEnds> => {
  let best: WayEnds = null;
  for (const [step, input] of steps.entries()) {
    const tried = await willItHold(input);
    if (!tried.ok) continue;
    const { utilisation } = tried.value.governing;
    if (best === null || utilisation < best.utilisation)
      best = { way, step, utilisation, holds: tried.value.holds };
    if (utilisation <= EASY) break;
  }
  return best;
};

type AnswerTo<Q extends StrengthQuestion> = Q extends { frame: SideFrameInput }
  ? Outcome<Held>
  : readonly WayEnds[];

/** Whether a side frame holds under the moving rider, or what each change by itself would make of it. Refuses as `willItHold` does. */
export const strengthAnswer = async <Q extends StrengthQuestion>(q: Q): Promise<AnswerTo<Q>> => {
  if ('frame' in q) {
    const held = await willItHold(q.frame);
    return (held.ok ? good(told(held.value)) : held) as AnswerTo<Q>;
  }
  const ends: WayEnds[] = [];
  for (const { way, steps } of q.ways) ends.push(await wayEnds(way, steps));
  return ends as unknown as AnswerTo<Q>;
};
