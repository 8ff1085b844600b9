import { baseRearX, baseStartX } from './base-ends.ts';
import { diagonals } from './diagonals.ts';
import type { Member } from './member.ts';
import type { RailPlan } from './rail-plan.ts';
import type { RailShape } from './rail-shape.ts';
import type { Design } from './settle.ts';
import { lipStand, upright, uprightFlats } from './uprights.ts';

/** Rail, base rail, uprights and diagonals of one side, each to its own shape. */
export const sideMembers = (d: Design, plan: RailPlan, shape: RailShape, base: RailShape): Member[] => {
  const rail = plan.rail;
  const members: Member[] = [];
  members.push({
    need: `curved rail@${rail}`,
    kind: 'curved rail',
    rail,
    tube: d.tube,
    long_mm: plan.cut_mm,
    short_mm: plan.cut_mm,
    ends: { first_rad: 0, second_rad: 0 },
    line: { face: 'hinge line', rail },
    when: 'now',
    x_mm: shape.bottomAt(plan.toLip_mm / 2).x,
    vents: 1,
    drains: 1,
    joints: 0,
  });
  const stand = lipStand(d, plan);
  const lip = shape.bottomAt(stand.along_mm);
  const front = baseStartX(d);
  const rear = baseRearX(d, plan, base);
  members.push({
    need: `base rail@${rail}`,
    kind: 'base rail',
    rail,
    tube: d.tube,
    long_mm: rear - front,
    short_mm: rear - front,
    ends: { first_rad: 0, second_rad: 0 },
    line: { face: 'ground', rail },
    when: 'now',
    x_mm: (front + rear) / 2,
    vents: 1,
    drains: 2,
    joints: 2,
  });
  members.push(upright(d, rail, lip, 'lip', stand.along_mm));
  const flats = uprightFlats(d, plan, shape);
  const stands = flats.map(k => ({
    k,
    along: plan.flats_mm[k] ?? 0,
    spot: shape.bottomAt(plan.flats_mm[k] ?? 0),
  }));
  for (const s of stands) members.push(upright(d, rail, s.spot, String(s.k), s.along, s.k));
  members.push(...diagonals(d, plan, [{ k: -1, spot: lip }, ...stands]));
  return members;
};
