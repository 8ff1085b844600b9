import { spotAtSlope, spotAtX } from '../ramp/curve.ts';
import { ENTRY_PLATE } from '../ramp/deck.ts';
import { baseStartX, type Member } from '../ramp/members.ts';
import { curveOf, type RailPlan } from '../ramp/rail-plan.ts';
import type { RailShape } from '../ramp/rail-shape.ts';
import type { Design } from '../ramp/settle.ts';
import { lazyScene } from '../scene/lazy-scene.ts';
import type { Scene, SceneItem, ScenePoint } from '../scene/scene.ts';
import type { Situation } from './situation.ts';

/** Points along a curved line: enough that no chord leaves it by a dot of the largest drawing. */
const STEPS = 32;

type Stroke = Extract<SceneItem, { is: 'path' }>['stroke'];

const path = (points: readonly ScenePoint[], stroke: Stroke): SceneItem => ({ is: 'path', points, stroke });

const fractions = Array.from({ length: STEPS + 1 }, (_, k) => k / STEPS);

/** Tube outline square to a centre line from `a` to `b`, `depth` mm across. */
const bar = (a: ScenePoint, b: ScenePoint, depth: number, stroke: Stroke): SceneItem => {
  const long = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const nx = (-(b.y - a.y) / long) * (depth / 2);
  const ny = ((b.x - a.x) / long) * (depth / 2);
  const corner = (p: ScenePoint, side: 1 | -1): ScenePoint => ({ x: p.x + side * nx, y: p.y + side * ny });
  const first = corner(a, 1);
  return path([first, corner(b, 1), corner(b, -1), corner(a, -1), first], stroke);
};

/** Deck top along the arc from the ground, and the straight last part. */
const deckTop = (d: Design): readonly ScenePoint[] => {
  const c = curveOf(d);
  const arc = fractions.map(f => spotAtSlope(c, 0, f * c.exit_rad));
  return c.straight_mm > 0 ? [...arc, spotAtSlope(c, 0, c.exit_rad, c.straight_mm)] : arc;
};

const railOutline = (d: Design, plan: RailPlan, shape: RailShape, stroke: Stroke): SceneItem => {
  const bottom = fractions.map(f => shape.bottomAt(f * plan.toLip_mm));
  const top = bottom.map(p => ({
    x: p.x - d.tube.depth_mm * Math.sin(p.slope),
    y: p.y + d.tube.depth_mm * Math.cos(p.slope),
  }));
  return path([...bottom, ...top.reverse(), bottom[0] as ScenePoint], stroke);
};

const memberItem = (d: Design, m: Member, stroke: Stroke): SceneItem | null => {
  const base = d.tube.depth_mm;
  const mid = (m.long_mm + m.short_mm) / 2;
  switch (m.kind) {
    case 'base rail':
      return bar(
        { x: m.x_mm - m.long_mm / 2, y: base / 2 },
        { x: m.x_mm + m.long_mm / 2, y: base / 2 },
        m.tube.depth_mm,
        stroke,
      );
    case 'upright':
    case 'lip upright':
      return bar({ x: m.x_mm, y: base }, { x: m.x_mm, y: base + mid }, m.tube.depth_mm, stroke);
    case 'diagonal': {
      const rise = Math.PI / 2 - m.ends.first_rad;
      const half = (mid / 2) * Math.cos(rise);
      return bar(
        { x: m.x_mm - half, y: base },
        { x: m.x_mm + half, y: base + mid * Math.sin(rise) },
        m.tube.depth_mm,
        stroke,
      );
    }
    default:
      return null;
  }
};

/** Members seen on end between the rails: a dot on the rail, or at the base. */
const endOn = (d: Design, m: Member, shape: RailShape): ScenePoint | null => {
  if (m.kind === 'base crossmember') return { x: m.x_mm, y: d.tube.depth_mm / 2 };
  if (m.kind !== 'crossmember') return null;
  const spot = shape.bottomAt(m.along_mm ?? 0);
  return {
    x: spot.x - (d.tube.depth_mm / 2) * Math.sin(spot.slope),
    y: spot.y + (d.tube.depth_mm / 2) * Math.cos(spot.slope),
  };
};

