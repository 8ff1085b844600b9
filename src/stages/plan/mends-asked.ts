import { fold } from '../../build/fold.ts';
import type { Answered } from '../../ramp/design.ts';
import type { Measured } from '../../ramp/measured.ts';
import { rampOf } from '../../ramp/ramp.ts';
import type { Held } from '../heavy/held.ts';
import type { Offer } from '../sheet.ts';
import { type Answer, answer, type Situation } from '../situation.ts';
import { type Proven, provenOf } from './strength-frame.ts';

type Entries<M> = M extends ReadonlyMap<infer K, infer V> ? readonly (readonly [K, V])[] : M;

/** Everything that ride and frame stand on, as plain data: the same ramp can be made of it off the thread that listens to keys. */
export type SaidBuild = Readonly<{
  name: string;
  system: 'metric' | 'us';
  answers: Answered;
  measured: Readonly<{ [K in keyof Measured]: Entries<Measured[K]> }>;
  /** Numbers said and read of ride, landing and anchors, by their key. */
  readings: readonly (readonly [string, number])[];
  proven: Proven;
}>;

/** The rail whose frame is used most, and how. */
export type WorstFrame = Readonly<{ rail: string; governing: Held['governing'] }>;

/** Which single changes mend a limit that is broken, by its code; of a frame when one is given. */
export type MendsQuestion = Readonly<{ mends: SaidBuild; code: string; frame?: WorstFrame }>;

/** Steps whose numbers the ride is made of. */
const OF_THE_RIDE = /^(plan\/(ride|landing|ground)|finish\/(speeds|landings))#/;

/** A build as far as its ride and frame go. */
export const saidBuild = (s: Situation): SaidBuild => {
  const { tubes, marks, curves, weldedPull, ...measured } = s.measured;
  return {
    name: s.build.name,
    system: s.build.system,
    answers: s.build.answers,
    measured: {
      ...measured,
      tubes: [...tubes],
      marks: [...marks],
      curves: [...curves],
      weldedPull: [...weldedPull],
    },
    readings: [...s.build.readings].flatMap(([key, { value }]): [string, number][] =>
      OF_THE_RIDE.test(key) ? [[key, value]] : [],
    ),
    proven: provenOf(s),
  };
};

/** The situation such a build is in. Null where its answers make no ramp. */
export const buildSaid = (said: SaidBuild): Situation | null => {
  const measured: Measured = {
    ...said.measured,
    tubes: new Map(said.measured.tubes),
    marks: new Map(said.measured.marks),
    curves: new Map(said.measured.curves),
    weldedPull: new Map(said.measured.weldedPull),
  };
  const made = rampOf(said.name, said.system, said.answers, measured);
  if (!made.ok) return null;
  const readings = new Map(
    said.readings.map(([key, value]) => [
      key,
      { entry: key, at: '', value, typed: String(value), basis: {} },
    ]),
  );
  const build = { ...fold([]), name: said.name, system: said.system, answers: said.answers, readings };
  return { build, measured, ramp: made.value, answers: new Map(), now: 0 };
};

/** The changes that mend a limit, if they are worked out by now. */
export const mendsAsked = (
  s: Situation,
  mends: SaidBuild,
  code: string,
  frame?: WorstFrame,
): Answer<readonly Offer[]> =>
  answer(s.answers, {
    topic: 'strength',
    input: { mends, code, ...(frame === undefined ? {} : { frame }) } satisfies MendsQuestion,
  });
