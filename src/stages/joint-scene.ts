import type { Member } from '../ramp/members.ts';
import { lazyScene } from '../scene/lazy-scene.ts';
import type { Scene, SceneItem, ScenePoint } from '../scene/scene.ts';
import type { JointKind } from './joint-order.ts';
import type { Situation } from './situation.ts';

/** How far the pieces are drawn past the joint, in widths of the piece. */
const REACH = 2;
/** A bead drawn: so much of the piece's width up along it, and as much out along what it stands on. */
const BEAD = 0.3;
/** Labels stand so far off, in widths of the piece. */
const OFF = 0.75;
/** The far flank's number stands so far along the piece, in its widths. */
const BEHIND = 1.8;

type Node = Readonly<{
  kind: JointKind;
  /** What it stands on: slope, rad, and depth, mm. */
  slope_rad: number;
  depth_mm: number;
  /** Width of the piece, mm, and the direction it leaves the joint in, rad from level. */
  width_mm: number;
  leaves_rad: number;
  /** On which side of the joint the steel lies that it stands on: 1 above it, -1 below. */
  onto: 1 | -1;
  /** The edge whose face is number 1: 1 the one toward the lip, -1 the one toward the entry. */
  first: 1 | -1;
}>;

const path = (points: readonly ScenePoint[], stroke: 'solid' | 'lit'): SceneItem => ({
  is: 'path',
  points,
  stroke,
});

const label = (x: number, y: number, text: string, anchor: 'left' | 'middle' | 'right'): SceneItem => ({
  is: 'label',
  at: { x, y },
  text,
  anchor,
  lit: true,
});

/** The piece on what it stands on, from the side: its beads lit on both edges, faces numbered in their order. */
const standing = (n: Node): readonly SceneItem[] => {
  const { width_mm: w, leaves_rad: a } = n;
  const reach = REACH * w;
  const tan = Math.tan(n.slope_rad);
  const level = { x: Math.cos(n.slope_rad), y: Math.sin(n.slope_rad) };
  const up = { x: Math.cos(a), y: Math.sin(a) };
  // Where the two edges of the piece meet the face: the first toward the lip, the second toward the entry.
  const spread = w / 2 / Math.abs(Math.sin(a - n.slope_rad));
  const edges = [1, -1].map(side => ({ x: side * spread * level.x, y: side * spread * level.y }));
  const ends = edges.map(e => {
    const far = reach + (e.x * up.x + e.y * up.y) * -1;
    return { x: e.x + far * up.x, y: e.y + far * up.y };
  });
  const face = (x: number, off: number): ScenePoint => ({ x, y: x * tan + (off * n.onto) / level.x });
  const items: SceneItem[] = [
    path([face(-reach, 0), face(reach, 0)], 'solid'),
    path([face(-reach, n.depth_mm), face(reach, n.depth_mm)], 'solid'),
  ];
  for (const [k, e] of edges.entries()) {
    const end = ends[k] ?? e;
    const out = k === 0 ? 1 : -1;
    const bead = BEAD * w;
    items.push(path([e, end], 'solid'));
    const along = { x: e.x + bead * up.x, y: e.y + bead * up.y };
    const aside = { x: e.x + out * bead * level.x, y: e.y + out * bead * level.y };
    items.push(path([along, aside, e, along], 'lit'));
  }
  const [lip = { x: 0, y: 0 }, entry = { x: 0, y: 0 }] = edges;
  const high = OFF * w;
  items.push(
    label(
      lip.x + high * (up.x + level.x),
      lip.y + high * (up.y + level.y),
      n.first === 1 ? '1' : '2',
      'left',
    ),
    label(
      entry.x + high * (up.x - level.x),
      entry.y + high * (up.y - level.y),
      n.first === 1 ? '2' : '1',
      'right',
    ),
    label(high * up.x, high * up.y, '3', 'middle'),
    // Beside the piece, where the rows of a small drawing have room for it.
    label(lip.x + BEHIND * w * up.x + OFF * w, lip.y + BEHIND * w * up.y, '4 behind', 'left'),
  );
  return items;
};

