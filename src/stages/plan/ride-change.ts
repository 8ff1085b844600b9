import { readingKey } from '../../build/fold.ts';
import type { Answered, DesignField } from '../../ramp/design.ts';
import { rampOf } from '../../ramp/ramp.ts';
import type { Situation } from '../situation.ts';

/** One change before steel is bought: an answer of the design, or numbers said in a step. Frozen into an offer's plan as it stands. */
export type Change =
  | Readonly<{ field: DesignField; value: unknown }>
  | Readonly<{ readings: readonly Readonly<{ step: string; ask: string; value: number }>[] }>;

/** The same build with one change made: the real thing without the append. Null where it brings a new reason not to build. */
export const changed = (s: Situation, change: Change): Situation | null => {
  if ('readings' in change) {
    const readings = new Map(s.build.readings);
    for (const { step, ask, value } of change.readings)
      readings.set(readingKey(step, ask), {
        entry: 'preview',
        at: '',
        value,
        typed: String(value),
        basis: {},
      });
    return { ...s, build: { ...s.build, readings } };
  }
  const answers = { ...s.build.answers, [change.field]: change.value } as Answered;
  // What was measured of a tube that is changed is left out; so are marks, which belong to the curve that was.
  const measured = {
    ...s.measured,
    marks: new Map(),
    ...(change.field === 'tube' ? { tubes: new Map() } : {}),
    ...(change.field === 'cutter' ? { kerf_mm: null } : {}),
  };
  const made = rampOf(s.build.name, s.build.system, answers, measured);
  if (!made.ok) return null;
  const had = new Set(s.ramp.problems.map(p => p.code));
  if (made.value.problems.some(p => !had.has(p.code) && p.code !== 'entry-long')) return null;
  return { ...s, build: { ...s.build, answers }, measured, ramp: made.value };
};
