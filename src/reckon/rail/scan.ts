import { logAdd } from './chances.ts';
import { cholesky, dot, forwardSolve, halfLogDet } from './dense.ts';
import { LAY_SHARE, LAYS, MISSED_SD, ODD_SD, type Oddity, PAIR_APART, SEEN_BY } from './hypotheses.ts';
import { odditiesOf } from './oddities.ts';
import { evenColumn, oddityColumn, type Spreading, type SurveyModel, turned } from './survey-model.ts';

/**
 * The quick look: every slit, every pair of slits and every oddity weighed by one linear step from a shared state, so that
 * only the few that could be true are weighed with care. A column is added to a fit in a handful of products once the
 * columns that all fits share (shift, turn, even error) have been taken out of everything.
 */

/** Two arrays of log evidence (no prior weight), summed over spreads and lays: without an even error, and with one. */
export type Pairwise = readonly [Float64Array, Float64Array];

export type Scan = Readonly<{
  slit: Pairwise;
  missed: Pairwise;
  oddity: Pairwise;
  /** A doubtful reading and a slit together: `[k * slits + i]`, k counting in `doubtful`. */
  readingSlit: Pairwise;
  doubtful: readonly number[];
  /** Pairs `[i * slits + k]`, k < i. */
  pair: Pairwise;
  oddities: readonly Oddity[];
  odditySd: readonly number[];
  /** The spreads that came anywhere near the best: the careful weighing needs no others. */
  spreadings: readonly Spreading[];
}>;

/** Sd of an even error in the quick look, rad. */
const EVEN = 0.003;
/** Pairs are looked at only through spreads this close (in log) to the best one; careful weighing takes a few more. */
const NEAR = 3;
const LIVE = 6;
/** Readings that are tried as wrong beside an odd slit. */
const DOUBTFUL = 6;

const hopeless = (length: number): Float64Array => new Float64Array(length).fill(Number.NEGATIVE_INFINITY);
const both = (length: number): [Float64Array, Float64Array] => [hopeless(length), hopeless(length)];
const sumInto = (into: Float64Array, at: number, log: number): void => {
  into[at] = logAdd(into[at]!, log);
};

/** Everything seen through one spread: all columns (slits, then oddities) with their products with what all fits share. */
type Look = {
  spreading: Spreading;
  yy: number;
  sharedY: Float64Array;
  sharedGram: Float64Array;
  self: Float64Array;
  withY: Float64Array;
  withShared: Float64Array;
};

/** @param y readings, @param shared three columns, @param columns the rest; all along the model's directions */
function look(
  spreading: Spreading,
  n: number,
  y: Float64Array,
  shared: Float64Array,
  columns: Float64Array,
): Look {
  const { weights } = spreading;
  const count = columns.length / n;
  const weighedY = y.map((v, k) => v * weights[k]!);
  const weighed = shared.map((v, k) => v * weights[k % n]!);
  const self = new Float64Array(count);
  const withY = new Float64Array(count);
  const withShared = new Float64Array(count * 3);
  for (let c = 0; c < count; c++) {
    const at = c * n;
    let cc = 0;
    let cy = 0;
    let c0 = 0;
    let c1 = 0;
    let c2 = 0;
    for (let k = 0; k < n; k++) {
      const v = columns[at + k]!;
      cc += v * v * weights[k]!;
      cy += v * weighedY[k]!;
      c0 += v * weighed[k]!;
      c1 += v * weighed[n + k]!;
      c2 += v * weighed[2 * n + k]!;
    }
    self[c] = cc;
    withY[c] = cy;
    withShared[c * 3] = c0;
    withShared[c * 3 + 1] = c1;
    withShared[c * 3 + 2] = c2;
  }
  return {
    spreading,
    yy: dot(y, 0, weighedY, 0, n),
    sharedY: Float64Array.from([0, 1, 2], a => dot(shared, a * n, weighedY, 0, n)),
    sharedGram: Float64Array.from([0, 1, 2, 3, 4, 5, 6, 7, 8], k =>
      dot(shared, Math.floor(k / 3) * n, weighed, (k % 3) * n, n),
    ),
    self,
    withY,
    withShared,
  };
}

