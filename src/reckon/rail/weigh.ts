import { logAdd, normalAbove, normalBeyond } from './chances.ts';
import { backSolve, cholesky, dot, forwardSolve } from './dense.ts';
import { type Slopes, slopesOn } from './forward.ts';
import { EVEN_FROM, type Hypothesis, type Lay, ODD_FROM } from './hypotheses.ts';
import type { Rigid } from './rail-plan.ts';
import {
  evenColumn,
  oddityColumn,
  patternColumn,
  type Spreading,
  type SurveyModel,
  turned,
} from './survey-model.ts';

/** Gauss–Newton steps; the second moves a guess by less than its sd. */
const ROUNDS = 2;

/** A hypothesis weighed against the readings on the exact shape of its own best guess. */
export type Weighed = Readonly<{
  hypothesis: Hypothesis;
  /** log of prior × evidence. */
  log: number;
  even_rad: number;
  odd: readonly Readonly<{ at: number; turn_rad: number; sd_rad: number }>[];
  rigid: Rigid;
  edge_mm: number;
  oddity_mm: number;
  /** Each slit's error without its scatter, rad. */
  errors_rad: readonly number[];
  spreading: Spreading;
  /** Readings less the best guess, mm. */
  left: Float64Array;
}>;

type Parameter = { mean: number; sd: number; least: number; sign: -1 | 0 | 1 };

function parametersOf(h: Hypothesis, lay: Lay, length_mm: number): Parameter[] {
  const free = (sd: number, mean = 0): Parameter => ({ mean, sd, least: 0, sign: 0 });
  return [
    free(lay.across_mm),
    free(Math.hypot(lay.turn_mm / length_mm, lay.turn_rad)),
    ...(h.even_sd > 0 ? [{ mean: 0, sd: h.even_sd, least: EVEN_FROM, sign: h.sign }] : []),
    ...h.slits.map(s => ({
      mean: s.mean_rad,
      sd: s.sd_rad,
      least: s.truncated ? ODD_FROM : 0,
      sign: 0 as const,
    })),
    ...(h.edge === null ? [] : [{ ...free(h.edge.sd_mm, h.edge.mm), least: h.edge.least_mm }]),
    ...(h.oddity === null ? [] : [free(h.odditySd)]),
    ...h.patterns.map(q => free(q.sd_rad)),
  ];
}

type Guess = {
  shift: number;
  turn: number;
  even: number;
  slits: number[];
  edge: number;
  oddity: number;
  patterns: number[];
};

function guessFrom(h: Hypothesis, values: ArrayLike<number>): Guess {
  let k = 0;
  const take = () => values[k++] ?? 0;
  return {
    shift: take(),
    turn: take(),
    even: h.even_sd > 0 ? take() : 0,
    slits: h.slits.map(take),
    edge: h.edge === null ? 0 : take(),
    oddity: h.oddity === null ? 0 : take(),
    patterns: h.patterns.map(take),
  };
}

function errorsOf(h: Hypothesis, guess: Guess, slits: number): number[] {
  const errors = Array.from({ length: slits }, (_, i) =>
    guess.patterns.reduce((sum, size, k) => sum + size * h.patterns[k]!.weights[i]!, guess.even),
  );
  h.slits.forEach((s, k) => {
    errors[s.at]! += guess.slits[k]!;
  });
  return errors;
}

function columnsOf(model: SurveyModel, h: Hypothesis, slopes: Slopes): Float64Array[] {
  const { n, slits } = model;
  return [
    slopes.byShift,
    slopes.byTurn,
    ...(h.even_sd > 0 ? [evenColumn(slopes, n, slits)] : []),
    ...h.slits.map(s => slopes.bySlit.subarray(s.at * n, (s.at + 1) * n)),
    ...(h.edge === null ? [] : [new Float64Array(n).fill(1)]),
    ...(h.oddity === null ? [] : [oddityColumn(model, h.oddity)]),
    ...h.patterns.map(q => patternColumn(slopes, n, q.weights)),
  ];
}

