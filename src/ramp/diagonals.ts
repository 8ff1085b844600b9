import type { Spot } from './curve.ts';
import type { Member } from './member.ts';
import type { RailPlan } from './rail-plan.ts';
import type { Design } from './settle.ts';

/** An upright's top: the flat it stands on, −1 for the lip upright. */
export type Top = Readonly<{ k: number; spot: Spot }>;

/**
 * A diagonal rises toward the lip in every bay tall enough: from the foot of the lower upright to the rail at the taller one.
 * @param tops from the lip down
 */
export const diagonals = (d: Design, { rail }: RailPlan, tops: readonly Top[]): readonly Member[] => {
  const members: Member[] = [];
  for (let i = 0; i + 1 < tops.length; i++) {
    const tall = tops[i];
    const low = tops[i + 1];
    if (tall === undefined || low === undefined) continue;
    const clear = (tall.spot.y + low.spot.y) / 2 - d.tube.depth_mm;
    if (clear < d.diagonals) continue;
    const b = d.post.depth_mm;
    const x0 = low.spot.x + b;
    const x1 = tall.spot.x - b;
    const y1 = tall.spot.y - b * Math.tan(tall.spot.slope) - d.tube.depth_mm;
    const length = Math.hypot(x1 - x0, y1);
    const beta = Math.atan2(y1, x1 - x0);
    const baseCut = Math.PI / 2 - beta;
    const railCut = Math.PI / 2 - (beta - tall.spot.slope);
    const lean = (b / 2) * (Math.abs(Math.tan(baseCut)) + Math.abs(Math.tan(railCut)));
    members.push({
      need: `diagonal@${rail}:${tall.k < 0 ? 'lip' : tall.k}`,
      kind: 'diagonal',
      rail,
      ...(tall.k < 0 ? {} : { flat: tall.k }),
      tube: d.post,
      long_mm: length + lean,
      short_mm: Math.max(0, length - lean),
      ends: { first_rad: baseCut, second_rad: railCut },
      line: { face: 'rail bottom face', rail },
      when: 'later',
      x_mm: (x0 + x1) / 2,
      vents: 1,
      drains: 0,
      joints: 2,
    });
  }
  return members;
};
