import type { Quantity } from '../../quantity/quantities.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import { shade } from '../../reckon/welding/shade.ts';
import { slowHandAmps } from '../../reckon/welding/solid-wire-settings.ts';
import { lineLength } from '../jig.ts';
import type { Figure, Value } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { offsetsOf } from '../slit-errors.ts';
import { halvesOf, SIDES_SHARE } from '../weld-order.ts';
import { halfReading } from './half-reading.ts';
import { jointSettings, jointWall } from './joint-steps.ts';
import { MATTERS } from './limits.ts';
import { MACHINE, machineOf, railWall } from './machine.ts';
import {
  type Band,
  bendForeseen,
  KEYS,
  pullAll,
  pullBand,
  pullHalf,
  pullOddTops,
  slitNumbers,
  tackedBend,
} from './rail-pull.ts';
import { apartFigures } from './rails-apart.ts';

const band = (b: Band): Value => ({ is: 'band', low: b.low, likely: b.likely, high: b.high });

/** Scatter of the slow-hand rule, as a share (common practice). */
const SLOW_SCATTER = 0.15;

const fromStart = (b: { low: number; start: number; high: number } | null | undefined): Value =>
  b === null || b === undefined
    ? { is: 'unknown', needs: MACHINE }
    : { is: 'band', low: b.low, likely: b.start, high: b.high };

/** Current before the machine is told: one ampere for each thousandth of an inch of wall. */
const slowHand = (wall_mm: number): Value => {
  const likely = slowHandAmps(wall_mm);
  return { is: 'band', low: likely * (1 - SLOW_SCATTER), likely, high: likely * (1 + SLOW_SCATTER) };
};

const settingFigures = (s: Situation): readonly Figure[] => {
  const machine = machineOf(s);
  const set = machine?.set.ok === true ? machine.set.value : null;
  const size = (id: string, as: Quantity, value: Value, matters: number): Figure => ({
    id,
    kind: 'size',
    as,
    value,
    matters,
  });
  // Before the machine is told, the shade of wire at this wall's current: never lighter than the least of any process.
  const dark =
    machine === null || set === null
      ? shade('gmaw', slowHandAmps(railWall(s)))
      : shade(machine.process, set.amps.start, machine.process === 'smaw' ? set.filler_mm : 0);
  const joint = jointSettings(s);
  return [
    size('weld-amps', 'current', set === null ? slowHand(railWall(s)) : fromStart(set.amps), 5),
    size('weld-volts', 'tension', fromStart(set?.volts), 0.5),
    size('weld-feed', 'feed', fromStart(set?.feed_m_min), 0.3),
    size('weld-stick-out', 'length', fromStart(set?.stick_out_mm), 1),
    size('weld-gas', 'flow', fromStart(set?.gas_l_min), 1),
    size('weld-travel', 'travel', fromStart(set?.travel_mm_s), 0.5),
    size(
      'weld-shade',
      'count',
      dark.ok ? { is: 'exact', v: dark.value.start } : { is: 'unknown', needs: MACHINE },
      0.5,
    ),
    size('joint-amps', 'current', joint === null ? slowHand(jointWall(s)) : fromStart(joint.amps), 5),
  ];
};

/** Offset of the lip mark from the tack line at the half-way survey, mm, + toward the centre. */
const halfLip = (plan: RailPlan): Band => {
  const pull = pullBand(plan);
  const first = new Set(halvesOf(slitNumbers(plan)).first);
  const lip = lineLength(plan, 'tack line');
  const at = (each: number): number =>
    offsetsOf(
      plan,
      'tack line',
      plan.slits.map(slit => (first.has(slit.number) ? each : 0)),
      [lip],
    )[0] ?? 0;
  return {
    low: at(pull.low * SIDES_SHARE.low),
    likely: at(pull.likely * SIDES_SHARE.likely),
    high: at(pull.high * SIDES_SHARE.high),
  };
};

const railFigures = (s: Situation, plan: RailPlan): readonly Figure[] => {
  const { rail } = plan;
  if (plan.slits.length === 0) return [];
  const angle = (id: string, value: Value, on?: string): Figure => ({
    id: `${id}@${rail}`,
    kind: 'size',
    as: 'angle',
    value,
    matters: MATTERS.angle,
    ...(on === undefined ? {} : { on }),
  });
  const tacked = tackedBend(s, plan);
  const odd = pullOddTops(plan);
  const half = halfReading(s, plan);
  return [
    angle('pull-all', band(pullAll(plan))),
    angle('half-bend', band(pullHalf(plan))),
    {
      id: `half-lip@${rail}`,
      kind: 'dimension',
      as: 'length',
      line: 'tack line',
      value: band(halfLip(plan)),
      matters: 1,
    },
    angle(
      'half-told',
      half === null ? { is: 'unknown', needs: KEYS.half(rail) } : { is: 'exact', v: half.perSlit_rad },
      half?.survey,
    ),
    angle('odd-bend', band({ low: tacked + odd.low, likely: tacked + odd.likely, high: tacked + odd.high })),
    angle('bend-cold', band(bendForeseen(s, plan))),
  ];
};

/** The numbers of welding: what to set, how far the welds pull by now and in all, rails against each other. */
export const weldFigures = (s: Situation): readonly Figure[] => [
  ...settingFigures(s),
  ...[...s.ramp.plans.values()].flatMap(plan => railFigures(s, plan)),
  ...apartFigures(s),
];
