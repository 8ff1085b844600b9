import type { LoadName } from './loads.ts';
import { PER_PIECE, type Response, type Responses } from './responses.ts';
import type { SideFrame } from './side-frame.ts';

/** One arrangement of loads: which, and the place of the wheel when there is one. */
export type Combination = Readonly<{ load: LoadName; place: number | null }>;

/** Which arrays of a response are added up. */
type Part = keyof Response;

type Force = Readonly<{ place: number; right_N: number; up_N: number }>;
type Live = Combination & Readonly<{ forces: readonly Force[] }>;

const add = (sum: Float64Array, more: Float64Array, factor: number): void => {
  if (factor === 0) return;
  for (let k = 0; k < sum.length; k++) sum[k]! += more[k]! * factor;
};

const addForce = (
  sum: Float64Array,
  responses: Responses,
  part: Part,
  { place, right_N, up_N }: Force,
  factor: number,
): void => {
  const right = responses.right[place]![part];
  const up = responses.up[place]![part];
  const [a, b] = [factor * right_N, factor * up_N];
  for (let k = 0; k < sum.length; k++) sum[k]! += a * right[k]! + b * up[k]!;
};

/** L1 square to the deck, L6 with its share along it either way, L2 straight down on the upper half, L3 all over. */
const liveLoads = ({ places, input }: SideFrame): Live[] => {
  const { riding_N, drop_N, along_share, standing_N_mm } = input.loads;
  const half = places.at(-1)!.along_mm / 2;
  const all: Live[] = [];
  for (const [place, { slope_rad, along_mm }] of places.entries()) {
    const [sin, cos] = [Math.sin(slope_rad), Math.cos(slope_rad)];
    const riding = (along: number): Force => ({
      place,
      right_N: riding_N * (sin + along * cos),
      up_N: riding_N * (along * sin - cos),
    });
    all.push({ load: 'L1', place, forces: [riding(0)] });
    if (along_share > 0) {
      all.push({ load: 'L6', place, forces: [riding(along_share)] });
      all.push({ load: 'L6', place, forces: [riding(-along_share)] });
    }
    if (along_mm >= half) all.push({ load: 'L2', place, forces: [{ place, right_N: 0, up_N: -drop_N }] });
  }
  if (standing_N_mm > 0)
    all.push({
      load: 'L3',
      place: null,
      forces: places.map(({ planShare_mm }, place) => ({
        place,
        right_N: 0,
        up_N: -standing_N_mm * planShare_mm,
      })),
    });
  return all;
};

/** What steel and deck weigh down, in one part of the responses. */
export const deadOf = (frame: SideFrame, responses: Responses, part: Part): Float64Array => {
  const sum = Float64Array.from(responses.weight[part]);
  for (const [k, { share_mm }] of frame.places.entries())
    add(sum, responses.up[k]![part], -frame.input.loads.deck_N_mm * share_mm);
  return sum;
};

/**
 * Goes through every arrangement of the loads, each with the dead weight.
 * @param factors on dead weight and on the rest
 * @param part which figures: forces in the pieces, movements of the nodes, or pushes of the feet
 * @param visit is given the arrangement and its figures; the array is used again for the next, so it is not to be kept
 */
export const eachCombination = (
  frame: SideFrame,
  responses: Responses,
  factors: Readonly<{ dead: number; live: number }>,
  part: Part,
  visit: (combination: Combination, figures: Float64Array) => void,
): void => {
  const dead = deadOf(frame, responses, part).map(value => value * factors.dead);
  const figures = new Float64Array(dead.length);
  for (const { load, place, forces } of liveLoads(frame)) {
    figures.set(dead);
    for (const force of forces) addForce(figures, responses, part, force, factors.live);
    visit({ load, place }, figures);
  }
};

/** The figures of piece `k` begin here. */
export const pieceAt = (k: number): number => PER_PIECE * k;
