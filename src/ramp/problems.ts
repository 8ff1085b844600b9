import { faceOffset } from './curve.ts';
import { sheetBendRadius, thickestLayer } from './deck.ts';
import type { DesignField, Tube } from './design.ts';
import { entryLength } from './entry.ts';
import { CLEAR_OF_SLIT } from './member.ts';
import { clearWidth, railCount } from './rail-count.ts';
import { curveOf, type RailPlan } from './rail-plan.ts';
import { type Design, deckThickness } from './settle.ts';

/** A number in a problem's words, with what it is. */
export type ProblemFill = Readonly<{ v: number; as: 'length' | 'thickness' | 'angle' | 'count' | 'percent' }>;

/** Why a design cannot, or should not, be built: the words are in content under `problem.<code>`. */
export type Problem = Readonly<{
  code: string;
  /** `refuse`: not built like this; `warn`: it can be, and here is the catch. */
  severity: 'refuse' | 'warn';
  /** Fields whose change would mend it, the likeliest first. */
  fields: readonly DesignField[];
  fills: Readonly<Record<string, ProblemFill>>;
}>;

const len = (v: number): ProblemFill => ({ v, as: 'length' });
const thick = (v: number): ProblemFill => ({ v, as: 'thickness' });

/** Largest kerf of a slit: half the wall, and 0.3 mm more with the stop line left short of the back wall (common practice). */
export const largestKerf = (wall_mm: number): number => wall_mm / 2 + 0.3;

/** Thickest wall whose corners, twice the wall outside, still fit the smaller side (EN 10219-2 [found]; AISC table [calc]), mm. */
const thickestWall = ({ depth_mm, width_mm }: Tube): number => Math.min(depth_mm, width_mm) / 4;

/** Thinnest wall of a slit rail for a first-timer, mm (common practice). */
export const THINNEST_SLIT_WALL = 2;
/** Bend at one slit that small hard wheels feel, rad: 2° (common practice). */
const KINK = (2 * Math.PI) / 180;

export const problemsOf = (d: Design, plan: RailPlan): readonly Problem[] => {
  const problems: Problem[] = [];
  const add = (
    code: string,
    severity: Problem['severity'],
    fields: DesignField[],
    fills: Problem['fills'] = {},
  ): void => {
    problems.push({ code, severity, fields, fills });
  };
  const c = curveOf(d);
  const deck = deckThickness(d.deck);
  const { depth_mm, width_mm } = d.tube;

  for (const field of ['tube', 'post'] as const) {
    const most = thickestWall(d[field]);
    if (d[field].wall_mm <= most + 1e-9) continue;
    add('wall-too-thick', 'refuse', [field], { wall: thick(d[field].wall_mm), most: thick(most) });
    return problems;
  }
  const low = d.arc.height_mm + d.straight * Math.sin(d.arc.exit_rad);
  // A rail needs some bend of its own before it is worth slitting: two tubes' depth above where it starts.
  if (plan.turn_rad < 0.05 || low < deck + 2 * depth_mm) {
    add('too-low', 'refuse', ['shape', 'tube'], { height: len(low), least: len(deck + 3 * depth_mm) });
    return problems;
  }
  if (d.arc.exit_rad > (75 * Math.PI) / 180) {
    add('too-steep', 'refuse', ['shape'], {
      exit: { v: d.arc.exit_rad, as: 'angle' },
      most: { v: (60 * Math.PI) / 180, as: 'angle' },
    });
  } else if (d.first && d.arc.exit_rad > (46 * Math.PI) / 180) {
    add('steep', 'warn', ['shape'], {
      exit: { v: d.arc.exit_rad, as: 'angle' },
      most: { v: Math.PI / 4, as: 'angle' },
    });
  }
  const rails = railCount(d);
  if (clearWidth(d) < Math.max(100, 2 * d.post.depth_mm)) {
    add('too-narrow', 'refuse', ['width'], {
      width: len(d.width),
      rails: { v: rails, as: 'count' },
      least: len(rails * width_mm + (rails - 1) * Math.max(100, 2 * d.post.depth_mm)),
    });
  }
  if (rails > 8) {
    add('too-many-rails', 'refuse', ['deck', 'width'], { rails: { v: rails, as: 'count' } });
  }
  if (d.deck.kind === 'sheet') {
    const bends = sheetBendRadius(d.deck.layer_mm);
    if (bends > d.arc.radius_mm) {
      const layer = thickestLayer(d.arc.radius_mm);
      add(layer === null ? 'no-sheet-bends' : 'sheet-too-stiff', 'refuse', ['deck', 'shape'], {
        layer: thick(d.deck.layer_mm),
        radius: len(d.arc.radius_mm),
        bends: len(bends),
        ...(layer === null ? {} : { to: thick(layer), layers: { v: Math.ceil(deck / layer), as: 'count' } }),
      });
    }
  }
  const share = entryLength(d) / (d.arc.run_mm + d.straight * Math.cos(d.arc.exit_rad));
  if (share > 0.5) {
    add('entry-long', 'warn', ['shape', 'tube'], {
      entry: len(entryLength(d)),
      share: { v: share * 100, as: 'percent' },
    });
  }
  if (d.route === 'slit') problems.push(...slitProblems(d, plan, c.radius_mm + faceOffset(c, 'hinge line')));
  return problems;
};

