import type { RailName } from '../../ramp/design.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import { tackLineOffset } from '../../ramp/rail-shape.ts';
import { backWallMoment } from '../../reckon/rail/own-weight.ts';
import {
  blockPairs,
  clampsWanted,
  jigExtent,
  jigPoints,
  jigScene,
  pairsStanding,
  SCREWS_PER_BLOCK,
} from '../jig.ts';
import { railTurn, TURN } from '../order.ts';
import type { Fills, Item, LineName, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { YIELD_MPa } from './limits.ts';

/** Points along the base line, mm apart: whole marks of the tape in hand. */
const POINT_STEP = { metric: 300, us: 304.8 } as const;
/** Tack lines of two rails that differ by less at the lip are one line, mm (a scribed line and an eye). */
const ONE_LINE = 1;
/** Template of sheet or hardboard, mm thick, low and high, and its least length where it is moved along, mm (common practice). */
const TEMPLATE = { low: 6, high: 9, least: 1200 } as const;
/** Steel between a tack and the wood under it, mm, and how far wood must keep from an arc otherwise, mm (common practice). */
const SHIM = 3;
const WOOD_CLEAR = 300;
const SHEET = 18;

const length = (v: number) => ({ v, as: 'length' }) as const;

/** What a welded rail forced to its line pushes back with at a clamp, and what a 5 × 50 screw holds in 18 mm ply, N (common practice). */
const FORCED_N = 1000;
const SCREW_N = 400;

/** What a slit being closed pushes a block with, N: the back wall folds (f_y B t²/4) over the arm to the next pair (derived). */
const closingForce = (s: Situation, plan: RailPlan, pairs: readonly { along_mm: number }[]): number => {
  const tube = { ...s.ramp.design.tube, ...s.measured.tubes.get(plan.rail) };
  const arm = pairs.reduce(
    (least, p, k) => (k === 0 ? least : Math.min(least, p.along_mm - (pairs[k - 1]?.along_mm ?? 0))),
    Number.POSITIVE_INFINITY,
  );
  const moment = backWallMoment({
    width_mm: tube.width_mm,
    depth_mm: tube.depth_mm,
    wall_mm: tube.wall_mm,
    yield_MPa: YIELD_MPa,
    mass_kg_m: 0,
  });
  return Number.isFinite(arm) && arm > 0 ? moment / arm : 0;
};

/** How far the tack line lies outside the finished line at the lip mark, mm: the bend that the welds will pull in. */
export const tackLip = (plan: RailPlan): number => -tackLineOffset(plan, plan.toLip_mm);

const linesOf = (plan: RailPlan): readonly LineName[] =>
  plan.slits.length === 0 ? ['finished line'] : ['finished line', 'tack line'];

const pointItems = (s: Situation, plan: RailPlan, key: string): readonly Item[] =>
  linesOf(plan).flatMap(line => {
    const points = jigPoints(plan, line, POINT_STEP[s.build.system]);
    return points.map(
      (p): Item => ({
        key: `${key}#${p.name}`,
        name: p.name,
        value: length(p.x_mm),
        second: length(p.y_mm),
        group: line,
      }),
    );
  });

const openPoint = (s: Situation, items: readonly Item[]): Item | undefined =>
  items.find(i => !s.build.ticks.has(i.key) && !s.build.skips.has(i.key));

const lineFills = (plan: RailPlan, items: readonly Item[]): Fills => {
  const at = (line: LineName) => jigPoints(plan, line, 300).at(-1);
  return {
    rail: plan.rail,
    count: items.length,
    'across-finished': length(at('finished line')?.across_mm ?? 0),
    'across-tack': length(at('tack line')?.across_mm ?? 0),
    near: length(1),
  };
};

const lineSteps = (
  s: Situation,
  plan: RailPlan,
  at: Readonly<{ key: (name: string) => string; turn: number; own: boolean }>,
): readonly StepDraft[] => {
  const rolled = plan.slits.length === 0;
  const key = at.key('lines');
  const items = pointItems(s, plan, key);
  const open = openPoint(s, items);
  const fills = lineFills(plan, items);
  const uses = rolled
    ? [`finished-radius@${plan.rail}`]
    : [`finished-radius@${plan.rail}`, `tack-radius@${plan.rail}`, `tack-lip@${plan.rail}`];
  const line = rolled ? 'finished line' : 'tack line';
  return [
    {
      key,
      stage: 'tack',
      words: rolled ? 'lines-rolled' : at.own ? 'lines-own' : 'lines',
      fills,
      turn: at.turn,
      needs: ['tack/jig-sheet', ...(rolled ? [] : ['cut/test-piece', 'weld/test-piece'])],
      uses,
      line: open?.name.startsWith('T') === true ? 'tack line' : 'finished line',
      items,
      minutes: [items.length, 2 * items.length],
      scene: jigScene(s, plan.rail, {
        ...(open?.value === undefined || open.second === undefined
          ? {}
          : { litPoint: { x: open.value.v, y: open.second.v } }),
      }),
    },
    {
      key: at.key('edges'),
      stage: 'tack',
      words: rolled ? 'edges-rolled' : 'edges',
      fills: {
        ...fills,
        depth: length(s.measured.tubes.get(plan.rail)?.depth_mm ?? s.ramp.design.tube.depth_mm),
      },
      turn: at.turn + 3,
      needs: [key],
      uses,
      line,
      minutes: [15, 30],
      scene: jigScene(s, plan.rail, { railOn: line }),
    },
  ];
};

/** A later rail whose tack line is not the one that was drawn gets its own, before its first slit is closed. */
export const ownLineSteps = (s: Situation, rail: RailName, index: number): readonly StepDraft[] => {
  const plan = s.ramp.plans.get(rail);
  const first = s.ramp.plans.get(s.ramp.rails[0] ?? '');
  if (index === 0 || plan === undefined || first === undefined || plan.slits.length === 0) return [];
  const drawn = s.build.ticks.get('tack/edges')?.basis[`tack-lip@${first.rail}`] ?? tackLip(first);
  const begun = [...s.build.ticks.keys()].some(
    k => k.startsWith(`tack/lines@${rail}#`) || k === `tack/edges@${rail}`,
  );
  if (!begun && Math.abs(tackLip(plan) - drawn) <= ONE_LINE) return [];
  return lineSteps(s, plan, {
    key: name => `tack/${name}@${rail}`,
    turn: railTurn(s.ramp.design, index, { third: 1, part: 'mark' }) - 8,
    own: true,
  });
};

/** The jig: sheets, lines, template and blocks, in the order they are made. */
export const jigSteps = (s: Situation): readonly StepDraft[] => {
  const plan = s.ramp.plans.get(s.ramp.rails[0] ?? '');
  if (plan === undefined) return [];
  const rolled = plan.slits.length === 0;
  const d = s.ramp.design;
  const line = rolled ? 'finished line' : 'tack line';
  const extent = jigExtent(s);
  const pairs = blockPairs(d, plan, line, pairsStanding(s));
  const few = d.clamps < clampsWanted(plan);
  const openPair = pairs.find(p => !s.build.ticks.has(`tack/blocks#${p.place}`));
  const sheet: StepDraft = {
    key: 'tack/jig-sheet',
    stage: 'tack',
    words: 'jig-sheet',
    fills: {
      run: length(extent.run_mm),
      rise: length(extent.rise_mm),
      sheet: length(SHEET),
      shim: length(SHIM),
      'wood-clear': length(WOOD_CLEAR),
    },
    turn: TURN.jig,
    needs: ['prep/place'],
    uses: ['jig-sheets'],
    minutes: [45, 90],
    scene: jigScene(s, plan.rail, { railOn: line }),
  };
  const blocks: StepDraft = {
    key: 'tack/blocks',
    stage: 'tack',
    words: rolled ? 'blocks-rolled' : few ? 'blocks-few-clamps' : 'blocks',
    fills: {
      pairs: pairs.length,
      blocks: 2 * pairs.length,
      screws: 2 * pairs.length * SCREWS_PER_BLOCK,
      each: SCREWS_PER_BLOCK,
      clamps: d.clamps,
      wanted: clampsWanted(plan),
      shim: length(SHIM),
      'wood-clear': length(WOOD_CLEAR),
      force: { v: FORCED_N, as: 'force' },
      held: { v: SCREW_N, as: 'force' },
      closing: { v: closingForce(s, plan, pairs), as: 'force' },
    },
    turn: TURN.testWeld + 80,
    needs: ['tack/edges'],
    uses: rolled ? [] : [`tack-lip@${plan.rail}`],
    line,
    items: pairs.map(p => ({
      key: `tack/blocks#${p.place}`,
      name: p.name,
      value: length(p.along_mm),
      group: 'pairs of blocks',
    })),
    minutes: [3 * pairs.length, 6 * pairs.length],
    scene: jigScene(s, plan.rail, {
      railOn: line,
      blocks: true,
      ...(openPair === undefined ? {} : { lit_mm: openPair.along_mm }),
    }),
  };
  const template: StepDraft = {
    key: 'tack/template',
    stage: 'tack',
    words: 'template',
    fills: {
      rail: plan.rail,
      low: length(TEMPLATE.low),
      high: length(TEMPLATE.high),
      least: length(TEMPLATE.least),
    },
    turn: TURN.testWeld + 70,
    needs: ['tack/edges'],
    uses: [`tack-radius@${plan.rail}`],
    line,
    minutes: [30, 60],
  };
  return [
    sheet,
    ...lineSteps(s, plan, { key: name => `tack/${name}`, turn: TURN.testWeld + 60, own: false }),
    ...(rolled ? [] : [template]),
    blocks,
  ];
};
