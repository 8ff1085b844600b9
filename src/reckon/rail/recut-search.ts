import { dot, solveSmall } from './dense.ts';
import { minimax } from './minimax.ts';
import type { RigidFit } from './rigid.ts';

/** A rail to be brought to its line, as the search sees it. Rows are the stations and then the places between them. */
export type Shaping = Readonly<{
  /** Slits that may be re-cut, counted from 0, rising. */
  slits: readonly number[];
  /** Slits that the diagnosis found odd, the worst first. */
  odd: readonly number[];
  /** All slits. */
  count: number;
  most: number;
  tolerance_mm: number;
  /** Turns that bring every slit half way to its plan: slopes there serve the whole way, rad. */
  half: readonly number[];
  /** Bounds on the turn of one slit, rad. */
  low: number;
  high: number;
  /** Readings with their own sag off, mm. */
  raw_mm: readonly number[];
  lay: (offsets: readonly number[]) => RigidFit;
  /** What is left after turning slits (all of them, 0 where none), exactly, laid at its best, mm. */
  rows: (turns: readonly number[]) => Float64Array;
  /** What each slit's turn adds to the rows there, laid at its best, mm per rad. */
  columns: (turns: readonly number[]) => readonly Float64Array[];
  stations: number;
}>;

export type Found = Readonly<{
  slits: readonly number[];
  turns: readonly number[];
  worst_mm: number;
  left_mm: readonly number[];
}>;

/** Sets that are tried exactly for each number of cuts. */
const TRIED = 4;
/** Rounds of taking slopes anew on the way to the exact answer. */
const EXACT = 2;
/** Pairs are gone through one by one up to this many slits; beyond, by swaps. */
const PAIRS = 90;

type Draft = { slits: number[]; height: number };

/** The fewest slits that do, or the best that can be had; null when no slit may be touched. */
export function searchSlits(s: Shaping): Found | null {
  if (s.slits.length === 0) return null;
  const quick = quickFit(s);
  let best: Found | null = null;
  let last: Draft[] = [];
  const most = Math.min(s.most, s.slits.length);
  for (let m = 1; m <= most; m++) {
    // A named slit is what went wrong: when it alone does, no neighbour that does a hair better is sawn instead.
    if (m === s.odd.length) {
      const odd = exactly(s, s.odd);
      if (odd.worst_mm <= s.tolerance_mm) return odd;
    }
    last = drafts(s, quick, m, last);
    for (const { slits } of last.slice(0, TRIED)) {
      const found = exactly(s, slits);
      if (best === null || found.worst_mm < best.worst_mm - 0.01) best = found;
    }
    if (best !== null && best.worst_mm <= s.tolerance_mm) return best;
  }
  return best;
}

/** Turns for a set of slits: minimax on slopes half way to the answer, checked on the exact shape. */
function exactly(s: Shaping, slits: readonly number[]): Found {
  const low = slits.map(() => s.low);
  const high = slits.map(() => s.high);
  const spread = (turns: ArrayLike<number>, share = 1) => {
    const all = new Array<number>(s.count).fill(0);
    slits.forEach((i, k) => {
      all[i] = share * turns[k]!;
    });
    return all;
  };
  const rest = s.rows([]);
  let turns: Float64Array = new Float64Array(slits.length);
  for (let round = 0; round < EXACT; round++) {
    const columns = s.columns(spread(turns, 0.5));
    turns = minimax(
      rest,
      slits.map(i => columns[i]!),
      low,
      high,
    ).values;
  }
  const left_mm = [...s.rows(spread(turns))].slice(0, s.stations);
  const worst_mm = left_mm.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  return { slits: [...slits], turns: [...turns], worst_mm, left_mm };
}

/** Least squares for a set of slits in a few hundred products: how high the rows stand after it. */
type Quick = { height: (slits: readonly number[]) => number };