const slitProblems = (d: Design, plan: RailPlan, hingeRadius: number): readonly Problem[] => {
  const problems: Problem[] = [];
  const { depth_mm, wall_mm } = plan.tube;
  const kerf = plan.kerf_mm;
  if (wall_mm < THINNEST_SLIT_WALL - 1e-9 && d.first) {
    problems.push({
      code: 'wall-thin',
      severity: 'refuse',
      fields: ['tube', 'route'],
      fills: { wall: thick(wall_mm), least: thick(THINNEST_SLIT_WALL) },
    });
  }
  if (kerf > largestKerf(wall_mm) + 1e-9) {
    problems.push({
      code: 'kerf-wide',
      severity: 'refuse',
      fields: ['cutter', 'tube'],
      fills: { kerf: thick(kerf), most: thick(largestKerf(wall_mm)), wall: thick(2 * (kerf - 0.3)) },
    });
  }
  if (kerf <= 0.2) {
    problems.push({
      code: 'kerf-thin',
      severity: 'refuse',
      fields: ['cutter'],
      fills: { kerf: thick(kerf), least: thick(0.8) },
    });
    return problems;
  }
  if (plan.pitch_mm < depth_mm) {
    const h = depth_mm - wall_mm / 2;
    problems.push({
      code: 'flats-short',
      severity: 'refuse',
      fields: ['shape', 'tube', 'cutter'],
      fills: {
        flat: len(plan.pitch_mm),
        depth: len(depth_mm),
        radius: len(
          Math.ceil(((hingeRadius * depth_mm) / plan.pitch_mm - (hingeRadius - d.arc.radius_mm)) / 50) * 50,
        ),
        kerf: thick((h * depth_mm) / hingeRadius),
      },
    });
  } else if (plan.pitch_mm < d.post.depth_mm + 2 * CLEAR_OF_SLIT) {
    problems.push({
      code: 'flats-tight',
      severity: 'warn',
      fields: ['post', 'cutter'],
      fills: { flat: len(plan.pitch_mm), need: len(d.post.depth_mm + 2 * CLEAR_OF_SLIT) },
    });
  }
  const close = plan.slits.find(s => s.marked === null)?.close_rad ?? 0;
  if (close > KINK) {
    problems.push({
      code: 'kink-felt',
      severity: 'warn',
      fields: ['cutter'],
      fills: { close: { v: close, as: 'angle' }, most: { v: KINK, as: 'angle' } },
    });
  }
  // The disc under the guard reaches (diameter − 42 mm flange) / 2 when new (derived); it only has to beat the wall, but a worn small one does not.
  if ((d.grinder - 42) / 2 < 15) {
    problems.push({
      code: 'grinder-small',
      severity: 'refuse',
      fields: ['grinder'],
      fills: { grinder: len(d.grinder), least: len(100) },
    });
  }
  return problems;
};
