import { energyRows, type MemberStiffness, type PlacedMember } from './placed-member.ts';
import { movementsOf, type Unknowns } from './unknowns.ts';

/** Full rows, symmetric to the bit. */
export type Square = readonly Float64Array[];

/** One energy row of one member, at the unknowns it touches. */
export type EnergyRow = Readonly<{ at: readonly number[]; values: readonly number[] }>;

/** Every member's energy rows over the unknowns; held movements fall away. */
export const frameRows = (
  members: readonly PlacedMember[],
  unknowns: Unknowns,
  stiffnessOf: (member: PlacedMember) => MemberStiffness,
): EnergyRow[] =>
  members.flatMap(member => {
    const six = movementsOf(member).map(movement => unknowns.of[movement]!);
    const free = [0, 1, 2, 3, 4, 5].filter(k => six[k]! >= 0);
    return energyRows(member, stiffnessOf(member)).map(row => ({
      at: free.map(k => six[k]!),
      values: free.map(k => row[k]!),
    }));
  });

/** The stiffness over the unknowns: the sum of every row's square. Both halves come from one product, so they agree to the bit. */
export const assemble = (rows: readonly EnergyRow[], count: number): Square => {
  const square = Array.from({ length: count }, () => new Float64Array(count));
  for (const { at, values } of rows) {
    for (let j = 0; j < at.length; j++) {
      for (let k = 0; k < at.length; k++) square[at[j]!]![at[k]!]! += values[j]! * values[k]!;
    }
  }
  return square;
};

/** Scales rows and columns alike by `scale`; the product of the two scales is taken first, so both halves still agree. */
export const scaled = (square: Square, scale: Float64Array): Square =>
  square.map((row, j) => row.map((value, k) => value * (scale[j]! * scale[k]!)));
