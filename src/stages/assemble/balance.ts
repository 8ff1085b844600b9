import type { RailName } from '../../ramp/design.ts';
import { memberMass } from '../../ramp/mass.ts';
import type { Member } from '../../ramp/members.ts';
import { standing } from '../../reckon/handling/stand-up.ts';
import type { Situation } from '../situation.ts';

/** Points along a curved rail at which its height is taken for its centre of mass. */
const SAMPLES = 24;

const railCentre = (s: Situation, rail: RailName): { x: number; y: number } => {
  const plan = s.ramp.plans.get(rail);
  const shape = s.ramp.shapes.get(rail);
  if (plan === undefined || shape === undefined) return { x: 0, y: 0 };
  const half = s.ramp.design.tube.depth_mm / 2;
  const spots = Array.from({ length: SAMPLES }, (_, k) =>
    shape.bottomAt(((k + 0.5) * plan.toLip_mm) / SAMPLES),
  );
  return {
    x: spots.reduce((sum, p) => sum + p.x - half * Math.sin(p.slope), 0) / SAMPLES,
    y: spots.reduce((sum, p) => sum + p.y + half * Math.cos(p.slope), 0) / SAMPLES,
  };
};

/** Middle of a piece in the side view, mm, x toward the lip, y up from the ground. */
const centreOf = (s: Situation, m: Member): { x: number; y: number } => {
  const base = s.ramp.design.tube.depth_mm;
  const mean = (m.long_mm + m.short_mm) / 2;
  switch (m.kind) {
    case 'curved rail':
      return railCentre(s, m.rail ?? '');
    case 'upright':
    case 'lip upright':
      return { x: m.x_mm, y: base + mean / 2 };
    case 'diagonal':
      return { x: m.x_mm, y: base + (mean / 2) * Math.cos(m.ends.first_rad) };
    case 'rear diagonal':
      return { x: m.x_mm, y: base + (mean / 2) * Math.sin(m.ends.first_rad) };
    case 'crossmember':
      return { x: m.x_mm, y: s.ramp.shapes.get(s.ramp.rails[0] ?? '')?.bottomAt(m.along_mm ?? 0).y ?? base };
    case 'foot plate':
      return { x: m.need.endsWith(':entry') ? s.ramp.entry.length_mm : s.ramp.lip.x_mm, y: 0 };
    case 'entry plate':
      // It rises from the ground along the arc, so its middle lies a third up.
      return { x: m.x_mm, y: s.ramp.entry.deckHeight_mm / 3 };
    case 'bearer':
      return { x: m.x_mm, y: m.tube.width_mm / 2 };
    default:
      return { x: m.x_mm, y: base / 2 };
  }
};

export type Balance = Readonly<{ mass_kg: number; x_mm: number; y_mm: number }>;

const balance = (s: Situation, members: readonly Member[]): Balance => {
  const parts = members.map(m => ({ kg: memberMass(m), ...centreOf(s, m) }));
  const mass_kg = parts.reduce((sum, p) => sum + p.kg, 0);
  return {
    mass_kg,
    x_mm: parts.reduce((sum, p) => sum + p.kg * p.x, 0) / mass_kg,
    y_mm: parts.reduce((sum, p) => sum + p.kg * p.y, 0) / mass_kg,
  };
};

type Kept = { frame?: Balance; carried?: Balance; sides: Map<RailName, Balance> };
const kept = new WeakMap<Situation, Kept>();

/** Several steps ask for the same balances of the same moment. */
const keptOf = (s: Situation): Kept => {
  const before = kept.get(s);
  if (before !== undefined) return before;
  const fresh: Kept = { sides: new Map() };
  kept.set(s, fresh);
  return fresh;
};

/** Mass and centre of mass of one side frame: rail, base rail, uprights, diagonals. */
export const sideBalance = (s: Situation, rail: RailName): Balance => {
  const { sides } = keptOf(s);
  const known = sides.get(rail);
  if (known !== undefined) return known;
  const side = balance(
    s,
    s.ramp.members.filter(m => m.rail === rail && m.kind !== 'foot plate'),
  );
  sides.set(rail, side);
  return side;
};

/** The same of all the steel, without entry plate and deck. */
export const frameBalance = (s: Situation): Balance => {
  const all = keptOf(s);
  all.frame ??= balance(s, s.ramp.members);
  return all.frame;
};

/** The same with entry plate and bearers on, which lie in front of the rails: what is carried out, its deck still off. */
export const carriedBalance = (s: Situation): Balance => {
  const all = keptOf(s);
  all.carried ??= balance(s, [...s.ramp.members, ...s.ramp.entry.pieces]);
  return all.carried;
};

/** How far a side frame leans before it falls by itself, rad: it stands on a base as wide as its tube. */
export const sideTipsAt = (s: Situation, rail: RailName): number => {
  const { mass_kg, y_mm } = sideBalance(s, rail);
  const stood = standing(mass_kg, s.ramp.design.tube.width_mm / 2, Math.max(1, y_mm), Math.max(1, y_mm));
  return stood.ok ? stood.value.tips_at_rad : 0;
};
