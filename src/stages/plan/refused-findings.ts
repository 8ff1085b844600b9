import type { Problem } from '../../ramp/problems.ts';
import type { Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';

/** Reasons not to build that a reading at the bench can bring after the design was agreed, each with words of its own. */
const FROM_THE_BENCH = new Set(['wall-thin', 'kerf-wide', 'kerf-thin', 'flats-short']);

/** Which reading to take again when a measured number upset the plan. */
const readAgain = (s: Situation, code: string): string => {
  const rail = s.ramp.rails[0] ?? 'A';
  if (code === 'wall-thin') return `cut/measure-tube@${rail}`;
  return 'cut/test-piece';
};

const offersFor = (s: Situation, p: Problem): readonly Offer[] => {
  const field = p.fields[0] ?? 'shape';
  return [
    { remedy: 'refused-read-again', minutes: 15, plan: { step: readAgain(s, p.code) } },
    { remedy: `refused-change-${field}`, fills: p.fills, minutes: 5, plan: { field } },
    { remedy: 'refused-rolled', minutes: 90, plan: { field: 'route', value: 'rolled' } },
    { remedy: 'leave-refused', minutes: 0, plan: {} },
  ];
};

/** Thirds that are not marked yet: what waits when the plan no longer holds. */
const unmarkedThirds = (s: Situation): readonly string[] =>
  [...s.ramp.plans.values()].flatMap(p => [
    ...new Set(
      p.slits.filter(slit => slit.marked === null).map(slit => `cut/mark-third@${p.rail}:${slit.third}`),
    ),
  ]);

/** An agreed plan that a reading has since made one this coach would not begin: it is said before more steel is marked. */
export const refusedFindings = (s: Situation): readonly Finding[] =>
  !s.build.agreed
    ? []
    : s.ramp.problems
        .filter(p => p.severity === 'refuse')
        .map(
          (p): Finding => ({
            key: `refused-${p.code}`,
            stage: 'plan',
            severity: 'stop',
            words: FROM_THE_BENCH.has(p.code) ? `refused-${p.code}` : 'refused-other',
            fills: p.fills,
            offers: offersFor(s, p),
            blocks: unmarkedThirds(s),
          }),
        );