/** The readings as they would be if all grew straight from nothing with the slopes of this state. */
function straightened(
  model: SurveyModel,
  slopes: Slopes,
  columns: readonly Float64Array[],
  values: Float64Array,
) {
  return Float64Array.from(model.survey.offsets_mm, (o, j) => {
    let v = o - slopes.offsets[j]!;
    for (let p = 0; p < columns.length; p++) v += columns[p]![j]! * values[p]!;
    return v;
  });
}

type Seen = { gram: Float64Array; by: Float64Array; yy: number };

/** @param columns p columns and then the readings, all along the model's directions */
function see(spreading: Spreading, n: number, columns: Float64Array): Seen {
  const p = columns.length / n - 1;
  const weighed = columns.map((v, k) => v * spreading.weights[k % n]!);
  const gram = new Float64Array(p * p);
  const by = new Float64Array(p);
  for (let a = 0; a < p; a++) {
    by[a] = dot(weighed, a * n, columns, p * n, n);
    for (let b = 0; b <= a; b++) gram[a * p + b] = dot(weighed, a * n, columns, b * n, n);
  }
  return { gram, by, yy: dot(weighed, p * n, columns, p * n, n) };
}

function turnedAll(model: SurveyModel, columns: readonly Float64Array[], y: Float64Array): Float64Array {
  const { n } = model;
  const raw = new Float64Array((columns.length + 1) * n);
  columns.forEach((c, p) => {
    raw.set(c, p * n);
  });
  raw.set(y, columns.length * n);
  return turned(model, raw);
}

/** Room for one fit after the other: thousands are made in a diagnosis, and each would leave its arrays behind. */
type Room = { l: Float64Array; mean: Float64Array; unit: Float64Array };
const roomFor = (p: number): Room => ({
  l: new Float64Array(p * p),
  mean: new Float64Array(p),
  unit: new Float64Array(p),
});

/** Posterior mean and its factor into the room; gives log evidence (without the n log 2π) for normal priors, null when singular. */
function settle(seen: Seen, parameters: readonly Parameter[], room: Room): number | null {
  const p = parameters.length;
  const { l, mean } = room;
  l.set(seen.gram);
  mean.set(seen.by);
  let log = -0.5 * seen.yy;
  for (let a = 0; a < p; a++) {
    const prior = parameters[a]!;
    const precision = 1 / (prior.sd * prior.sd);
    l[a * p + a]! += precision;
    mean[a]! += precision * prior.mean;
    log -= Math.log(prior.sd) + 0.5 * precision * prior.mean * prior.mean;
  }
  if (!cholesky(l, p)) return null;
  forwardSolve(l, p, mean);
  for (let a = 0; a < p; a++) log += 0.5 * mean[a]! * mean[a]! - Math.log(l[a * p + a]!);
  backSolve(l, p, mean);
  return log;
}

/** Sd of one parameter after the readings. */
function sdOf(room: Room, a: number): number {
  const p = room.mean.length;
  room.unit.fill(0);
  room.unit[a] = 1;
  forwardSolve(room.l, p, room.unit);
  return Math.sqrt(dot(room.unit, 0, room.unit, 0, p));
}

/** log of (chance after ÷ chance before) that the bounded sizes are where the hypothesis wants them. */
function bounded(parameters: readonly Parameter[], room: Room): number {
  let log = 0;
  for (let a = 0; a < parameters.length; a++) {
    const q = parameters[a]!;
    if (q.least === 0) continue;
    const mean = room.mean[a]!;
    const sd = sdOf(room, a);
    const after = q.sign === 0 ? normalBeyond(q.least, mean, sd) : normalAbove(q.least, q.sign * mean, sd);
    const before =
      q.sign === 0 ? normalBeyond(q.least, q.mean, q.sd) : normalAbove(q.least, q.sign * q.mean, q.sd);
    log += Math.log(Math.max(after, 1e-300) / before);
  }
  return log;
}

