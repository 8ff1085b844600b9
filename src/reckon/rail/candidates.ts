import type { Cause, EdgeName, RailSurvey } from './diagnosis.ts';
import {
  EVEN_SD,
  EVEN_SHARE,
  type Hypothesis,
  LAY_SHARE,
  LAYS,
  MISSED_SD,
  MISSED_SHARE,
  ODD_SD,
  type Oddity,
  WEIGHT,
} from './hypotheses.ts';
import type { Scan } from './scan.ts';
import type { SurveyModel } from './survey-model.ts';

const [TRUE, ASKEW, FAR] = LAYS as readonly [(typeof LAYS)[0], (typeof LAYS)[0], (typeof LAYS)[0]];
const ANY_LAY = LAYS.map((lay, k) => ({ lay, share: LAY_SHARE[k]! }));

/** Beside a wrong edge the rail is taken to lie nearly where it should: two unknown shifts cannot be told apart. */
const EDGE_LAY = [
  { lay: TRUE, share: 0.55 },
  { lay: { name: 'askew' as const, across_mm: 3, turn_mm: 3, turn_rad: 0.002 }, share: 0.45 },
];

const plain = {
  lays: ANY_LAY,
  even_sd: 0,
  sign: 0,
  slits: [],
  edge: null,
  oddity: null,
  odditySd: 0,
  smooth: false,
  wild: false,
} as const;

/** How far behind the best place of its kind a place may be and still be weighed with care, in log. */
const REACH = 7;

type Odd = Hypothesis['slits'][number];
const odd = (at: number): Odd => ({ at, mean_rad: 0, sd_rad: ODD_SD, truncated: true });

/** An even error of one side, once for each of its two prior sizes. */
const evens = (cause: Cause, weight: number, sign: 1 | -1, rest: Partial<Hypothesis> = {}): Hypothesis[] =>
  EVEN_SD.map((even_sd, k) => ({
    ...plain,
    ...rest,
    cause,
    even_sd,
    sign,
    prior: Math.log(weight * EVEN_SHARE[k]!),
  }));

/** The constants that a wrong edge would add, of the sizes that are known; either way round. */
function edges(survey: RailSurvey): (NonNullable<Hypothesis['edge']> & { share: number })[] {
  const { depth_mm: depth, deck_mm: deck, wall_mm: wall } = survey;
  const sizes: [EdgeName, number, number][] = [];
  if (depth !== undefined) sizes.push(['depth', depth, 0.3]);
  if (deck !== undefined) sizes.push(['deck', deck, 0.25]);
  if (wall !== undefined) sizes.push(['wall', wall, 0.18]);
  if (deck !== undefined && depth !== undefined) sizes.push(['deck and depth', deck + depth, 0.1]);
  if (depth !== undefined && wall !== undefined) {
    sizes.push(['back wall', depth - wall / 2, 0.075]);
    if (deck !== undefined) sizes.push(['deck and back wall', deck + depth - wall / 2, 0.025]);
  }
  const known = sizes
    .filter(([, mm]) => mm > 0)
    .flatMap(([of, mm, share]) =>
      [1, -1].map(way => ({ of, mm: way * mm, sd_mm: 0.3, least_mm: 0, share: share / 2 })),
    );
  // A size nobody gave can only be seen as "the same all along"; without a depth it is the one way to see it.
  return [
    ...known,
    { of: 'unknown', mm: 0, sd_mm: 40, least_mm: 8, share: depth === undefined ? 0.1 : 0.003 },
  ];
}

