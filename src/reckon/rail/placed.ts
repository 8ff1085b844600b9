import { EDGE_LAY, edges, evens, plain } from './candidates.ts';
import {
  EVEN_SD,
  type Hypothesis,
  MISSED_SD,
  MISSED_SHARE,
  ODD_SD,
  type Oddity,
  WEIGHT,
} from './hypotheses.ts';
import type { Pairwise, Scan } from './scan.ts';
import { runWeights, type SurveyModel } from './survey-model.ts';

/** How far behind the best place of its kind, and behind the best of all, a place may be and still be weighed with care, in log. */
const REACH = 7;
const REACH_ALL = 10;

/** A hypothesis and how high the quick look puts it (log of prior × evidence). */
type Rough = Readonly<{ hypothesis: Hypothesis; rough: number }>;
type Odd = Hypothesis['slits'][number];

const odd = (at: number): Odd => ({ at, mean_rad: 0, sd_rad: ODD_SD, truncated: true });
const wide = (even: 0 | 1): number => (even === 0 ? 0 : EVEN_SD[1]);

/** The best few places of a scanned array, at most `most`, none further than `REACH` (in log) from the best. */
function topOf(logs: Float64Array, most: number): number[] {
  const best: number[] = [];
  for (let k = 0; k < logs.length; k++) {
    const log = logs[k]!;
    if (log === Number.NEGATIVE_INFINITY) continue;
    if (best.length === most && log <= logs[best[most - 1]!]!) continue;
    let at = best.length;
    while (at > 0 && logs[best[at - 1]!]! < log) at--;
    best.splice(at, 0, k);
    if (best.length > most) best.pop();
  }
  return best.filter(k => logs[k]! >= logs[best[0]!]! - REACH);
}

/** One odd slit, alone and beside an even error; free in size, or lacking just its planned bend. */
function withOneSlit(
  slits: number,
  logs: Pairwise,
  most: number,
  share: number,
  at: (i: number) => Odd,
): Rough[] {
  const weight = share / slits;
  const alone = topOf(logs[0], most).map(i => {
    const prior = Math.log(WEIGHT.one * weight);
    const hypothesis: Hypothesis = { ...plain, cause: 'one slit', slits: [at(i)], prior };
    return { hypothesis, rough: logs[0][i]! + prior };
  });
  const beside = topOf(logs[1], most).flatMap(i =>
    [
      ...evens('over-curl and one slit', WEIGHT.overOne * weight, 1, { slits: [at(i)] }),
      ...evens('under-curl and one slit', WEIGHT.underOne * weight, -1, { slits: [at(i)] }),
    ].map(hypothesis => ({ hypothesis, rough: logs[1][i]! + hypothesis.prior })),
  );
  return [...alone, ...beside];
}

function withTwoSlits(slits: number, logs: Pairwise): Rough[] {
  if (slits < 2) return [];
  const perPair = 2 / (slits * (slits - 1));
  return ([0, 1] as const).flatMap(even =>
    topOf(logs[even], 8).map(key => {
      const prior = Math.log(WEIGHT.two * perPair * (even === 0 ? 0.7 : 0.3));
      const pair = [odd(key % slits), odd(Math.floor(key / slits))];
      const hypothesis: Hypothesis = {
        ...plain,
        cause: 'two slits',
        slits: pair,
        even_sd: wide(even),
        prior,
      };
      return { hypothesis, rough: logs[even][key]! + prior };
    }),
  );
}

function withOddity(slits: number, looked: Scan): Rough[] {
  const count = (is: Oddity['is']) => looked.oddities.filter(o => o.is === is).length;
  const of = {
    reading: count('reading'),
    jump: count('jump'),
    swing: count('swing'),
    bump: count('bump'),
    run: count('run'),
  };
  const odditySd = (o: number) => looked.odditySd[o]!;
  return ([0, 1] as const).flatMap(even => {
    const base = { ...plain, cause: 'unclear' as const, even_sd: wide(even) };
    const alone = topOf(looked.oddity[even], 6).map(o => {
      const oddity = looked.oddities[o]!;
      const prior = Math.log((WEIGHT[oddity.is] / of[oddity.is]) * 0.5);
      const what =
        oddity.is === 'run'
          ? { patterns: [{ weights: runWeights(oddity, slits), sd_rad: odditySd(o) }] }
          : { oddity, odditySd: odditySd(o) };
      return { hypothesis: { ...base, ...what, prior }, rough: looked.oddity[even][o]! + prior };
    });
    const beside = topOf(looked.readingSlit[even], 4).map(key => {
      const o = looked.doubtful[Math.floor(key / slits)]!;
      const prior = Math.log((WEIGHT.readingSlit / of.reading / slits) * 0.5);
      const what = { oddity: looked.oddities[o]!, odditySd: odditySd(o), slits: [odd(key % slits)] };
      return { hypothesis: { ...base, ...what, prior }, rough: looked.readingSlit[even][key]! + prior };
    });
    return [...alone, ...beside];
  });
}

/** How near a wrong edge's size must be to where the readings put the start of the rail, mm. */
const EDGE_WITHIN = 8;
const EDGE_SLIT_SHARE = 0.05;

/** A rail with an odd slit, read from the wrong edge on top: looked for only where the readings start that far off. */
function withEdge(model: SurveyModel, looked: Scan): Hypothesis[] {
  const { slits, base, survey } = model;
  const near = edges(survey).filter(
    e => e.of !== 'unknown' && Math.abs(e.mm) > EDGE_WITHIN && Math.abs(e.mm - base.rigid.y_mm) < EDGE_WITHIN,
  );
  return near.flatMap(({ share, ...edge }) =>
    ([0, 1] as const).flatMap(even =>
      topOf(looked.slit[even], 2).map(at => ({
        ...plain,
        cause: 'wrong edge' as const,
        edge,
        lays: EDGE_LAY,
        slits: [odd(at)],
        even_sd: wide(even),
        prior: Math.log((WEIGHT.edge * share * EDGE_SLIT_SHARE) / slits),
      })),
    ),
  );
}

/** Hypotheses with a place, chosen by the quick look: those that could be true. */
export function placed(model: SurveyModel, looked: Scan, missed_rad: number): Hypothesis[] {
  const { slits } = model;
  const missed = (at: number): Odd => ({ at, mean_rad: missed_rad, sd_rad: MISSED_SD, truncated: false });
  const found = [
    ...withOneSlit(slits, looked.slit, 5, 1 - MISSED_SHARE, odd),
    ...withOneSlit(slits, looked.missed, 3, MISSED_SHARE, missed),
    ...withTwoSlits(slits, looked.pair),
    ...withOddity(slits, looked),
  ];
  const top = found.reduce((most, f) => Math.max(most, f.rough), Number.NEGATIVE_INFINITY);
  return [
    ...found.filter(f => f.rough >= top - REACH_ALL).map(f => f.hypothesis),
    ...withEdge(model, looked),
  ];
}
