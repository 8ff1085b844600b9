import type { Cause, EdgeName, RailSurvey } from './diagnosis.ts';
import {
  EVEN_SD,
  EVEN_SHARE,
  type Hypothesis,
  LAY_SHARE,
  LAYS,
  SMOOTH_SD,
  SMOOTH_WAVES,
  WEIGHT,
} from './hypotheses.ts';
import type { SurveyModel } from './survey-model.ts';

const [TRUE, ASKEW, FAR] = LAYS as readonly [(typeof LAYS)[0], (typeof LAYS)[0], (typeof LAYS)[0]];
const ANY_LAY = LAYS.map((lay, k) => ({ lay, share: LAY_SHARE[k]! }));

/** Beside a wrong edge the rail is taken to lie nearly where it should: two unknown shifts cannot be told apart. */
export const EDGE_LAY = [
  { lay: TRUE, share: 0.55 },
  { lay: { name: 'askew' as const, across_mm: 3, turn_mm: 3, turn_rad: 0.002 }, share: 0.45 },
];

/** Share of the rails read from a wrong edge that are curled evenly on top. */
const EVEN_TOO = 0.25;

export const plain = {
  lays: ANY_LAY,
  even_sd: 0,
  sign: 0,
  slits: [],
  edge: null,
  oddity: null,
  odditySd: 0,
  patterns: [],
  wild: false,
} as const;

/** An even error of one side, once for each of its two prior sizes. */
export const evens = (
  cause: Cause,
  weight: number,
  sign: 1 | -1,
  rest: Partial<Hypothesis> = {},
): Hypothesis[] =>
  EVEN_SD.map((even_sd, k) => ({
    ...plain,
    ...rest,
    cause,
    even_sd,
    sign,
    prior: Math.log(weight * EVEN_SHARE[k]!),
  }));

/** The constants that a wrong edge would add, of the sizes that are known; either way round. */
export function edges(survey: RailSurvey): (NonNullable<Hypothesis['edge']> & { share: number })[] {
  const { depth_mm: depth, deck_mm: deck, wall_mm: wall } = survey;
  const sizes: [EdgeName, number, number][] = [];
  if (depth !== undefined) sizes.push(['depth', depth, 0.35]);
  if (deck !== undefined) sizes.push(['deck', deck, 0.3]);
  // The inside of a wall is hard to reach, and a rail laid that much off is no rare thing.
  if (wall !== undefined) sizes.push(['wall', wall, 0.08]);
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

/** Smooth unevenness: four waves of error along the rail, each smaller than the last. */
const smoothPatterns = (slits: number): Hypothesis['patterns'] =>
  Array.from({ length: SMOOTH_WAVES }, (_, wave) => ({
    weights: Array.from({ length: slits }, (_w, i) => Math.cos((Math.PI * (wave + 1) * (i + 0.5)) / slits)),
    sd_rad: SMOOTH_SD / (1 + wave / 2),
  }));

/** Hypotheses without a place along the rail: all are weighed with care. */
export function placeless(model: SurveyModel): Hypothesis[] {
  const edge = edges(model.survey).flatMap(({ share, ...e }): Hypothesis[] => {
    const one = { ...plain, cause: 'wrong edge' as const, edge: e, lays: EDGE_LAY };
    return [
      { ...one, prior: Math.log(WEIGHT.edge * share * (1 - EVEN_TOO)) },
      { ...one, prior: Math.log(WEIGHT.edge * share * EVEN_TOO), even_sd: EVEN_SD[1] },
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
    {
      ...plain,
      cause: 'unclear',
      even_sd: EVEN_SD[1],
      patterns: smoothPatterns(model.slits),
      prior: Math.log(WEIGHT.smooth),
    },
    { ...plain, cause: 'unclear', even_sd: EVEN_SD[1], wild: true, prior: Math.log(WEIGHT.wild) },
  ];
}