/** A fit with the shared columns taken out: products of any two columns less their share in those. */
type Stripped = {
  /** log evidence of the shared columns alone, prior shares of spread and lay in it. */
  start: number;
  even: 0 | 1;
  d: number;
  /** Each column's part along the shared ones, d numbers a column. */
  along: Float64Array;
  self: Float64Array;
  withY: Float64Array;
};

function strip(seen: Look, sds: readonly number[], share: number): Stripped | null {
  const d = sds.length;
  const l = new Float64Array(d * d);
  for (let a = 0; a < d; a++)
    for (let b = 0; b <= a; b++)
      l[a * d + b] = seen.sharedGram[a * 3 + b]! + (a === b ? 1 / sds[a]! ** 2 : 0);
  if (!cholesky(l, d)) return null;
  const alongY = Float64Array.from(sds, (_, a) => seen.sharedY[a]!);
  forwardSolve(l, d, alongY);
  const count = seen.self.length;
  const along = new Float64Array(count * d);
  const self = new Float64Array(count);
  const withY = new Float64Array(count);
  for (let c = 0; c < count; c++) {
    for (let a = 0; a < d; a++) along[c * d + a] = seen.withShared[c * 3 + a]!;
    forwardSolve(l, d, along, c * d);
    self[c] = seen.self[c]! - dot(along, c * d, along, c * d, d);
    withY[c] = seen.withY[c]! - dot(along, c * d, alongY, 0, d);
  }
  const start =
    share -
    seen.spreading.halfLogDet -
    0.5 * (seen.yy - dot(alongY, 0, alongY, 0, d)) -
    halfLogDet(l, d) -
    sds.reduce((sum, sd) => sum + Math.log(sd), 0);
  return { start, even: d === 3 ? 1 : 0, d, along, self, withY };
}

/** What one more column of prior size N(mean, sd²) adds to log evidence; a its square, b its product with the readings. */
const gain = (a: number, b: number, sd: number, mean = 0): number => {
  const p = 1 / sd ** 2;
  const m = b + mean * p;
  return -0.5 * Math.log1p(a * sd * sd) + (0.5 * m * m) / (a + p) - 0.5 * mean * mean * p;
};

/** The same for two columns at once. */
function gainTwo(s: Stripped, a: number, b: number, product: number, sdA: number, sdB: number): number {
  let cross = product;
  for (let k = 0; k < s.d; k++) cross -= s.along[a * s.d + k]! * s.along[b * s.d + k]!;
  const pa = 1 / (sdA * sdA);
  const pb = 1 / (sdB * sdB);
  const aa = s.self[a]! + pa;
  const bb = s.self[b]! + pb;
  const det = aa * bb - cross * cross;
  if (!(det > 0)) return Number.NEGATIVE_INFINITY;
  const ya = s.withY[a]!;
  const yb = s.withY[b]!;
  return -0.5 * Math.log(det / (pa * pb)) + (0.5 * (bb * ya * ya - 2 * cross * ya * yb + aa * yb * yb)) / det;
}

function stripAll(seen: Look, length_mm: number): Stripped[] {
  return [0, 1].flatMap(k => {
    const lay = LAYS[k]!;
    const turn = Math.hypot(lay.turn_mm / length_mm, lay.turn_rad);
    const share = Math.log(LAY_SHARE[k]!) + seen.spreading.spread.prior;
    const sds = [lay.across_mm, turn];
    return [strip(seen, sds, share) ?? [], strip(seen, [...sds, EVEN], share) ?? []].flat();
  });
}

/** The readings as they would be if they grew straight from nothing with the slopes of the shared state. */
function straightReadings(model: SurveyModel, even: Float64Array): Float64Array {
  const { base, survey } = model;
  const { slopes, rigid, even_rad } = base;
  return Float64Array.from(survey.offsets_mm, (o, j) => {
    const known = slopes.byShift[j]! * rigid.y_mm + slopes.byTurn[j]! * rigid.turn_rad + even[j]! * even_rad;
    return o - slopes.offsets[j]! + known;
  });
}

