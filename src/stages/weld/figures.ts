import type { Quantity } from '../../quantity/quantities.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import type { Settings } from '../../reckon/welding/setting.ts';
import { shade } from '../../reckon/welding/shade.ts';
import { slowHandAmps } from '../../reckon/welding/solid-wire-settings.ts';
import type { StartBand } from '../../reckon/welding/start-band.ts';
import { lineLength } from '../jig.ts';
import type { Figure, Value } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { offsetsOf } from '../slit-errors.ts';
import { halvesOf, SIDES_SHARE } from '../weld-order.ts';
import { jointWall, railWall } from '../weld-walls.ts';
import { halfReading } from './half-reading.ts';
import { MATTERS } from './limits.ts';
import { MACHINE, machineOf, told } from './machine.ts';
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
import { type SettingNow, settingNow } from './setting-now.ts';

const band = (b: Band): Value => ({ is: 'band', low: b.low, likely: b.likely, high: b.high });

/** Scatter of the slow-hand rule, as a share (common practice). */
const SLOW_SCATTER = 0.15;

/** Where a wire's settings are not known yet, or this machine has no such setting. */
const UNTOLD: Value = { is: 'unknown', needs: MACHINE };

/** A setting by rule is a start and a band; one that a chart or a bead of one's own gave is that number. */
const setting = (now: SettingNow | null, of: (set: Settings) => StartBand | null, told = true): Value => {
  const b = now === null ? null : of(now.set);
  if (now === null || b === null) return UNTOLD;
  return told && now.from !== 'rule'
    ? { is: 'exact', v: b.start }
    : { is: 'band', low: b.low, likely: b.start, high: b.high };
};

/** Where a setting comes from, where it is no table of makers: a chart or bead of this bench, or what is only remembered of a wire or rod. */
const sourceOf = (
  now: SettingNow | null,
  of: (set: Settings) => StartBand | null,
  told = true,
): Pick<Figure, 'source'> => {
  const b = now === null ? null : of(now.set);
  if (now === null || b === null) return {};
  if (told && now.from !== 'rule')
    return { source: now.from === 'chart' ? 'weld-door-chart' : 'weld-own-bead' };
  return b.mark === 'memory' ? { source: 'weld-remembered' } : {};
};

/** Current before the machine is told: one ampere for each thousandth of an inch of wall. */
const slowHand = (wall_mm: number): Value => {
  const likely = slowHandAmps(wall_mm);
  return { is: 'band', low: likely * (1 - SLOW_SCATTER), likely, high: likely * (1 + SLOW_SCATTER) };
};

/** What was welded with another setting stays welded: no change of one makes a step stale. */
const NEVER = Number.MAX_SAFE_INTEGER;

const settingFigures = (s: Situation): readonly Figure[] => {
  const machine = machineOf(s);
  const slits = settingNow(s, 'slits');
  const joints = settingNow(s, 'joints');
  const size = (id: string, as: Quantity, value: Value, matters: number): Figure => ({
    id,
    kind: 'size',
    as,
    value,
    matters,
  });
  const set = (
    id: string,
    as: Quantity,
    now: SettingNow | null,
    of: (set: Settings) => StartBand | null,
    told = true,
  ): Figure => ({ ...size(id, as, setting(now, of, told), NEVER), ...sourceOf(now, of, told) });
  // Before the machine is told, the shade of wire at this wall's current: never lighter than the least of any process.
  const dark =
    machine === null || slits === null
      ? shade('gmaw', slowHandAmps(railWall(s)))
      : shade(machine.process, slits.set.amps.start, machine.process === 'smaw' ? slits.set.filler_mm : 0);
  const wire = told(s, 'wire');
  return [
    slits === null
      ? size('weld-amps', 'current', slowHand(railWall(s)), NEVER)
      : set('weld-amps', 'current', slits, x => x.amps),
    set('weld-volts', 'tension', slits, x => x.volts),
    set('weld-feed', 'feed', slits, x => x.feed_m_min),
    set('weld-stick-out', 'length', slits, x => x.stick_out_mm, false),
    set('weld-gas', 'flow', slits, x => x.gas_l_min, false),
    set('weld-travel', 'travel', slits, x => x.travel_mm_s, slits?.from !== 'chart'),
    size('weld-shade', 'count', dark.ok ? { is: 'exact', v: dark.value.start } : UNTOLD, 0.5),
    joints === null
      ? size('joint-amps', 'current', slowHand(jointWall(s)), NEVER)
      : set('joint-amps', 'current', joints, x => x.amps),
    set('joint-volts', 'tension', joints, x => x.volts),
    set('joint-feed', 'feed', joints, x => x.feed_m_min),
    set('joint-travel', 'travel', joints, x => x.travel_mm_s, joints?.from !== 'chart'),
    // What a piece or a setting is remembered by.
    {
      ...size('weld-kind', 'count', machine === null ? UNTOLD : { is: 'exact', v: machine.kind }, 0.5),
      answers: 'steps.weld.machine.choices.kind',
    },
    size('weld-wire', 'thickness', wire === undefined ? UNTOLD : { is: 'exact', v: wire }, 0.05),
    size('weld-wall', 'thickness', { is: 'exact', v: railWall(s) }, 0.35),
    size('joint-wall', 'thickness', { is: 'exact', v: jointWall(s) }, 0.35),
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
