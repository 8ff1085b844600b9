import type { MemberKind } from './frame-builder.ts';
import { railHeightAt, SAME_MM } from './rail-spots.ts';
import type { SideFrameInput } from './side-frame-input.ts';
import { throatShare } from './slit-section.ts';
import type { FrameTube } from './tube-strength.ts';
import type { Governing } from './will-it-hold.ts';

/** What is changed, in numbers; the words are the caller's. */
export type Change =
  | Readonly<{ kind: 'next wall'; of: 'rail' | 'base rail' | 'uprights'; from_mm: number; to_mm: number }>
  /**
   * One or more uprights between those there are, in the middles of flats; low ones are blocks, and where the rail is lower than
   * the base rail's start they are blocks on the ground.
   */
  | Readonly<{ kind: 'closer uprights'; added_x_mm: readonly number[]; clear_mm: readonly number[] }>
  | Readonly<{ kind: 'a diagonal'; base_x_mm: number; rail_x_mm: number }>
  | Readonly<{ kind: 'a tie'; from_x_mm: number; to_x_mm: number; y_mm: number }>
  | Readonly<{ kind: 'a V at the slits' }>
  | Readonly<{ kind: 'slit test piece' }>
  | Readonly<{ kind: 'T test piece' }>;

/** A frame with one change, and the same change taken a step further, if there is more of it. */
export type Changed = Readonly<{
  change: Change;
  input: SideFrameInput;
  further?: (governing: Governing, walls_mm: readonly number[]) => Changed | undefined;
}>;

/** Lowest block worth setting between base rail and rail, clear height in mm, and lowest bay worth a diagonal or a tie [practice]. */
const LEAST_BLOCK_MM = 20;
const LEAST_BAY_MM = 200;

/** Every single change that may help what governs, as far as there is room for it. */
export const changesFor = (
  input: SideFrameInput,
  governing: Governing,
  walls_mm: readonly number[],
): readonly Changed[] =>
  [
    nextWall(input, governing, walls_mm),
    closerUprights(input, governing),
    ...diagonals(input),
    tie(input),
    openedSlits(input),
    input.slitProven || governing.check !== 'weld' || governing.what !== 'slit'
      ? undefined
      : { change: { kind: 'slit test piece' } as const, input: { ...input, slitProven: true } },
    input.jointProven || governing.what !== 'joint'
      ? undefined
      : { change: { kind: 'T test piece' } as const, input: { ...input, jointProven: true } },
  ].filter(change => change !== undefined);

type Thickened = 'rail' | 'base rail' | 'uprights';

const thickened: Readonly<Record<MemberKind | 'slit' | 'lip', Thickened>> = {
  'curved rail': 'rail',
  slit: 'rail',
  lip: 'rail',
  'side plates': 'rail',
  'base rail': 'base rail',
  upright: 'uprights',
  diagonal: 'uprights',
  tie: 'uprights',
};

const nextWall = (
  input: SideFrameInput,
  governing: Governing,
  walls_mm: readonly number[],
  from_mm?: number,
): Changed | undefined => {
  const of = thickened[governing.kind];
  const now =
    of === 'rail' ? input.rail.tube : of === 'base rail' ? input.base.tube : input.uprights[0]?.tube;
  if (now === undefined) return undefined;
  const to_mm = [...walls_mm].sort((a, b) => a - b).find(wall => wall > now.wall_mm + 0.1);
  if (to_mm === undefined || to_mm >= Math.min(now.depth_mm, now.width_mm) / 4) return undefined;
  const thick = (tube: FrameTube): FrameTube => ({ ...tube, wall_mm: Math.max(to_mm, tube.wall_mm) });
  const changed: SideFrameInput =
    of === 'rail'
      ? { ...input, rail: { ...input.rail, tube: thick(input.rail.tube) } }
      : of === 'base rail'
        ? { ...input, base: { ...input.base, tube: thick(input.base.tube) } }
        : {
            ...input,
            uprights: input.uprights.map(one => ({ ...one, tube: thick(one.tube) })),
            diagonals: input.diagonals.map(one => ({ ...one, tube: thick(one.tube) })),
          };
  const start = from_mm ?? now.wall_mm;
  return {
    change: { kind: 'next wall', of, from_mm: start, to_mm },
    input: changed,
    // Once something else governs, more of this wall is no single change any more.
    further: (after, walls) =>
      thickened[after.kind] === of ? nextWall(changed, after, walls, start) : undefined,
  };
};

/** Middles of the flats between slits, where a weld keeps clear of them; anywhere on a rail without slits. */
const seats = ({ rail }: SideFrameInput, from: number, to: number): readonly number[] => {
  const slits = rail.points.filter(({ slit }) => slit === true).map(({ x_mm }) => x_mm);
  if (slits.length === 0) return [(from + to) / 2];
  const ends = [rail.points[0]!.x_mm, ...slits, rail.points.at(-1)!.x_mm];
  return ends
    .slice(1)
    .map((x, k) => (ends[k]! + x) / 2)
    .filter(x => x > from + SAME_MM && x < to - SAME_MM);
};

