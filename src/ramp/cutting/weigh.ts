import type { Ramp } from '../ramp.ts';
import type { Order } from './order.ts';
import { isSteel } from './totals.ts';

/** Where the steel of an order goes, kg, and what stands there in the end. */
export type Weights = Readonly<{
  /** Tube and plates of the frame as it is drawn, mitres cut. */
  frame_kg: number;
  /** Entry plate with its bearers. */
  entry_kg: number;
  /** The spare rail, the tenth over and the test pieces. */
  spare_kg: number;
  /** Ends left over, trims, saw cuts, the wedges of mitres: what of the bars is none of those. */
  rest_kg: number;
  /** All bars together. */
  bars_kg: number;
  deck_kg: number;
}>;

/** The masses of an order while nothing is sawn yet; null from the first cut on, when bars are no longer whole. */
export const weigh = (ramp: Ramp, order: Order): Weights | null => {
  const steel = order.sections.filter(isSteel);
  if (steel.some(s => !s.plan.ok || s.worked.some(w => w.sawn.length > 0))) return null;
  // Of a frame begun elsewhere some is sawn that these bars never held.
  const listed = new Set(steel.flatMap(s => s.bars.flatMap(b => b.cuts.map(c => c.piece.need))));
  if (ramp.members.some(m => !listed.has(m.need))) return null;
  const { frame_kg, entry_kg, deck_kg } = ramp.masses;
  const sum = (values: readonly number[]): number => values.reduce((a, v) => a + v, 0);
  const bars_kg = sum(steel.flatMap(s => s.bars.map(b => b.kg)));
  const spare_kg = sum(
    steel.flatMap(s =>
      s.bars.flatMap(b =>
        b.cuts.filter(c => c.piece.when === 'spare').map(c => (c.piece.long_mm / 1000) * s.section.kgPerM),
      ),
    ),
  );
  return {
    frame_kg,
    entry_kg,
    spare_kg,
    rest_kg: bars_kg - frame_kg - entry_kg - spare_kg,
    bars_kg,
    deck_kg,
  };
};
