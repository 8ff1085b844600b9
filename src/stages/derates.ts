import type { Situation } from './situation.ts';
import { type Broken, changedSince, type Lapse, lastBroken, type TestPiece } from './test-pieces.ts';
import { jointWall, railWall } from './weld-walls.ts';

/** Share that a beginner's welds are counted at until their own test piece held (bench rule; common practice). */
export const UNTESTED_SHARE = 0.5;
/** A test piece counts until there is a pause in welding as long as this (bench rule; common practice). */
export const GOOD_FOR_WEEKS = 8;
const GOOD_FOR_ms = GOOD_FOR_WEEKS * 7 * 86_400_000;

export type Derate = Readonly<{
  /** What the strength of such a weld is multiplied by. */
  factor: number;
  why: 'not tested' | 'failed' | 'held' | 'lapsed';
  /** What made it lapse. */
  lapse?: Lapse;
  /** When it lapses if nothing is welded before, epoch ms; null where nothing stands that could. */
  expires_ms: number | null;
}>;

export type Derates = Readonly<{ slit: Derate; joint: Derate }>;

/** Where the arc was on: keys of what is ticked while welding begin so. */
const HOT = [
  'weld/sides',
  'weld/tops',
  'tack/close-third',
  'brace/weld',
  'brace/fit-uprights',
  'assemble/weld',
];
const JOINTS = ['brace/weld', 'assemble/weld'];
const SLITS = ['weld/sides', 'weld/tops'];

/** When the arc was on, ms, rising; and when the last slit and the last joint were welded. */
type Hot = Readonly<{ times: readonly number[]; slits: number | null; joints: number | null }>;

const kept = new WeakMap<Situation['build']['ticks'], Hot>();

/** Read once for a build's ticks: every weld of every slit is among them. */
const hotOf = (s: Situation): Hot => {
  const before = kept.get(s.build.ticks);
  if (before !== undefined) return before;
  const times: number[] = [];
  const last = { slits: null as number | null, joints: null as number | null };
  const later = (was: number | null, at: number): number => (was === null ? at : Math.max(was, at));
  for (const [key, tick] of s.build.ticks) {
    if (!HOT.some(start => key.startsWith(start))) continue;
    const at = Date.parse(tick.at);
    times.push(at);
    if (SLITS.some(start => key.startsWith(start))) last.slits = later(last.slits, at);
    if (JOINTS.some(start => key.startsWith(start))) last.joints = later(last.joints, at);
  }
  const hot = { ...last, times: times.sort((a, b) => a - b) };
  kept.set(s.build.ticks, hot);
  return hot;
};

const settled = (s: Situation, key: string): boolean => s.build.ticks.has(key) || s.build.skips.has(key);

/** All welds of the slits are made: every slit rail was left to go cold. */
const slitsDone = (s: Situation): boolean =>
  [...s.ramp.plans.values()].every(plan => plan.slits.length === 0 || settled(s, `weld/cool@${plan.rail}`));

/** All joints are made: the frame was welded, or stood up. */
const jointsDone = (s: Situation): boolean =>
  ['assemble/weld', 'assemble/stand-up', 'assemble/feet'].some(key => settled(s, key));

type Of = Readonly<{
  done: boolean;
  /** When the last weld of its kind was made, ms. */
  last: (hot: Hot) => number | null;
  wall: Readonly<{ figure: string; now_mm: number }>;
}>;

const derateOf = (s: Situation, piece: Broken | null, sawn: Broken | null, of: Of): Derate => {
  if (piece === null) return { factor: UNTESTED_SHARE, why: 'not tested', expires_ms: null };
  // A piece sawn across that shows the bead not in the steel says the same of every weld of that evening.
  if (piece.look !== 'held' || (sawn !== null && sawn.look !== 'held'))
    return { factor: UNTESTED_SHARE, why: 'failed', expires_ms: null };
  const lapsed = (lapse: Lapse): Derate => ({
    factor: UNTESTED_SHARE,
    why: 'lapsed',
    lapse,
    expires_ms: null,
  });
  // What is welded stays as good as it was when it was welded: later pauses and other wires touch only welds to come.
  if (!of.done) {
    const change = changedSince(s, piece.with, of.wall);
    if (change !== null) return lapsed(change);
  }
  const known = hotOf(s);
  const until = of.done ? (of.last(known) ?? piece.at_ms) : s.now;
  const hot = known.times.filter(at => at > piece.at_ms && at <= until);
  let last = piece.at_ms;
  for (const at of [...hot, until]) {
    if (at - last > GOOD_FOR_ms) return lapsed('long pause');
    last = Math.max(last, at);
  }
  const lastHot = hot.at(-1) ?? piece.at_ms;
  return { factor: 1, why: 'held', expires_ms: of.done ? null : lastHot + GOOD_FOR_ms };
};

const slits = (s: Situation): Of => ({
  done: slitsDone(s),
  last: hot => hot.slits,
  wall: { figure: 'weld-wall', now_mm: railWall(s) },
});

const joints = (s: Situation): Of => ({
  done: jointsDone(s),
  last: hot => hot.joints,
  wall: { figure: 'joint-wall', now_mm: jointWall(s) },
});

/**
 * What share of its strength a weld of this build is counted at, for the slits and for the joints: half until its own test piece held,
 * all of it from then on (bench rule; common practice). It lapses after a pause of eight weeks in welding, and with another wire,
 * gas or wall, for the welds still to come.
 */
export const deratesOf = (s: Situation): Derates => {
  const sawn = lastBroken(s, 'sawn');
  return {
    slit: derateOf(s, lastBroken(s, 'slit'), sawn, slits(s)),
    joint: derateOf(s, lastBroken(s, 'tee'), sawn, joints(s)),
  };
};

/** How a test piece itself stands: the sawn one lapses as the others do, while any weld is to come. */
export const pieceStands = (s: Situation, piece: TestPiece): Derate => {
  const broken = lastBroken(s, piece);
  switch (piece) {
    case 'slit':
      return derateOf(s, broken, null, slits(s));
    case 'tee':
      return derateOf(s, broken, null, joints(s));
    case 'sawn': {
      const of = s.ramp.design.route === 'slit' ? slits(s) : joints(s);
      return derateOf(s, broken, null, {
        ...of,
        done: of.done && jointsDone(s),
        last: hot => hot.times.at(-1) ?? null,
      });
    }
  }
};