/** Hypotheses without a place along the rail: all are weighed with care. */
export function placeless(model: SurveyModel): Hypothesis[] {
  const edge = edges(model.survey).flatMap(({ share, ...e }): Hypothesis[] => {
    const one = { ...plain, cause: 'wrong edge' as const, edge: e, lays: EDGE_LAY };
    return [
      { ...one, prior: Math.log(WEIGHT.edge * share * 0.9) },
      { ...one, prior: Math.log(WEIGHT.edge * share * 0.1), even_sd: EVEN_SD[1] },
    ];
  });
  return [
    { ...plain, cause: 'on the line', lays: [{ lay: TRUE, share: 1 }], prior: Math.log(WEIGHT.line) },
    {
      ...plain,
      cause: 'laid askew',
      lays: [
        { lay: ASKEW, share: 0.8 },
        { lay: FAR, share: 0.2 },
      ],
      prior: Math.log(WEIGHT.askew),
    },
    ...edge,
    ...evens('over-curl', WEIGHT.over, 1),
    ...evens('under-curl', WEIGHT.under, -1),
    { ...plain, cause: 'unclear', even_sd: EVEN_SD[1], smooth: true, prior: Math.log(WEIGHT.smooth) },
    { ...plain, cause: 'unclear', even_sd: EVEN_SD[1], wild: true, prior: Math.log(WEIGHT.wild) },
  ];
}

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

/** Hypotheses with a place, chosen by the quick look: those that could be true. */
export function placed(model: SurveyModel, looked: Scan, missed_rad: number): Hypothesis[] {
  const { slits } = model;
  const found: Hypothesis[] = [];
  const perSlit = 1 / slits;
  const missed = (at: number): Odd => ({ at, mean_rad: missed_rad, sd_rad: MISSED_SD, truncated: false });
  const free = 1 - MISSED_SHARE;
  for (const at of topOf(looked.slit[0], 5))
    found.push({
      ...plain,
      cause: 'one slit',
      slits: [odd(at)],
      prior: Math.log(WEIGHT.one * free * perSlit),
    });
  for (const at of topOf(looked.missed[0], 3))
    found.push({
      ...plain,
      cause: 'one slit',
      slits: [missed(at)],
      prior: Math.log(WEIGHT.one * MISSED_SHARE * perSlit),
    });
  for (const at of topOf(looked.slit[1], 5)) {
    found.push(...evens('over-curl and one slit', WEIGHT.overOne * free * perSlit, 1, { slits: [odd(at)] }));
    found.push(
      ...evens('under-curl and one slit', WEIGHT.underOne * free * perSlit, -1, { slits: [odd(at)] }),
    );
  }
  for (const at of topOf(looked.missed[1], 3)) {
    found.push(
      ...evens('over-curl and one slit', WEIGHT.overOne * MISSED_SHARE * perSlit, 1, { slits: [missed(at)] }),
    );
    found.push(
      ...evens('under-curl and one slit', WEIGHT.underOne * MISSED_SHARE * perSlit, -1, {
        slits: [missed(at)],
      }),
    );
  }
  if (slits >= 2) {
    const perPair = 2 / (slits * (slits - 1));
    for (const even of [0, 1] as const)
      for (const key of topOf(looked.pair[even], 8)) {
        const [a, b] = [Math.floor(key / slits), key % slits];
        found.push({
          ...plain,
          cause: 'two slits',
          slits: [odd(b), odd(a)],
          even_sd: even === 0 ? 0 : EVEN_SD[1],
          prior: Math.log(WEIGHT.two * perPair * (even === 0 ? 0.7 : 0.3)),
        });
      }
  }
  const of = (is: Oddity['is']) => looked.oddities.filter(o => o.is === is).length;
  const weights = { reading: WEIGHT.reading, jump: WEIGHT.jump, bump: WEIGHT.bump };
  for (const even of [0, 1] as const) {
    for (const o of topOf(looked.oddity[even], 6)) {
      const oddity = looked.oddities[o]!;
      found.push({
        ...plain,
        cause: 'unclear',
        oddity,
        odditySd: looked.odditySd[o]!,
        even_sd: even === 0 ? 0 : EVEN_SD[1],
        prior: Math.log((weights[oddity.is] / of(oddity.is)) * 0.5),
      });
    }
    for (const key of topOf(looked.readingSlit[even], 4)) {
      const [o, at] = [looked.doubtful[Math.floor(key / slits)]!, key % slits];
      found.push({
        ...plain,
        cause: 'unclear',
        oddity: looked.oddities[o]!,
        odditySd: looked.odditySd[o]!,
        slits: [odd(at)],
        even_sd: even === 0 ? 0 : EVEN_SD[1],
        prior: Math.log((WEIGHT.readingSlit / of('reading')) * perSlit * 0.5),
      });
    }
  }
  return found;
}