const standsAt = ({ base, uprights }: SideFrameInput): readonly number[] =>
  [base.from_x_mm, ...uprights.map(({ x_mm }) => x_mm)].sort((a, b) => a - b);

/** Clear height for an upright between the base rail's top and the rail's bottom face, mm. */
const clearAt = ({ rail, base }: SideFrameInput, x: number): number =>
  railHeightAt(rail.points, x) - base.y_mm - (rail.tube.depth_mm + base.tube.depth_mm) / 2;

/** The stand that ends the bay of a place; of two bays that meet at it, the longer. */
const bayOf = (stands: readonly number[], x: number): number => {
  const after = stands.findIndex(stand => stand >= x - SAME_MM);
  const [before, here, beyond] = [stands[after - 1], stands[after], stands[after + 1]];
  const meets = here !== undefined && Math.abs(here - x) < SAME_MM && beyond !== undefined;
  return meets && (before === undefined || beyond - here > here - before) ? after + 1 : after;
};

/** The rail's bottom face over the ground, mm. */
const bottomAt = ({ rail }: SideFrameInput, x: number): number =>
  railHeightAt(rail.points, x) - rail.tube.depth_mm / 2;

const closerUprights = (
  input: SideFrameInput,
  { x_mm }: Governing,
  added: Extract<Change, { kind: 'closer uprights' }> = {
    kind: 'closer uprights',
    added_x_mm: [],
    clear_mm: [],
  },
): Changed | undefined => {
  const entry = input.rail.points[0]!.x_mm;
  const onGround = input.feet.map(foot => foot.x_mm).filter(x => x < input.base.from_x_mm - SAME_MM);
  const stands = [entry, ...onGround, ...standsAt(input)].sort((a, b) => a - b);
  const after = bayOf(stands, x_mm);
  const [from, to] = after > 0 ? [stands[after - 1]!, stands[after]!] : [undefined, undefined];
  const model = input.uprights[0];
  if (from === undefined || to === undefined || model === undefined) return undefined;
  const middle = (from + to) / 2;
  const ground = to <= input.base.from_x_mm + SAME_MM;
  const clear = (x: number) => (ground ? bottomAt(input, x) : clearAt(input, x));
  const seat = seats(input, from + model.tube.depth_mm, to - model.tube.depth_mm)
    .filter(x => clear(x) >= (ground ? 0 : LEAST_BLOCK_MM))
    .sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle))[0];
  if (seat === undefined) return undefined;
  const name = `added ${added.added_x_mm.length + 1}`;
  const change = {
    kind: 'closer uprights',
    added_x_mm: [...added.added_x_mm, seat],
    clear_mm: [...added.clear_mm, clear(seat)],
  } as const;
  const stand = { name, x_mm: seat, tube: model.tube };
  const changed: SideFrameInput = {
    ...input,
    uprights: ground ? input.uprights : [...input.uprights, stand],
    feet: [...input.feet, { name, x_mm: seat, anchored: false }],
  };
  return { change, input: changed, further: governing => closerUprights(changed, governing, change) };
};

const diagonals = (input: SideFrameInput): readonly Changed[] => {
  const stands = standsAt(input);
  const model = input.uprights[0];
  if (model === undefined) return [];
  return stands.slice(1).flatMap((rail_x_mm, k): Changed[] => {
    const base_x_mm = stands[k]!;
    const crossed = input.diagonals.some(one => {
      const middle = (one.base_x_mm + one.rail_x_mm) / 2;
      return middle > base_x_mm && middle < rail_x_mm;
    });
    if (crossed || clearAt(input, rail_x_mm) < LEAST_BAY_MM) return [];
    const one = { name: 'added diagonal', base_x_mm, rail_x_mm, tube: model.tube };
    return [
      {
        change: { kind: 'a diagonal', base_x_mm, rail_x_mm },
        input: { ...input, diagonals: [...input.diagonals, one] },
      },
    ];
  });
};

/** Half-way up between the two last uprights, which are the tallest. */
const tie = (input: SideFrameInput): Changed | undefined => {
  const stands = standsAt(input);
  const [from_x_mm, to_x_mm] = stands.slice(-2);
  const model = input.uprights[0];
  if (from_x_mm === undefined || to_x_mm === undefined || model === undefined || stands.length < 3)
    return undefined;
  const clear = clearAt(input, from_x_mm);
  if (clear < LEAST_BAY_MM) return undefined;
  const y_mm = input.base.y_mm + (input.base.tube.depth_mm + clear) / 2;
  const one = { name: 'added tie', from_x_mm, to_x_mm, y_mm, tube: model.tube };
  return {
    change: { kind: 'a tie', from_x_mm, to_x_mm, y_mm },
    input: { ...input, ties: [...(input.ties ?? []), one] },
  };
};

const openedSlits = (input: SideFrameInput): Changed | undefined => {
  const { rail } = input;
  const slit = rail.points.some(point => point.slit === true);
  if (rail.opened || !slit || throatShare(rail.tube.wall_mm, false) === throatShare(rail.tube.wall_mm, true))
    return undefined;
  return { change: { kind: 'a V at the slits' }, input: { ...input, rail: { ...rail, opened: true } } };
};
