import type { RailName } from '../../ramp/design.ts';
import { limitsOf } from '../rail-findings/limits.ts';
import { springBackFigures } from '../remedies/spring-back.ts';
import type { Figure, Gate } from '../sheet.ts';
import type { Ask, Situation } from '../situation.ts';
import { holdingOf } from './holding.ts';
import { MATTERS } from './limits.ts';
import { KEYS } from './side.ts';

/** What letting go has still to be worked out for a rail. */
export const springAsk = (s: Situation, rail: RailName): Ask | null => springBackFigures(s, rail).asked;

/** What comes back if the clamps are let go now, with one upright more, and what the hardest clamp holds. */
export const springFigures = (s: Situation, rail: RailName): readonly Figure[] => {
  const spring = springBackFigures(s, rail);
  const figure = (id: string, as: 'length' | 'force', v: number | null, matters: number): Figure => ({
    id: `${id}@${rail}`,
    kind: 'size',
    as,
    value:
      v !== null
        ? { is: 'exact', v }
        : spring.asked !== null
          ? { is: 'pending' }
          : { is: 'unknown', needs: KEYS.forced(rail) },
    matters,
  });
  const forces = spring.clamps.map(c => Math.abs(c.force_N));
  const hardest = spring.now_mm === 0 ? 0 : forces.length === 0 ? null : Math.max(...forces);
  return [
    figure('springs-back', 'length', spring.now_mm, MATTERS.movement),
    figure('springs-back-next', 'length', spring.next_mm, MATTERS.movement),
    figure('clamp-holds', 'force', hardest, MATTERS.force),
  ];
};

/** Everything is in and still more would come back than a rail may be off: shut before the clamps come off, not after. */
export const springGate = (s: Situation, rail: RailName): Gate => {
  const { now_mm } = springBackFigures(s, rail);
  const limit = limitsOf(s).smooth;
  return {
    id: 'springs-too-far',
    shut: holdingOf(s, rail).enough && now_mm !== null && now_mm > limit,
    fills: { rail, back: { v: now_mm ?? 0, as: 'length' }, limit: { v: limit, as: 'length' } },
  };
};
