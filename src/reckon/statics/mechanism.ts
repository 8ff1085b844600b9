import { factorSquare } from './factor.ts';
import { evenStiffness, type PlacedMember } from './placed-member.ts';
import { assemble, type EnergyRow, frameRows, scaled } from './stiffness.ts';
import type { Unknowns } from './unknowns.ts';

/** Above this least pivot a frame surely stands; below it the least eigenvalue is asked. */
const SURE_PIVOT = 1e-8;
/** Below this least eigenvalue (unit diagonal) nothing resists the movement. */
const MOVES_EIGENVALUE = 1e-13;
/** Added to the diagonal so that a frame that moves can be factored too; well under any eigenvalue of one that stands. */
const SHIFT = 1e-12;
/** Each round divides the other modes by twenty or more. */
const ROUNDS = 14;

/** The node that moves most, and the direction it goes (unit vector). */
export type FreeMovement = Readonly<{ node: number; x: number; y: number }>;

/**
 * Whether a frame can move without straining any member, and which node then moves most; null when it stands.
 * That is a matter of geometry, hinges and supports alone, so every member is taken equally stiff:
 * a soft member never looks like a missing one.
 */
export const findFreeMovement = async (
  members: readonly PlacedMember[],
  unknowns: Unknowns,
): Promise<FreeMovement | null> => {
  const count = unknowns.movements.length;
  const rows = frameRows(members, unknowns, evenStiffness);
  const square = assemble(rows, count);
  const scale = nodeScale(square, unknowns);
  const loose = scale.findIndex(value => !Number.isFinite(value));
  if (loose >= 0) return alone(unknowns.movements[loose]!);

  const even = scaled(square, scale);
  const factor = await factorSquare(even);
  if (factor !== null && factor.leastPivot >= SURE_PIVOT) return null;
  const { mode, eigenvalue } = await softestMode(even, rows, scale);
  return eigenvalue < MOVES_EIGENVALUE ? farthest(mode, scale, unknowns) : null;
};

/** A node without members: it goes wherever it is not held. */
const alone = (movement: number): FreeMovement => {
  const up = movement % 3 === 1;
  return { node: Math.floor(movement / 3), x: up ? 0 : 1, y: up ? 1 : 0 };
};

/**
 * A node's x and y are scaled alike. Scaled each by itself, a rounding of 1e-17 in the direction of an upright bar would grow
 * to a full resistance across it.
 */
const nodeScale = (square: readonly Float64Array[], unknowns: Unknowns): Float64Array => {
  const diagonal = (movement: number) => {
    const unknown = unknowns.of[movement]!;
    return unknown < 0 ? 0 : square[unknown]![unknown]!;
  };
  return Float64Array.from(unknowns.movements, movement => {
    if (movement % 3 === 2) return 1 / Math.sqrt(diagonal(movement));
    const x = movement - (movement % 3);
    return 1 / Math.sqrt(Math.max(diagonal(x), diagonal(x + 1)));
  });
};

/** Least eigenvalue and its mode by inverse iteration; the eigenvalue is the strain energy of the mode, free of cancellation. */
const softestMode = async (
  even: readonly Float64Array[],
  rows: readonly EnergyRow[],
  scale: Float64Array,
): Promise<{ mode: Float64Array; eigenvalue: number }> => {
  const shifted = even.map((row, k) =>
    Float64Array.from(row, (value, j) => (j === k ? value + SHIFT : value)),
  );
  const factor = await factorSquare(shifted);
  if (factor === null) throw new Error('a shifted stiffness is positive definite');
  // Any start that no mode is square to will do; the golden section never repeats.
  let mode = Float64Array.from(scale, (_, k) => ((k + 1) * 0.618_033_988_749_895) % 1);
  for (let round = 0; round < ROUNDS; round++) {
    const next = factor.solve(mode);
    const size = Math.hypot(...next);
    mode = next.map(value => value / size);
  }
  const energy = rows.reduce((sum, { at, values }) => {
    const strain = at.reduce((part, unknown, k) => part + values[k]! * scale[unknown]! * mode[unknown]!, 0);
    return sum + strain ** 2;
  }, 0);
  return { mode, eigenvalue: energy };
};

const farthest = (mode: Float64Array, scale: Float64Array, unknowns: Unknowns): FreeMovement => {
  const moved = (movement: number) => {
    const unknown = unknowns.of[movement]!;
    return unknown < 0 ? 0 : mode[unknown]! * scale[unknown]!;
  };
  const nodes = Array.from({ length: unknowns.of.length / 3 }, (_, node) => {
    const x = moved(3 * node);
    const y = moved(3 * node + 1);
    return { node, x, y, far: Math.hypot(x, y) };
  });
  const { node, x, y, far } = nodes.reduce((most, next) => (next.far > most.far ? next : most));
  return { node, x: x / far, y: y / far };
};