const entryItems = (s: Situation, lit: boolean): readonly SceneItem[] => {
  const c = curveOf(s.ramp.design);
  const end = s.ramp.entry.length_mm;
  const stroke: Stroke = lit ? 'lit' : 'solid';
  const plate = fractions.map(f => spotAtX(c, 0, f * end));
  return [
    path(plate, stroke),
    ...s.ramp.entry.bearers.map(b => path([{ x: b.x_mm, y: 0 }, spotAtX(c, ENTRY_PLATE, b.x_mm)], stroke)),
  ];
};

const isLit = (lit: string | undefined, rail: string | undefined, need?: string): boolean =>
  lit !== undefined && (lit === need || (lit === rail && need?.startsWith('curved rail@') === true));

/** The drawing itself; see `sideView`. */
const drawSide = (s: Situation, options: { lit?: string }): Scene => {
  const d = s.ramp.design;
  const c = curveOf(d);
  const { lit } = options;
  const items: SceneItem[] = [];
  const rear = Math.max(
    ...s.ramp.members.filter(m => m.kind === 'base rail').map(m => m.x_mm + m.long_mm / 2),
    0,
  );
  items.push(
    path(
      [
        { x: 0, y: 0 },
        { x: Math.max(baseStartX(d), 0), y: 0 },
      ],
      'solid',
    ),
  );
  items.push(
    path(
      [
        { x: rear, y: 0 },
        { x: Math.max(rear, s.ramp.lip.x_mm) + d.tube.depth_mm, y: 0 },
      ],
      'solid',
    ),
  );
  items.push(path(deckTop(d), 'dotted'));
  items.push(...entryItems(s, lit === 'entry'));

  // Rails that stand as drawn cover each other: the first is drawn for all of them, the lit one always.
  let drawnNominal = false;
  for (const rail of s.ramp.rails) {
    const plan = s.ramp.plans.get(rail);
    const shape = s.ramp.shapes.get(rail);
    if (plan === undefined || shape === undefined) continue;
    const here = isLit(lit, rail, `curved rail@${rail}`);
    const sideLit = s.ramp.members.some(m => m.rail === rail && m.need === lit);
    if (shape.survey !== null || here || sideLit || !drawnNominal) {
      items.push(railOutline(d, plan, shape, here ? 'lit' : 'solid'));
      if (shape.survey === null) drawnNominal = true;
    }
  }
  const first = s.ramp.rails[0];
  const side =
    s.ramp.members.find(m => m.need === lit)?.rail ??
    (lit !== undefined && s.ramp.plans.has(lit) ? lit : first);
  for (const m of s.ramp.members) {
    if (m.rail !== undefined && m.rail !== side) continue;
    const item = memberItem(d, m, m.need === lit ? 'lit' : 'solid');
    if (item !== null) items.push(item);
    const shape = s.ramp.shapes.get(side ?? '');
    const spot = m.need === lit && shape !== undefined ? endOn(d, m, shape) : null;
    if (spot !== null) items.push({ is: 'mark', at: spot, sign: 'dot', lit: true });
  }
  const lip = spotAtSlope(c, 0, c.exit_rad, c.straight_mm);
  items.push({
    is: 'label',
    at: { x: 0, y: 2 * d.tube.depth_mm },
    text: 'entry',
    anchor: 'left',
  });
  items.push({ is: 'label', at: { x: lip.x, y: lip.y + d.tube.depth_mm }, text: 'lip', anchor: 'right' });
  return { title: 'side view, to scale', items };
};

/**
 * The ramp seen from its side, to scale in mm, lip to the right: ground, deck-top line (dotted), entry plate on its bearers,
 * each rail as it stands (as drawn until it is measured), base rail, uprights, diagonals.
 * @param options.lit the name of a rail, a need such as `upright@A:9`, or `entry`: drawn lit
 */
export const sideView = (s: Situation, options: { lit?: string } = {}): Scene =>
  lazyScene(() => drawSide(s, options));
