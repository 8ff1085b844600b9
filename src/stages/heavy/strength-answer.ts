import { good, type Outcome } from '../../quantity/outcome.ts';
import type { SideFrameInput } from '../../reckon/strength/side-frame-input.ts';
import { type Holding, willItHold } from '../../reckon/strength/will-it-hold.ts';
import type { MendsQuestion } from '../plan/mends-asked.ts';
import type { Offer } from '../sheet.ts';
import type { Held } from './held.ts';
import { mendsAnswer } from './mends-answer.ts';

/** One side frame; or a limit that is broken, and the build that breaks it. Plain data. */
export type StrengthQuestion = Readonly<{ frame: SideFrameInput }> | MendsQuestion;

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

type AnswerTo<Q extends StrengthQuestion> = Q extends { frame: SideFrameInput }
  ? Outcome<Held>
  : readonly Offer[];

/** Whether a side frame holds under the moving rider; or the single changes that mend a broken limit. Refuses as `willItHold` does. */
export const strengthAnswer = async <Q extends StrengthQuestion>(q: Q): Promise<AnswerTo<Q>> => {
  if ('mends' in q) return (await mendsAnswer(q)) as AnswerTo<Q>;
  const held = await willItHold(q.frame);
  return (held.ok ? good(told(held.value)) : held) as AnswerTo<Q>;
};
