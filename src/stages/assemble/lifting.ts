import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import type { RailName } from '../../ramp/design.ts';
import { lift } from '../../reckon/handling/lift.ts';
import { type StandUp, standUp } from '../../reckon/handling/stand-up.ts';
import { keptByInput } from '../kept-by-input.ts';
import type { Figure } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { type Balance, frameBalance, sideBalance } from './balance.ts';
import { MATTERS } from './limits.ts';
import { handsWanted } from './people.ts';

/**
 * How hands are at the two lifts of a frame, mm (common practice): an end of it taken by the bare tube just over the floor and
 * raised to the knuckles; the whole of it taken by handles welded on at shin height, bent knees, close to the body.
 */
const TAKEN = {
  end: { hands_from_body_mm: 350, hands_height_mm: 100, raise_mm: 650, grip: 'poor' },
  handles: { hands_from_body_mm: 300, hands_height_mm: 300, raise_mm: 450, grip: 'good' },
} as const;

/** What the equation of NIOSH allows one person at such a lift, a few times in an hour, kg. */
export const lowLimit_kg = keptByInput((taken: keyof typeof TAKEN): number => {
  const one = lift({ load_kg: 1, ...TAKEN[taken], twist_rad: 0, lifts_per_min: 0.2, hours: 1 });
  return one.ok ? one.value.limit_kg : 0;
});

const raised = keptByInput(standUp);

/** A side frame raised from lying on its side, about its base rail, by its lip. */
export const sideUp = (s: Situation, rail: RailName): StandUp | null => {
  const { mass_kg, y_mm } = sideBalance(s, rail);
  const { lip, design } = s.ramp;
  const up = raised({
    mass_kg,
    along_mm: Math.max(1, y_mm),
    above_mm: design.tube.width_mm / 2,
    hands_mm: Math.max(lip.y_mm, y_mm),
  });
  return up.ok ? up.value : null;
};

/** The frame turned about its rear edge, hands at the entry end, the whole length away. */
export const frameUp = (s: Situation, { mass_kg, x_mm, y_mm }: Balance = frameBalance(s)): StandUp | null => {
  const up = raised({
    mass_kg,
    along_mm: Math.max(1, s.ramp.lip.x_mm - x_mm),
    above_mm: Math.max(0, y_mm),
    hands_mm: s.ramp.lip.x_mm - s.ramp.entry.length_mm,
  });
  return up.ok ? up.value : null;
};

/** Force in the hands once raised so far, N: nothing past the balance. */
export const forceAt = (up: StandUp, raised_rad: number): number =>
  raised_rad >= up.balance_rad
    ? 0
    : (up.holds.find(h => Math.abs(h.raised_rad - raised_rad) < 1e-9)?.force_N ?? 0);

const DEG = Math.PI / 180;

/** Load of each pair of hands at the start of turning the frame, kg. */
export const turningEach_kg = (s: Situation, people: number): number =>
  (frameUp(s)?.start_N ?? 0) / GRAVITY_m_s2 / people;

/** Figures of a lift: force over angle, where it tips over, and the share of each against what NIOSH allows one. */
export const liftFigures = (s: Situation): readonly Figure[] => {
  const size = (id: string, as: Figure['as'], v: number | null, matters: number): Figure =>
    ({
      id,
      kind: 'size',
      as,
      value: v === null ? { is: 'unknown', needs: 'assemble/weld' } : { is: 'exact', v },
      matters,
    }) as Figure;
  const up = frameUp(s);
  const at = (degrees: number): number | null => (up === null ? null : forceAt(up, degrees * DEG));
  const people = handsWanted(s);
  return [
    size('stand-force', 'force', at(0), 10),
    size('stand-at-30', 'force', at(30), 10),
    size('stand-at-60', 'force', at(60), 10),
    size('stand-balance', 'angle', up?.balance_rad ?? null, MATTERS.angle * 10),
    size('stand-grip', 'ratio', up?.friction_needed ?? null, 0.05),
    size('lift-limit', 'mass', lowLimit_kg('end'), MATTERS.mass),
    size('lift-each', 'mass', turningEach_kg(s, people), MATTERS.mass),
    ...s.ramp.rails.map(rail => size(`side-start@${rail}`, 'force', sideUp(s, rail)?.start_N ?? null, 10)),
  ];
};