function quickFit(s: Shaping): Quick {
  const rest = s.rows([]);
  const columns = s.columns(s.half);
  const n = rest.length;
  const by = columns.map(c => -dot(c, 0, rest, 0, n));
  const gram = new Map<number, number>();
  const product = (i: number, k: number) => {
    const key = i < k ? i * s.count + k : k * s.count + i;
    let v = gram.get(key);
    if (v === undefined) {
      v = dot(columns[i]!, 0, columns[k]!, 0, n);
      gram.set(key, v);
    }
    return v;
  };
  const height = (slits: readonly number[]) => {
    const m = slits.length;
    const a = new Float64Array(m * m);
    const b = new Float64Array(m);
    slits.forEach((i, p) => {
      b[p] = by[i]!;
      for (let q = 0; q <= p; q++) a[p * m + q] = product(i, slits[q]!);
      a[p * m + p]! *= 1 + 1e-9;
    });
    const turns = solveSmall(a, b);
    if (turns === null) return Number.POSITIVE_INFINITY;
    for (let p = 0; p < m; p++) turns[p] = Math.min(Math.max(turns[p]!, s.low), s.high);
    let height = 0;
    for (let j = 0; j < n; j++) {
      let v = rest[j]!;
      for (let p = 0; p < m; p++) v += columns[slits[p]!]![j]! * turns[p]!;
      if (v > height) height = v;
      else if (-v > height) height = -v;
    }
    return height;
  };
  return { height };
}

/** The likeliest sets of m slits, the best first. */
function drafts(s: Shaping, quick: Quick, m: number, fewer: readonly Draft[]): Draft[] {
  const found: Draft[] = [];
  const add = (slits: readonly number[]) => {
    const set = [...new Set(slits)].sort((a, b) => a - b);
    if (set.length !== m || found.some(f => f.slits.every((i, k) => i === set[k]))) return;
    found.push({ slits: set, height: quick.height(set) });
  };
  if (m === 1) for (const i of s.slits) add([i]);
  else if (m === 2 && s.slits.length <= PAIRS) {
    const heights: Draft[] = [];
    s.slits.forEach((i, p) => {
      for (const k of s.slits.slice(0, p)) heights.push({ slits: [k, i], height: quick.height([k, i]) });
    });
    heights.sort((a, b) => a.height - b.height);
    found.push(...heights.slice(0, TRIED));
  } else {
    for (const shift of [0, -0.25, 0.25]) add(even(s, m, shift));
    if (s.odd.length > 0 && s.odd.length < m) add([...s.odd, ...even(s, m - s.odd.length, 0)]);
    const before = fewer[0]?.slits ?? [];
    for (const i of bestAdded(s, quick, before).slice(0, 2)) add([...before, i]);
    for (const draft of [...found]) {
      const better = swapped(s, quick, draft);
      add(better.slits);
    }
  }
  return found.sort((a, b) => a.height - b.height);
}

/** m slits evenly spaced over those that may be touched, the whole row moved by a share of its spacing. */
function even(s: Shaping, m: number, shift: number): number[] {
  const n = s.slits.length;
  return Array.from({ length: m }, (_, k) => {
    const at = Math.round(((k + 0.5 + shift) * n) / m - 0.5);
    return s.slits[Math.min(Math.max(at, 0), n - 1)]!;
  });
}

function bestAdded(s: Shaping, quick: Quick, before: readonly number[]): number[] {
  const free = s.slits.filter(i => !before.includes(i));
  const heights = new Map(free.map(i => [i, quick.height([...before, i])]));
  return free.sort((a, b) => heights.get(a)! - heights.get(b)!);
}

/** Moves one slit of the set at a time, near ones first, for as long as that brings the rows down. */
function swapped(s: Shaping, quick: Quick, start: Draft): Draft {
  let now = start;
  const steps = [1, -1, 2, -2, 4, -4];
  for (let round = 0; round < 12; round++) {
    let better: Draft | null = null;
    now.slits.forEach((slit, k) => {
      const at = s.slits.indexOf(slit);
      for (const step of steps) {
        const other = s.slits[at + step];
        if (other === undefined || now.slits.includes(other)) continue;
        const slits = now.slits.with(k, other);
        const height = quick.height(slits);
        if (height < (better?.height ?? now.height) - 1e-6) better = { slits, height };
      }
    });
    if (better === null) break;
    now = better;
  }
  return now;
}
