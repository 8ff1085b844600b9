import type { Fault } from '../quantity/outcome.ts';
import type { System } from '../quantity/quantities.ts';
import { arcFrom, type Arc as CurveArc } from '../reckon/curve/arc.ts';
import { layersThatBend } from './deck.ts';
import type { Answered, Deck, DesignAnswers, Tube } from './design.ts';

export type Arc = CurveArc;

/** Largest spacing of uprights under a novice's slit rail of 40×40×3, mm: 320 as a single span (common practice; derived). */
export const UPRIGHT_SPACING = 320;

/** Least clear height of a bay worth a diagonal, mm (common practice). */
export const BRACED_BAY = 250;

/** A design with every gap filled by a default that fits the answers given, and its curve solved. */
export type Design = Readonly<DesignAnswers & { name: string; system: System; arc: Arc; answered: Answered }>;

/** The metric default is the demo's: lip 600 mm, 30°, 40×40×3, two layers of 9 mm, two rails, 1.2 m wide. */
const METRIC = {
  height: 600,
  width: 1200,
  tube: { depth_mm: 40, width_mm: 40, wall_mm: 3 },
  post: { depth_mm: 30, width_mm: 30, wall_mm: 2 },
  layer: 9,
  board: 145,
  boardThickness: 38,
  kerf: 1.2,
  grinder: 125,
  door: { width_mm: 2100, height_mm: 2000 },
} as const;

const IN = 25.4;
const US = {
  height: 24 * IN,
  width: 48 * IN,
  tube: { depth_mm: 1.5 * IN, width_mm: 1.5 * IN, wall_mm: 0.12 * IN },
  post: { depth_mm: IN, width_mm: IN, wall_mm: 0.083 * IN },
  layer: 0.375 * IN,
  board: 5.5 * IN,
  boardThickness: 1.5 * IN,
  kerf: 0.045 * IN,
  grinder: 4.5 * IN,
  door: { width_mm: 84 * IN, height_mm: 80 * IN },
} as const;

const DEFAULT_EXIT = Math.PI / 6;

/** The two sizes that fix the curve: the answers given, the gap filled by lip height or a 30° exit. */
const shapeOf = (shape: DesignAnswers['shape'], height: number): DesignAnswers['shape'] => {
  const given = Object.keys(shape).length;
  if (given >= 2) return shape;
  if (given === 0) return { height, exit: DEFAULT_EXIT };
  return shape.exit === undefined ? { ...shape, exit: DEFAULT_EXIT } : { ...shape, height };
};

/**
 * The design that the answers give. `measured` is the tube as the caliper found it on receipt: it wins over what was
 * planned. Errors: the arc's own (two sizes that no circle has).
 */
export const settle = (
  name: string,
  system: System,
  answered: Answered,
  measured?: Partial<Tube>,
): { ok: true; value: Design } | { ok: false; fault: Fault } => {
  const d = system === 'us' ? US : METRIC;
  const shape = shapeOf(answered.shape ?? {}, d.height);
  const arc = arcFrom({
    ...(shape.height === undefined ? {} : { height_mm: shape.height }),
    ...(shape.run === undefined ? {} : { run_mm: shape.run }),
    ...(shape.radius === undefined ? {} : { radius_mm: shape.radius }),
    ...(shape.exit === undefined ? {} : { exit_rad: shape.exit }),
    ...(shape.arc === undefined ? {} : { arc_mm: shape.arc }),
  });
  if (!arc.ok) return arc;
  const deck: Deck = answered.deck ?? {
    kind: 'sheet',
    layer_mm: d.layer,
    layers: layersThatBend(d.layer, arc.value.radius_mm),
  };
  return {
    ok: true,
    value: {
      use: 'bike',
      straight: 0,
      width: d.width,
      post: d.post,
      route: 'slit',
      cutter: { kind: 'thin disc', kerf_mm: d.kerf },
      grinder: d.grinder,
      rider: 90,
      door: d.door,
      first: true,
      sequence: 'in step',
      tolerance: 'novice',
      clamps: 6,
      spacing: UPRIGHT_SPACING,
      diagonals: BRACED_BAY,
      rails: 2,
      ground: 'dry lawn',
      standard: system === 'us' ? 'AISC' : 'EN',
      ...answered,
      tube: { ...(answered.tube ?? d.tube), ...measured },
      deck,
      shape,
      name,
      system,
      arc: arc.value,
      answered,
    },
  };
};

export const deckThickness = (deck: Deck): number =>
  deck.kind === 'sheet' ? deck.layer_mm * deck.layers : deck.thickness_mm;
