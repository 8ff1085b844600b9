import type { System } from '../quantity/quantities.ts';
import type { GROUNDS } from '../reckon/strength/ground.ts';

/** Two of these fix the curve; the design keeps which two were given and their numbers, never the derived ones. */
export type ShapeName = 'height' | 'run' | 'radius' | 'exit' | 'arc';

/** A rectangular tube: depth in the plane of the curve, width across it, wall. mm. */
export type Tube = Readonly<{ depth_mm: number; width_mm: number; wall_mm: number }>;

export type Deck =
  | Readonly<{ kind: 'sheet'; layer_mm: number; layers: number }>
  | Readonly<{ kind: 'boards'; thickness_mm: number; board_mm: number }>;

export type CutterKind = 'thin disc' | 'band saw' | 'hacksaw' | 'chop saw';

export type GroundName = keyof typeof GROUNDS;

/** What the person has answered. Every field may be missing; `settle` fills the gaps with defaults that fit. */
export type DesignAnswers = Readonly<{
  use: 'bike' | 'scooter' | 'skate' | 'inline skates';
  /** height, run, arc mm; radius mm of the deck top; exit rad. Two at most. */
  shape: Readonly<Partial<Record<ShapeName, number>>>;
  /** A straight last part of the lip, mm along the deck top. */
  straight: number;
  width: number;
  tube: Tube;
  /** Uprights, crossmembers, diagonals. */
  post: Tube;
  route: 'slit' | 'rolled';
  cutter: Readonly<{ kind: CutterKind; kerf_mm: number }>;
  /** Disc diameter of the grinder, mm. */
  grinder: number;
  /** Rider with machine, kg. */
  rider: number;
  /** Narrowest door or gate, mm. */
  door: Readonly<{ width_mm: number; height_mm: number }>;
  deck: Deck;
  /** First welded frame? */
  first: boolean;
  /** Both rails in step, or rail A teaches rail B. */
  sequence: 'in step' | 'one after the other';
  tolerance: 'novice' | 'careful shop';
  /** Clamps the person owns. */
  clamps: number;
  /** Greatest distance between uprights along a rail's back wall, mm. */
  spacing: number;
  /** Least clear height of a bay of a side frame that gets a diagonal, mm. */
  diagonals: number;
  /** Curved rails at least; boards that would span too far ask for more. */
  rails: number;
  /** What the ramp stands on when it is ridden. */
  ground: GroundName;
  /** Which standard judges strength: by default with the units at the start, fixed once steel is cut. */
  standard: 'AISC' | 'EN';
}>;

export type DesignField = keyof DesignAnswers;
export type Answered = Partial<DesignAnswers>;

export const DESIGN_FIELDS: readonly DesignField[] = [
  'use',
  'shape',
  'straight',
  'width',
  'tube',
  'post',
  'route',
  'cutter',
  'grinder',
  'rider',
  'door',
  'deck',
  'first',
  'sequence',
  'tolerance',
  'clamps',
  'standard',
  'spacing',
  'ground',
  'diagonals',
  'rails',
];

export type RailName = string;
export const railNames = (count: number): readonly RailName[] =>
  Array.from({ length: count }, (_, i) => String.fromCharCode(65 + i));

export type LineFace = 'deck top' | 'rail top face' | 'hinge line' | 'rail bottom face' | 'ground';
export type LineRef = Readonly<{ face: LineFace; rail?: RailName }>;

export type { System };
