import type { RailName } from '../ramp/design.ts';
import type { Build, Survey } from './fold.ts';

const PHASE_ORDER: Readonly<Record<Survey['phase'], number>> = {
  tacked: 0,
  'half-welded': 1,
  cold: 2,
  braced: 3,
  unclamped: 4,
};

/** The closed survey of a rail that counts: never a retired one; the latest phase, then the greatest n. */
export const countingSurvey = (build: Build, rail: RailName, kind: Survey['kind'] = 'curve'): Survey | null =>
  build.surveys
    .filter(s => s.closed && !s.retired && s.rail === rail && s.kind === kind)
    .sort((a, b) => PHASE_ORDER[a.phase] - PHASE_ORDER[b.phase] || a.n - b.n)
    .at(-1) ?? null;

export const openSurvey = (build: Build): Survey | null =>
  build.surveys.find(s => !s.closed && !s.retired) ?? null;
