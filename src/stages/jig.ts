import type { RailPlan } from '../ramp/rail-plan.ts';
import type { Design } from '../ramp/settle.ts';
import { lazyScene } from '../scene/lazy-scene.ts';
import type { Scene, SceneItem, ScenePoint } from '../scene/scene.ts';
import type { LineName } from './sheet.ts';
import type { Situation } from './situation.ts';

/**
 * The jig seen from above. Origin at the entry mark, x along the straight base line, which the rail leaves square to its end,
 * y toward the centre of the curve. Lengths along a line are along the rail's bottom face.
 */
export type JigSpot = ScenePoint & Readonly<{ slope: number }>;

const arcOf = (
  plan: RailPlan,
  line: LineName,
): Readonly<{ radius_mm: number; turn_rad: number; arc_mm: number }> => {
  const { radius_mm, turn_rad } = line === 'tack line' ? plan.tack : plan.finished;
  return { radius_mm, turn_rad, arc_mm: radius_mm * turn_rad };
};

/** Length of a line from the entry mark to the lip mark, mm. */
export const lineLength = (plan: RailPlan, line: LineName): number =>
  arcOf(plan, line).arc_mm + plan.straight_mm;

/** A back-wall distance from the entry end as a distance along a line of the bottom face, mm. */
export const alongLine = (plan: RailPlan, line: LineName, backWall_mm: number): number => {
  const stretch = arcOf(plan, line).arc_mm / plan.bend_mm;
  const bent = Math.min(backWall_mm, plan.bend_mm);
  return bent * stretch + backWall_mm - bent;
};

/** The point of a line at a distance along it from the entry mark, mm. */
export const jigSpot = (plan: RailPlan, line: LineName, along_mm: number): JigSpot => {
  const { radius_mm, arc_mm } = arcOf(plan, line);
  const slope = Math.min(along_mm, arc_mm) / radius_mm;
  const beyond = Math.max(0, along_mm - arc_mm);
  return {
    x: radius_mm * Math.sin(slope) + beyond * Math.cos(slope),
    y: 2 * radius_mm * Math.sin(slope / 2) ** 2 + beyond * Math.sin(slope),
    slope,
  };
};

/** A point to mark: along the base line, square up from it, and straight from the entry mark as a check. mm. */
export type JigPoint = Readonly<{ name: string; x_mm: number; y_mm: number; across_mm: number }>;

/**
 * The points a line is drawn through: even steps along the base line, the end of the bend where a straight part follows, and
 * the lip mark. Tangent offsets, exact (plane geometry).
 * @param step_mm between points along the base line
 */
export const jigPoints = (plan: RailPlan, line: LineName, step_mm: number): readonly JigPoint[] => {
  const { radius_mm, arc_mm } = arcOf(plan, line);
  const letter = line === 'tack line' ? 'T' : 'F';
  const bendEnd = jigSpot(plan, line, arc_mm);
  const ends = [
    ...(plan.straight_mm > 1 ? [{ name: `${letter} bend`, ...bendEnd }] : []),
    { name: `${letter} lip`, ...jigSpot(plan, line, lineLength(plan, line)) },
  ];
  const points: { name: string; x: number; y: number }[] = [];
  // A step that comes close before an end is left to the end itself.
  for (let k = 1; k * step_mm < bendEnd.x - step_mm / 4; k++) {
    const x = k * step_mm;
    points.push({ name: `${letter}${k}`, x, y: x ** 2 / (radius_mm + Math.sqrt(radius_mm ** 2 - x ** 2)) });
  }
  return [...points, ...ends].map(p => ({
    name: p.name,
    x_mm: p.x,
    y_mm: p.y,
    across_mm: Math.hypot(p.x, p.y),
  }));
};

/** Free board round the rail on its jig, both sides together, mm; a sheet of 18 mm ply (common practice; trade size). */
const ROUND_RAIL = 600;
const SHEET = { long: 2440, wide: 1220 } as const;

/** How far the lines reach along the base line and up from it, mm: the greatest of all rails. */
export const jigExtent = (s: Situation): Readonly<{ run_mm: number; rise_mm: number }> => {
  const lips = [...s.ramp.plans.values()].flatMap(plan =>
    (['tack line', 'finished line'] as const).map(line => jigSpot(plan, line, lineLength(plan, line))),
  );
  return {
    run_mm: Math.max(0, ...lips.map(p => p.x)),
    rise_mm: Math.max(0, ...lips.map(p => p.y)),
  };
};

/** Jig sheets: ⌈(run + 600)/2440⌉ × ⌈(rise + 600)/1220⌉, of the rail as it lies along its base line. */
export const jigSheets = (s: Situation): number => {
  const { run_mm, rise_mm } = jigExtent(s);
  return Math.ceil((run_mm + ROUND_RAIL) / SHEET.long) * Math.ceil((rise_mm + ROUND_RAIL) / SHEET.wide);
};

/** One clamp for so much of rail, mm (common practice). */
const RAIL_PER_CLAMP = 400;
/** Flats between two pairs of blocks: 2.5 on average, 2 where too few clamps are owned to help them (common practice). */
const FLATS_APART = { clamped: 2.5, fewClamps: 2 } as const;
/** 5 × 50 mm screws that hold a block against 1 kN: 0.4 kN each in 18 mm ply (common practice). */
export const SCREWS_PER_BLOCK = 3;

