import type { RailPlan, SlitSpot } from '../../ramp/rail-plan.ts';

/** How far a slit rail would lie off its line: the farthest flat, and the last, mm; + toward the centre (it curls too much). */
export type Run = Readonly<{ worst_mm: number; lip_mm: number }>;

/**
 * Where the flats of a rail come to lie when each slit closes as said and its weld has pulled: offsets of their middles from
 * the back wall's circle, with the entry end held on its line (derived: a chain of straight flats about the slits).
 * @param plan the rail's plan
 * @param closeOf closing of a slit before welding, rad
 * @param extra slits beyond the plan's, back-wall place mm and closing rad
 */
export const railRun = (
  plan: RailPlan,
  closeOf: (slit: SlitSpot) => number,
  extra: readonly { at_mm: number; close_rad: number }[] = [],
): Run => {
  const radius = plan.bend_mm / plan.turn_rad;
  const turns = [
    ...plan.slits.map(slit => ({ at_mm: slit.at_mm, turn: closeOf(slit) + plan.pull.rad })),
    ...extra.map(e => ({ at_mm: e.at_mm, turn: e.close_rad + plan.pull.rad })),
  ].sort((a, b) => a.at_mm - b.at_mm);
  let [x, y, heading, at] = [0, 0, 0, 0];
  let worst_mm = 0;
  let lip_mm = 0;
  const goTo = (next: number): void => {
    x += (next - at) * Math.cos(heading);
    y += (next - at) * Math.sin(heading);
    at = next;
  };
  const read = (): void => {
    lip_mm = radius - Math.hypot(x, radius - y);
    if (Math.abs(lip_mm) > Math.abs(worst_mm)) worst_mm = lip_mm;
  };
  turns.forEach(({ at_mm, turn }, i) => {
    goTo(at_mm);
    heading += turn;
    const next = turns[i + 1]?.at_mm;
    goTo(next === undefined ? plan.bend_mm : (at_mm + next) / 2);
    read();
  });
  return { worst_mm, lip_mm };
};

/** Largest smooth offset of a rail that is left alone, mm: 4 for a novice, 2 in a careful shop (common practice). */
export const RAIL_LIMIT = { novice: 4, 'careful shop': 2 } as const;