/** A crossmember's end on the side wall of its rail, seen along it: all four faces. */
const onEnd = (n: Node): readonly SceneItem[] => {
  const { width_mm: w, depth_mm: d } = n;
  const tan = Math.tan(n.slope_rad);
  const at = (x: number, y: number): ScenePoint => ({ x, y: y + x * tan });
  const reach = REACH * w;
  const h = w / 2;
  const corners = [at(-h, -h), at(h, -h), at(h, h), at(-h, h), at(-h, -h)];
  const bead = BEAD * w;
  const lit = (a: ScenePoint, b: ScenePoint): SceneItem => path([a, b], 'lit');
  return [
    path([at(-reach, -d / 2), at(reach, -d / 2)], 'solid'),
    path([at(-reach, d / 2), at(reach, d / 2)], 'solid'),
    path(corners, 'solid'),
    lit(at(h + bead / 2, -h), at(h + bead / 2, h)),
    lit(at(-h - bead / 2, -h), at(-h - bead / 2, h)),
    label(h + OFF * w, tan * (h + OFF * w), '1', 'left'),
    label(-h - OFF * w, -tan * (h + OFF * w), '2', 'right'),
    label(0, -h - OFF * w, '3', 'middle'),
    label(0, h + OFF * w, '4', 'middle'),
  ];
};

const nodeOf = (s: Situation, m: Member, end: 'rail' | 'foot'): Node | null => {
  const { tube } = s.ramp.design;
  const common = { depth_mm: tube.depth_mm, width_mm: m.tube.depth_mm };
  switch (m.kind) {
    case 'upright':
    case 'lip upright':
      return {
        ...common,
        kind: 'upright',
        slope_rad: end === 'rail' ? m.ends.second_rad : 0,
        leaves_rad: end === 'rail' ? -Math.PI / 2 : Math.PI / 2,
        onto: end === 'rail' ? 1 : -1,
        first: 1,
      };
    case 'diagonal': {
      const rise = Math.PI / 2 - m.ends.first_rad;
      const slope = rise - (Math.PI / 2 - m.ends.second_rad);
      return {
        ...common,
        kind: 'diagonal',
        slope_rad: end === 'rail' ? slope : 0,
        leaves_rad: end === 'rail' ? rise - Math.PI : rise,
        onto: end === 'rail' ? 1 : -1,
        // The open side: toward the entry at its foot, toward the lip at the rail.
        first: end === 'rail' ? 1 : -1,
      };
    }
    case 'crossmember':
    case 'base crossmember': {
      const rail = s.ramp.shapes.get(s.ramp.rails[0] ?? '');
      const slope = m.kind === 'crossmember' && rail !== undefined ? rail.bottomAt(m.along_mm ?? 0).slope : 0;
      return { ...common, kind: 'crossmember', slope_rad: slope, leaves_rad: 0, onto: -1, first: 1 };
    }
    default:
      return null;
  }
};

/**
 * One joint of the frame close up, lip to the right, its faces numbered in the order they are tacked and welded and the first
 * pair lit. Null for a piece that has no joint of this kind.
 * @param m an upright, a diagonal or a crossmember @param end its end at the rail, or the one on the base rail
 */
export const jointScene = (s: Situation, m: Member, end: 'rail' | 'foot' = 'rail'): Scene | null => {
  const node = nodeOf(s, m, end);
  if (node === null) return null;
  const name = m.flat === undefined ? 'lip' : String(m.flat);
  const where =
    node.kind === 'crossmember'
      ? 'crossmember, end on'
      : `${node.kind} ${name} at the ${end === 'rail' ? 'rail' : 'base'}`;
  return lazyScene(() => ({
    title: `${where}: faces in order`,
    items: node.kind === 'crossmember' ? onEnd(node) : standing(node),
  }));
};