/** Weighs one hypothesis: Gauss–Newton on the exact shape, then the evidence over all spreads and lays. */
export function weigh(
  model: SurveyModel,
  h: Hypothesis,
  through: readonly Spreading[] = model.spreadings,
): Weighed | null {
  const { n, slits, length_mm, on, base } = model;
  const spreadings = (h.wild ? model.spreadings : through).filter(s => s.spread.wild === h.wild);
  const wide = parametersOf(h, h.lays.at(-1)!.lay, length_mm);
  const room = roomFor(wide.length);
  const trial = spreadings[Math.floor(spreadings.length / 2)]!;
  let { slopes } = base;
  let columns = columnsOf(model, h, slopes);
  const start = new Float64Array(wide.length);
  start[0] = base.rigid.y_mm;
  start[1] = base.rigid.turn_rad;
  if (h.even_sd > 0) start[2] = base.even_rad;
  let y = straightened(model, slopes, columns, start);
  if (h.even_sd === 0) {
    // The base state has an even error; a hypothesis without one is straightened from there all the same.
    const even = evenColumn(slopes, n, slits);
    for (let j = 0; j < n; j++) y[j]! += even[j]! * base.even_rad;
  }
  // Edge and oddity are no part of the shape: they are not in slopes.offsets, so straightening leaves them in.
  const outside = 2 + (h.even_sd > 0 ? 1 : 0) + h.slits.length;
  for (let round = 0; round < ROUNDS; round++) {
    if (settle(see(trial, n, turnedAll(model, columns, y)), wide, room) === null) return null;
    start.set(room.mean);
    const g = guessFrom(h, start);
    slopes = slopesOn(on, errorsOf(h, g, slits), { y_mm: g.shift, turn_rad: g.turn });
    columns = columnsOf(model, h, slopes);
    if (h.edge !== null) start[outside] = 0;
    if (h.oddity !== null) start[outside + (h.edge === null ? 0 : 1)] = 0;
    y = straightened(model, slopes, columns, start);
  }
  let log = Number.NEGATIVE_INFINITY;
  let top = Number.NEGATIVE_INFINITY;
  let best: { spreading: Spreading; parameters: readonly Parameter[]; seen: Seen } | null = null;
  const all = turnedAll(model, columns, y);
  const laid = h.lays.map(({ lay, share }) => ({
    parameters: parametersOf(h, lay, length_mm),
    share: Math.log(share),
  }));
  for (const spreading of spreadings) {
    const seen = see(spreading, n, all);
    for (const { parameters, share } of laid) {
      const evidence = settle(seen, parameters, room);
      if (evidence === null) continue;
      const here =
        evidence - spreading.halfLogDet + spreading.spread.prior + share + bounded(parameters, room);
      log = logAdd(log, here);
      if (here <= top) continue;
      top = here;
      best = { spreading, parameters, seen };
    }
  }
  if (best === null) return null;
  const { spreading } = best;
  settle(best.seen, best.parameters, room);
  const mean = Float64Array.from(room.mean);
  const sds = best.parameters.map((_, a) => sdOf(room, a));
  const guess = guessFrom(h, mean);
  const left = Float64Array.from(y);
  columns.forEach((c, p) => {
    for (let j = 0; j < n; j++) left[j]! -= c[j]! * mean[p]!;
  });
  const firstSlit = h.even_sd > 0 ? 3 : 2;
  return {
    hypothesis: h,
    log: log + h.prior,
    even_rad: guess.even,
    odd: h.slits.map((s, k) => ({ at: s.at, turn_rad: guess.slits[k]!, sd_rad: sds[firstSlit + k]! })),
    rigid: { y_mm: guess.shift, turn_rad: guess.turn },
    edge_mm: guess.edge,
    oddity_mm: guess.oddity,
    errors_rad: errorsOf(h, guess, slits),
    spreading,
    left,
  };
}

/** Each slit's own scatter, by what is left of the readings: scatter² Jᵀ C⁻¹ left, rad. */
export function scatterOf(model: SurveyModel, weighed: Weighed): number[] {
  const { n, slits, base } = model;
  const { spread, weights } = weighed.spreading;
  const left = turned(model, weighed.left);
  const columns = turned(model, base.slopes.bySlit);
  const t2 = spread.scatter_rad ** 2;
  const z = left.map((v, k) => v * weights[k]!);
  return Array.from({ length: slits }, (_, i) => t2 * dot(columns, i * n, z, 0, n));
}
