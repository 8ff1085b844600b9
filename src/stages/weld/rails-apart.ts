import { countingSurvey } from '../../build/surveys.ts';
import type { RailName } from '../../ramp/design.ts';
import type { Figure, Value } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { KEYS } from './rail-pull.ts';

/** Rails measured cold, or later: their offsets can be held against each other. */
const isCold = (s: Situation, rail: RailName): boolean => {
  const phase = countingSurvey(s.build, rail)?.phase;
  const rolled = s.ramp.design.route === 'rolled';
  return phase !== undefined && phase !== 'half-welded' && (rolled || phase !== 'tacked');
};

/** Neighbouring rails by name: A and B, B and C. */
export const pairsOf = (s: Situation): readonly (readonly [RailName, RailName])[] =>
  s.ramp.rails.slice(1).map((rail, i) => [s.ramp.rails[i] ?? rail, rail] as const);

/** The farthest that two rails lie apart at any flat, mm; null until both are read cold. */
export const apart = (s: Situation, a: RailName, b: RailName): number | null => {
  const [one, other] = [s.ramp.shapes.get(a), s.ramp.shapes.get(b)];
  const plan = s.ramp.plans.get(a);
  if (one === undefined || other === undefined || plan === undefined || !isCold(s, a) || !isCold(s, b))
    return null;
  return Math.max(...plan.flats_mm.map(at => Math.abs(one.offsetAt(at) - other.offsetAt(at))));
};

export const apartFigures = (s: Situation): readonly Figure[] =>
  pairsOf(s).map(([a, b]): Figure => {
    const v = apart(s, a, b);
    const value: Value =
      v === null ? { is: 'unknown', needs: KEYS.cold(isCold(s, a) ? b : a) } : { is: 'exact', v };
    return {
      id: `rails-apart@${a}-${b}`,
      kind: 'dimension',
      as: 'length',
      line: 'finished line',
      value,
      matters: 1,
    };
  });