export function scan(model: SurveyModel, missed_rad: number): Scan {
  const { n, slits, base, length_mm } = model;
  const { slopes } = base;
  const even = evenColumn(slopes, n, slits);
  const y = turned(model, straightReadings(model, even));
  const shared = turned(model, Float64Array.from([...slopes.byShift, ...slopes.byTurn, ...even]));
  const { oddities, sds: odditySd } = odditiesOf(model);
  const raw = new Float64Array((slits + oddities.length) * n);
  raw.set(slopes.bySlit);
  oddities.forEach((o, k) => {
    raw.set(oddityColumn(model, o), (slits + k) * n);
  });
  const columns = turned(model, raw);
  const telling = tellingSlits(model);
  const slit = both(slits);
  const missed = both(slits);
  const oddity = both(oddities.length);
  const seen = model.spreadings
    .filter(s => !s.spread.wild)
    .map(spreading => {
      const through = look(spreading, n, y, shared, columns);
      const fits = stripAll(through, length_mm);
      let best = Number.NEGATIVE_INFINITY;
      for (const s of fits) {
        for (const i of telling) {
          const log = s.start + gain(s.self[i]!, s.withY[i]!, ODD_SD);
          best = Math.max(best, log);
          sumInto(slit[s.even], i, log);
          sumInto(missed[s.even], i, s.start + gain(s.self[i]!, s.withY[i]!, MISSED_SD, missed_rad));
        }
        oddities.forEach((_, k) => {
          const log = s.start + gain(s.self[slits + k]!, s.withY[slits + k]!, odditySd[k]!);
          best = Math.max(best, log);
          sumInto(oddity[s.even], k, log);
        });
      }
      return { through, fits, best };
    });
  const top = Math.max(...seen.map(l => l.best));
  const doubtful = mostDoubtful(oddities, oddity);
  const pair = both(slits * slits);
  const readingSlit = both(doubtful.length * slits);
  for (const { through, fits, best } of seen) {
    if (best < top - NEAR) continue;
    const { weights } = through.spreading;
    const weighed = columns.subarray(0, slits * n).map((v, k) => v * weights[k % n]!);
    const product = (slitAt: number, other: number) => dot(weighed, slitAt * n, columns, other * n, n);
    for (const i of telling) {
      for (const k of telling) {
        if (k > i - PAIR_APART) break;
        const p = product(i, k);
        for (const s of fits)
          sumInto(pair[s.even], i * slits + k, s.start + gainTwo(s, i, k, p, ODD_SD, ODD_SD));
      }
      doubtful.forEach((o, k) => {
        const p = product(i, slits + o);
        for (const s of fits)
          sumInto(
            readingSlit[s.even],
            k * slits + i,
            s.start + gainTwo(s, i, slits + o, p, ODD_SD, odditySd[o]!),
          );
      });
    }
  }
  const spreadings = seen.filter(l => l.best >= top - LIVE).map(l => l.through.spreading);
  return { slit, missed, oddity, readingSlit, doubtful, pair, oddities, odditySd, spreadings };
}

function mostDoubtful(oddities: readonly Oddity[], logs: Pairwise): number[] {
  const height = (k: number) => Math.max(logs[0][k]!, logs[1][k]!);
  return [...oddities.keys()]
    .filter(k => oddities[k]!.is === 'reading')
    .sort((a, b) => height(b) - height(a))
    .slice(0, DOUBTFUL);
}

/** Slits that enough stations see from either side, counted from 0. */
function tellingSlits(model: SurveyModel): number[] {
  const { plan, stations_mm } = model.survey;
  return [...plan.slits_mm.keys()].filter(i => {
    const before = stations_mm.filter(s => s <= plan.slits_mm[i]!).length;
    return before >= SEEN_BY && stations_mm.length - before >= SEEN_BY;
  });
}
