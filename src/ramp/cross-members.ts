import { baseRearX, baseStartX } from './base-ends.ts';
import { SHEET_SUPPORT_LEAST, SHEET_SUPPORT_MOST } from './deck.ts';
import type { LineRef, RailName } from './design.ts';
import { type Member, square } from './member.ts';
import { clearWidth } from './rail-count.ts';
import type { RailPlan } from './rail-plan.ts';
import type { RailShape } from './rail-shape.ts';
import { BRACED_BAY, type Design } from './settle.ts';
import { clearStand, lipStand, type Stand } from './uprights.ts';

/** Flats that carry a crossmember between the rails, from the entry up. */
export const crossFlats = (d: Design, plan: RailPlan): readonly number[] => {
  const last = plan.flats_mm.length - 1;
  // Boards carry themselves from rail to rail: crossmembers only keep the rails apart, every third of the length.
  const most = d.deck.kind === 'sheet' ? SHEET_SUPPORT_MOST : plan.toLip_mm / 3;
  const flats: number[] = [];
  let from = 0;
  for (let k = 1; k < last; k++) {
    const here = plan.flats_mm[k] ?? 0;
    const next = plan.flats_mm[k + 1] ?? plan.toLip_mm;
    if (next - from > most && here - from > Math.min(SHEET_SUPPORT_LEAST, most) / 2) {
      flats.push(k);
      from = here;
    }
  }
  return flats;
};

/** Ends of the rails are held too: a post's depth in, else flush with the end, else on the next flat, clear of slits. */
const endStands = (d: Design, plan: RailPlan): { entry: Stand; lip: Stand } => {
  const half = d.post.depth_mm / 2;
  const last = plan.flats_mm.length - 1;
  const end = plan.toLip_mm;
  return {
    entry: clearStand(plan, half, [2 * half, half], 1),
    lip: clearStand(plan, half, [end - 2 * half, end - half], last - 1),
  };
};

/** What joins the sides: crossmembers under the deck, base crossmembers, a diagonal across the rear. */
export const crossMembers = (
  d: Design,
  plan: RailPlan,
  shape: RailShape,
  rails: readonly RailName[],
): Member[] => {
  const clear = clearWidth(d);
  const members: Member[] = [];
  const front = baseStartX(d);
  const lip = shape.bottomAt(lipStand(d, plan).along_mm);
  const rear = baseRearX(d, plan, shape) - d.post.depth_mm / 2;
  for (let i = 0; i + 1 < rails.length; i++) {
    const pair = `${rails[i]}-${rails[i + 1]}`;
    const lines: LineRef = { face: 'rail top face' };
    const ends = endStands(d, plan);
    const flats = crossFlats(d, plan).filter(k => k !== ends.entry.flat && k !== ends.lip.flat);
    const spots: [string, number, number | undefined][] = [
      ['entry', ends.entry.along_mm, ends.entry.flat],
      ...flats.map((k): [string, number, number] => [String(k), plan.flats_mm[k] ?? 0, k]),
      ['lip', ends.lip.along_mm, ends.lip.flat],
    ];
    for (const [name, along, flat] of spots) {
      members.push(
        square(`crossmember@${pair}:${name}`, 'crossmember', d.post, clear, shape.bottomAt(along).x, {
          line: lines,
          along_mm: along,
          ...(flat === undefined ? {} : { flat }),
        }),
      );
    }
    const bases: [string, number][] = [
      ['front', front + 60],
      ...(rear - front > 900 ? ([['middle', (front + rear) / 2]] as [string, number][]) : []),
      ['rear', rear],
    ];
    for (const [name, x] of bases) {
      members.push(square(`base crossmember@${pair}:${name}`, 'base crossmember', d.post, clear, x));
    }
    const tall = lip.y - 2 * d.tube.depth_mm;
    if (tall > BRACED_BAY) {
      const beta = Math.atan2(tall, clear);
      const length = Math.hypot(clear, tall);
      // Corner to corner along its lower side; both mitres are taken off the upper one.
      const lean = d.post.depth_mm * (Math.tan(beta) + 1 / Math.tan(beta));
      members.push({
        ...square(`rear diagonal@${pair}`, 'rear diagonal', d.post, length, lip.x),
        short_mm: Math.max(0, length - lean),
        ends: { first_rad: beta, second_rad: Math.PI / 2 - beta },
      });
    }
  }
  return members;
};