export const clampsWanted = (plan: RailPlan): number => Math.ceil(plan.toLip_mm / RAIL_PER_CLAMP);

/** A pair of blocks, one each side of the rail, at a distance along its line from the entry mark, mm. */
export type BlockPair = Readonly<{
  /** Its place in the row: "entry", "1", "2" …, "lip"; it stays when the flats are laid out anew. */
  place: string;
  name: string;
  flat: number | null;
  along_mm: number;
}>;

/** Pairs that stand between the ends already: where the lip pair is screwed down, no plan calls for another row of them. */
export const pairsStanding = (s: Situation): number | null => {
  const screwed = [...s.build.ticks.keys()].filter(k => k.startsWith('tack/blocks#'));
  return screwed.includes('tack/blocks#lip') ? screwed.filter(k => /#\d+$/.test(k)).length : null;
};

/**
 * Where the blocks stand: a pair at each end and, between, pairs at middles of flats, so that none lies under a slit. In all
 * 2·⌈s/(2.5·p)⌉ + 4 blocks (common practice).
 * @param standing pairs between the ends that are screwed down already; null while they are not
 */
export const blockPairs = (
  d: Design,
  plan: RailPlan,
  line: LineName,
  standing: number | null = null,
): readonly BlockPair[] => {
  const flats = plan.flats_mm.length - 1;
  const apart = d.clamps >= clampsWanted(plan) ? FLATS_APART.clamped : FLATS_APART.fewClamps;
  const between = standing ?? Math.ceil(plan.bend_mm / (apart * plan.pitch_mm));
  const chosen = new Set<number>();
  for (let i = 1; i <= between; i++) {
    const flat = Math.round(((i - 0.5) * flats) / between);
    if (flat > 0 && flat < flats) chosen.add(flat);
  }
  return [
    { place: 'entry', name: 'entry', flat: null, along_mm: 0 },
    ...[...chosen].map((flat, i) => ({
      place: String(i + 1),
      name: `flat ${flat}`,
      flat,
      along_mm: alongLine(plan, line, plan.flats_mm[flat] ?? 0),
    })),
    { place: 'lip', name: 'lip', flat: null, along_mm: lineLength(plan, line) },
  ];
};

const path = (points: readonly ScenePoint[], stroke: 'solid' | 'dotted' | 'lit'): SceneItem => ({
  is: 'path',
  points,
  stroke,
});

/** A point off a line, + toward the centre, mm. */
const off = (p: JigSpot, by: number): ScenePoint => ({
  x: p.x - by * Math.sin(p.slope),
  y: p.y + by * Math.cos(p.slope),
});

/** Drawn size of a block, mm. */
const BLOCK = 60;

export type JigView = Readonly<{
  /** The line the rail lies on; none drawn where left out. */
  railOn?: LineName;
  blocks?: boolean;
  /** Distance along the line that the step is about, mm. */
  lit_mm?: number;
  /** Point the step is about. */
  litPoint?: ScenePoint;
}>;

/** The drawing itself; see `jigScene`. */
const drawJig = (s: Situation, rail: string, view: JigView): Scene => {
  const plan = s.ramp.plans.get(rail);
  if (plan === undefined) return { title: '', items: [] };
  const depth = s.measured.tubes.get(rail)?.depth_mm ?? s.ramp.design.tube.depth_mm;
  const along = (line: LineName, by = 0): readonly ScenePoint[] =>
    Array.from({ length: 33 }, (_, k) => off(jigSpot(plan, line, (lineLength(plan, line) * k) / 32), by));
  const lip = jigSpot(plan, 'finished line', lineLength(plan, 'finished line'));
  const lines =
    plan.slits.length === 0 ? (['finished line'] as const) : (['tack line', 'finished line'] as const);
  const on = view.railOn ?? lines[0];
  const items: SceneItem[] = [
    path(
      [
        { x: 0, y: 0 },
        { x: lip.x, y: 0 },
      ],
      'dotted',
    ),
    ...lines.map(line => path(along(line), 'dotted')),
  ];
  if (view.railOn !== undefined)
    items.push(path([...along(on), ...[...along(on, depth)].reverse()], 'solid'));
  if (view.blocks === true) {
    for (const pair of blockPairs(s.ramp.design, plan, on, pairsStanding(s))) {
      const p = jigSpot(plan, on, pair.along_mm);
      items.push(
        path([off(p, 0), off(p, -BLOCK)], 'solid'),
        path([off(p, depth), off(p, depth + BLOCK)], 'solid'),
      );
    }
  }
  const lit = view.litPoint ?? (view.lit_mm === undefined ? undefined : jigSpot(plan, on, view.lit_mm));
  if (lit !== undefined) items.push({ is: 'mark', at: { x: lit.x, y: lit.y }, sign: 'here', lit: true });
  items.push(
    { is: 'label', at: { x: 0, y: -1.5 * depth }, text: 'entry', anchor: 'left' },
    { is: 'label', at: { x: lip.x, y: lip.y + 2 * depth }, text: 'lip', anchor: 'right' },
  );
  return { title: 'jig from above, to scale', items };
};

/** The jig from above, to scale: tack line and finished line dotted, blocks, the rail between them, what the step is about lit. */
export const jigScene = (s: Situation, rail: string, view: JigView = {}): Scene =>
  lazyScene(() => drawJig(s, rail, view));
