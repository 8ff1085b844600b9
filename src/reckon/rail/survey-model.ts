import { solveSmall } from './dense.ts';
import type { RailSurvey } from './diagnosis.ts';
import { symmetricEigen } from './eigen.ts';
import { type Bench, bench, type Slopes, slopesOn } from './forward.ts';
import { type Oddity, type Spread, spreads } from './hypotheses.ts';
import { lineLength, type Rigid, UNMOVED } from './rail-plan.ts';

/**
 * A spread as seen along the directions in which J·Jᵀ falls apart: there its covariance noise²·I + scatter²·J·Jᵀ is a row of
 * single variances, for every spread alike, so a column is turned once and weighed for thirty spreads.
 */
export type Spreading = Readonly<{ spread: Spread; weights: Float64Array; halfLogDet: number }>;

/** A survey made ready: where the readings point when only an even error is allowed, and the spreads to weigh with. */
export type SurveyModel = Readonly<{
  survey: RailSurvey;
  on: Bench;
  n: number;
  slits: number;
  length_mm: number;
  /** Stations from the start of the line on: `order[0]` is the index of the nearest. */
  order: readonly number[];
  /** The state all slopes are taken at. */
  base: Readonly<{ even_rad: number; rigid: Rigid; slopes: Slopes }>;
  spreadings: readonly Spreading[];
  /** Eigenvectors of J·Jᵀ, one after the other. */
  directions: Float64Array;
}>;

const evenErrors = (slits: number, even_rad: number): number[] => new Array<number>(slits).fill(even_rad);

/** How the offsets grow with an even error in all slits, mm per rad. */
export function evenColumn(slopes: Slopes, n: number, slits: number): Float64Array {
  const sum = new Float64Array(n);
  for (let i = 0; i < slits; i++) for (let j = 0; j < n; j++) sum[j]! += slopes.bySlit[i * n + j]!;
  return sum;
}

/** Least squares of shift, turn and even error on the exact model: only the state to take slopes at, no answer. */
function baseState(on: Bench, offsets: readonly number[], slits: number) {
  let even_rad = 0;
  let rigid: Rigid = UNMOVED;
  const n = offsets.length;
  for (let round = 0; round < 5; round++) {
    const slopes = slopesOn(on, evenErrors(slits, even_rad), rigid);
    const columns = [slopes.byShift, slopes.byTurn, evenColumn(slopes, n, slits)];
    // A faint pull toward nothing keeps short or sparse surveys solvable.
    const faint = [1e-4, 1e2, 1e2];
    const a = new Float64Array(9);
    const b = new Float64Array(3);
    const now = [rigid.y_mm, rigid.turn_rad, even_rad];
    for (let p = 0; p < 3; p++) {
      for (let q = 0; q < 3; q++)
        for (let j = 0; j < n; j++) a[p * 3 + q]! += columns[p]![j]! * columns[q]![j]!;
      for (let j = 0; j < n; j++) b[p]! += columns[p]![j]! * (offsets[j]! - slopes.offsets[j]!);
      a[p * 4]! += faint[p]!;
      b[p]! -= faint[p]! * now[p]!;
    }
    const step = solveSmall(a, b);
    if (step === null) break;
    const most = (0.5 * on.plan.bend_rad) / slits;
    even_rad = Math.min(Math.max(even_rad + step[2]!, -most), most);
    rigid = {
      y_mm: rigid.y_mm + step[0]!,
      turn_rad: Math.min(Math.max(rigid.turn_rad + step[1]!, -0.3), 0.3),
    };
  }
  return { even_rad, rigid, slopes: slopesOn(on, evenErrors(slits, even_rad), rigid) };
}

function covariance(slopes: Slopes, n: number, slits: number): Float64Array {
  const jj = new Float64Array(n * n);
  for (let i = 0; i < slits; i++) {
    const at = i * n;
    for (let p = 0; p < n; p++) {
      const v = slopes.bySlit[at + p]!;
      if (v === 0) continue;
      for (let q = 0; q <= p; q++) jj[p * n + q]! += v * slopes.bySlit[at + q]!;
    }
  }
  return jj;
}

export function surveyModel(survey: RailSurvey): SurveyModel {
  const on = bench(survey.plan, survey.stations_mm);
  const n = survey.stations_mm.length;
  const slits = survey.plan.slits_mm.length;
  const base = baseState(on, survey.offsets_mm, slits);
  const { values, vectors } = symmetricEigen(covariance(base.slopes, n, slits), n);
  const spreadings = spreads(survey.read_to_mm, survey.twice_mm).map(spread => {
    const weights = values.map(v => 1 / (spread.noise_mm ** 2 + spread.scatter_rad ** 2 * Math.max(v, 0)));
    return { spread, weights, halfLogDet: -0.5 * weights.reduce((sum, w) => sum + Math.log(w), 0) };
  });
  const order = survey.stations_mm
    .map((_, j) => j)
    .sort((a, b) => survey.stations_mm[a]! - survey.stations_mm[b]!);
  return {
    survey,
    on,
    n,
    slits,
    length_mm: lineLength(survey.plan),
    order,
    base,
    spreadings,
    directions: vectors,
  };
}

/** What an oddity of one size (mm, a run: rad a slit) adds to each reading. */
export function oddityColumn(model: SurveyModel, oddity: Oddity): Float64Array {
  const { n, order, base } = model;
  const { stations_mm } = model.survey;
  const column = new Float64Array(n);
  switch (oddity.is) {
    case 'reading':
      column[oddity.station] = 1;
      break;
    case 'jump':
      for (let k = oddity.after + 1; k < n; k++) column[order[k]!] = 1;
      break;
    case 'swing':
      for (let k = oddity.after + 1; k < n; k++) {
        const at = Math.min(Math.max(stations_mm[order[k]!]! / model.length_mm, 0), 1);
        column[order[k]!] = oddity.about === 'entry' ? at : 1 - at;
      }
      break;
    case 'bump':
      stations_mm.forEach((s, j) => {
        column[j] = Math.max(0, 1 - Math.abs(s - oddity.at_mm) / oddity.half_mm);
      });
      break;
    case 'run':
      return patternColumn(base.slopes, n, runWeights(oddity, model.slits));
  }
  return column;
}

/** What a pattern of errors along the rail adds to each reading, mm per rad of its size. */
export function patternColumn(slopes: Slopes, n: number, weights: readonly number[]): Float64Array {
  const column = new Float64Array(n);
  weights.forEach((weight, i) => {
    if (weight === 0) return;
    for (let j = 0; j < n; j++) column[j]! += weight * slopes.bySlit[i * n + j]!;
  });
  return column;
}

export const runWeights = (run: { from: number; to: number }, slits: number): number[] =>
  Array.from({ length: slits }, (_, i) => (i >= run.from && i < run.to ? 1 : 0));

/** Columns (n numbers each, one after the other) along the model's directions. */
export function turned(model: SurveyModel, columns: Float64Array): Float64Array {
  const { n, directions } = model;
  const out = new Float64Array(columns.length);
  for (let at = 0; at < columns.length; at += n) {
    let first = 0;
    while (first < n && columns[at + first] === 0) first++;
    for (let k = 0; k < n; k++) {
      let sum = 0;
      for (let j = first; j < n; j++) sum += directions[k * n + j]! * columns[at + j]!;
      out[at + k] = sum;
    }
  }
  return out;
}
