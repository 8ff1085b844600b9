import type { Fault } from '../quantity/outcome.ts';
import type { System } from '../quantity/quantities.ts';
import { spotAtSlope } from './curve.ts';
import type { Answered, RailName } from './design.ts';
import { type Bearer, entryBearers, entryLength, entryMembers } from './entry.ts';
import { masses } from './mass.ts';
import type { Measured, Pull } from './measured.ts';
import type { Member } from './member.ts';
import { membersOf } from './members.ts';
import { type Problem, problemsOf } from './problems.ts';
import { railsOf } from './rail-count.ts';
import { curveOf, planRail, type RailPlan } from './rail-plan.ts';
import { measuredShape, nominalShape, type RailShape } from './rail-shape.ts';
import { type Design, deckThickness, settle } from './settle.ts';
import { tubeInHand } from './tube-in-hand.ts';
import { believedPull } from './weld-pull.ts';

/** The outside of the finished frame, mm. */
export type Envelope = Readonly<{ length_mm: number; width_mm: number; height_mm: number; fits: boolean }>;

/** The frame as drawn and as it stands: one value that every stage computes from. */
export type Ramp = Readonly<{
  design: Design;
  rails: readonly RailName[];
  plans: ReadonlyMap<RailName, RailPlan>;
  entry: Readonly<{
    length_mm: number;
    share: number;
    bearers: readonly Bearer[];
    /** Its plate and bearers as pieces; they are no members of the frame. */
    pieces: readonly Member[];
    deckHeight_mm: number;
  }>;
  lip: Readonly<{ x_mm: number; y_mm: number }>;
  nominal: readonly Member[];
  /** From measured rails where a closed survey counts, else as drawn. */
  members: readonly Member[];
  shapes: ReadonlyMap<RailName, RailShape>;
  nominalShapes: ReadonlyMap<RailName, RailShape>;
  problems: readonly Problem[];
  masses: ReturnType<typeof masses>;
  envelope: Envelope;
}>;

/** Clear room wanted on each side when the frame goes through a door, mm (common practice). */
const DOOR_CLEARANCE = 50;

/** Any two sides of the box through the door: it can be carried on its side or on end. */
const fitsDoor = (d: Design, length: number, height: number): boolean => {
  const w = d.door.width_mm - 2 * DOOR_CLEARANCE;
  const h = d.door.height_mm - DOOR_CLEARANCE;
  const sides = [length, d.width, height];
  return sides.some((a, i) => sides.some((b, j) => i !== j && a <= w && b <= h));
};

/** The ramp that a design and what was measured give. Errors: the curve's own faults. */
export const rampOf = (
  name: string,
  system: System,
  answered: Answered,
  m: Measured,
  pull?: Pull,
): { ok: true; value: Ramp } | { ok: false; fault: Fault } => {
  const planned = settle(name, system, answered);
  if (!planned.ok) return planned;
  const settled = settle(name, system, answered, tubeInHand(planned.value, m));
  if (!settled.ok) return settled;
  const d = settled.value;
  const rails = railsOf(d).slice(0, 12);
  const plans = new Map<RailName, RailPlan>();
  for (const rail of rails) plans.set(rail, planRail(d, rail, m, pull ?? believedPull(d, m, rail)));
  const list = [...plans.values()];
  const first = list[0] as RailPlan;
  // What no rail may be, none may be: the thinnest in hand is judged, whichever it is.
  const thinnest = list.reduce((a, b) => (b.tube.wall_mm < a.tube.wall_mm ? b : a), first);
  const nominalShapes = new Map(list.map(p => [p.rail, nominalShape(d, p)]));
  const shapes = new Map(
    list.map(p => {
      const curve = m.curves.get(p.rail);
      // A rail still on its tack line has its welds' pull to come: later stages take it as it will be, with what was read off it.
      return [p.rail, curve === undefined ? nominalShape(d, p) : measuredShape(d, p, curve)];
    }),
  );
  const nominal = membersOf(d, list, p => nominalShapes.get(p.rail) as RailShape);
  const isWelded = (p: RailPlan): boolean => {
    const phase = m.curves.get(p.rail)?.phase;
    return phase === 'cold' || phase === 'braced' || phase === 'unclamped';
  };
  const members = membersOf(
    d,
    list,
    p => shapes.get(p.rail) as RailShape,
    p => (isWelded(p) ? shapes : nominalShapes).get(p.rail) as RailShape,
  );
  const c = curveOf(d);
  const lip = spotAtSlope(c, 0, c.exit_rad, c.straight_mm);
  const end = entryLength(d);
  const entry = entryMembers(d);
  const length_mm =
    spotAtSlope(c, deckThickness(d.deck) + d.tube.depth_mm, c.exit_rad, c.straight_mm).x - end;
  return {
    ok: true,
    value: {
      design: d,
      rails,
      plans,
      entry: {
        length_mm: end,
        share: end / lip.x,
        bearers: entryBearers(d),
        pieces: entry,
        deckHeight_mm: spotAtSlope(c, 0, Math.asin(Math.min(1, end / c.radius_mm))).y,
      },
      lip: { x_mm: lip.x, y_mm: lip.y },
      nominal,
      members,
      shapes,
      nominalShapes,
      problems: problemsOf(d, thinnest),
      masses: masses(d, members, entry),
      envelope: { length_mm, width_mm: d.width, height_mm: lip.y, fits: fitsDoor(d, length_mm, lip.y) },
    },
  };
};
