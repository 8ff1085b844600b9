import type { RailName } from '../../ramp/design.ts';
import { limitsOf } from '../rail-findings/limits.ts';
import { springBackFigures, springBackRows } from '../remedies/spring-back.ts';
import type { Figure, Gate } from '../sheet.ts';
import type { Ask, Situation } from '../situation.ts';
import { holdingOf } from './holding.ts';
import { MATTERS } from './limits.ts';
import { KEYS } from './side.ts';

/** What letting go has still to be worked out for a rail. */
export const springAsks = (s: Situation, rail: RailName): readonly Ask[] =>
  [springBackFigures(s, rail).asked, springBackRows(s, rail).asked].filter(ask => ask !== null);

/** Figures of the table that says how many uprights to weld, and with what, before a rail is let go. */
export const springTableIds = (rail: RailName): readonly string[] =>
  ['springs-one', 'springs-two', 'springs-all', 'springs-diagonals', 'springs-held'].map(
    id => `${id}@${rail}`,
  );

/** What comes back if the clamps are let go now, with one upright more, and what the hardest clamp holds. */
export const springFigures = (s: Situation, rail: RailName): readonly Figure[] => {
  const spring = springBackFigures(s, rail);
  const figure = (
    id: string,
    as: 'length' | 'slit' | 'force',
    v: number | null,
    matters: number,
  ): Figure => ({
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
  const { rows, asked } = springBackRows(s, rail);
  const row = (id: string, mm: number | undefined): Figure => ({
    // To a tenth: beside each other the rows tell one upright from two.
    ...figure(id, 'slit', spring.now_mm === 0 ? 0 : (mm ?? null), MATTERS.movement),
    ...(asked === null ? {} : { value: { is: 'pending' } }),
  });
  return [
    row('springs-one', rows?.[0]?.loose_mm),
    row('springs-two', rows?.[1]?.loose_mm),
    row('springs-all', rows?.at(-1)?.loose_mm),
    row('springs-diagonals', rows?.at(-1)?.looseWithDiagonals_mm),
    row('springs-held', rows?.at(-1)?.held_mm),
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
