import { type Reading, readingKey } from '../../build/fold.ts';
import type { Settings } from '../../reckon/welding/setting.ts';
import { toldSettings, withinMachine } from '../../reckon/welding/told-settings.ts';
import type { Situation } from '../situation.ts';
import { changedSince } from '../test-pieces.ts';
import { turnedFor } from './chosen-piece.ts';
import { type Machine, machineOf, ruledFor } from './machine.ts';
import { once } from './once.ts';
import { type Place, WALL_FIGURE, wallAt } from './places.ts';
import { handSeen, insteadOf, workedFor } from './worked.ts';

export const SETTINGS = 'weld/settings';

/** Asks of a door chart by place: volts and feed of a wire, current of a rod. Volts or current 0: the door has no chart. */
export const CHART_ASKS: Readonly<Record<Place, Readonly<{ volts: string; feed: string; amps: string }>>> = {
  slits: { volts: 'chart-volts', feed: 'chart-feed', amps: 'chart-amps' },
  joints: { volts: 'joint-volts', feed: 'joint-feed', amps: 'joint-chart-amps' },
};

/** Where a setting comes from, the later before the earlier: by rule, the machine's own chart, a bead of one's own, what was chosen about it. */
export type SettingFrom = 'rule' | 'chart' | 'worked' | 'chosen';
export type SettingNow = Readonly<{ set: Settings; from: SettingFrom; wall_mm: number }>;

/** Settings by rule for a place, held inside the machine; null where machine or wire do not allow it. */
export const ruledAt = (s: Situation, machine: Machine, place: Place): Settings | null => {
  const wall_mm = wallAt(s, place);
  const ruled = ruledFor(machine.kind, wall_mm, machine.filler_mm, handSeen(s));
  if (!ruled.ok) return null;
  return machine.most_A === null
    ? ruled.value
    : withinMachine(ruled.value, machine.process, wall_mm, machine.most_A);
};

const chartAt = (s: Situation, machine: Machine, place: Place, ruled: Settings): Settings | null => {
  const wall_mm = wallAt(s, place);
  const asks = CHART_ASKS[place];
  const read = (ask: string): Reading | undefined => {
    const reading = s.build.readings.get(readingKey(SETTINGS, ask));
    // A chart was read for one wire, gas and wall: with another it says nothing.
    return reading === undefined ||
      reading.value <= 0 ||
      changedSince(s, reading.basis, { figure: WALL_FIGURE[place], now_mm: wall_mm }) !== null
      ? undefined
      : reading;
  };
  const told = (t: Parameters<typeof toldSettings>[3]): Settings =>
    toldSettings(ruled, machine.process, wall_mm, t, 'chart in the machine’s door');
  if (machine.process === 'smaw') {
    const amps = read(asks.amps)?.value;
    return amps === undefined ? null : told({ amps });
  }
  const volts = read(asks.volts)?.value;
  const feed_m_min = read(asks.feed)?.value;
  return volts === undefined || feed_m_min === undefined ? null : told({ volts, feed_m_min });
};

const workedSetting = (s: Situation, machine: Machine, place: Place, ruled: Settings): SettingNow | null => {
  const worked = workedFor(s, place);
  if (worked === null) return null;
  const wall_mm = wallAt(s, place);
  const instead = insteadOf(s, worked);
  const feed_m_min = instead?.feed_m_min ?? worked.feed_m_min;
  const amps = instead?.amps ?? worked.amps;
  const travel = instead?.travel_mm_s ?? worked.travel_mm_s;
  const set =
    feed_m_min === null
      ? amps === null
        ? null
        : toldSettings(ruled, machine.process, wall_mm, { amps }, 'a bead of your own')
      : toldSettings(
          ruled,
          machine.process,
          wall_mm,
          { volts: worked.volts, feed_m_min },
          'a bead of your own',
        );
  return set === null
    ? null
    : {
        set: { ...set, travel_mm_s: { ...set.travel_mm_s, start: travel, low: travel, high: travel } },
        from: instead === null ? 'worked' : 'chosen',
        wall_mm,
      };
};

/** A knob turned after a test piece that did not hold, when no bead was written down since. */
const turnedSetting = (s: Situation, machine: Machine, place: Place, from: Settings): SettingNow | null => {
  const turned = turnedFor(s, place);
  const worked = workedFor(s, place);
  if (turned === null || (worked !== null && worked.at_ms > turned.at_ms)) return null;
  const wall_mm = wallAt(s, place);
  const source = 'chosen after a test piece';
  const set =
    turned.feed_m_min !== null && turned.volts !== null
      ? toldSettings(
          from,
          machine.process,
          wall_mm,
          { volts: turned.volts, feed_m_min: turned.feed_m_min },
          source,
        )
      : turned.amps !== null && machine.process === 'smaw'
        ? toldSettings(from, machine.process, wall_mm, { amps: turned.amps }, source)
        : null;
  const travel = turned.travel_mm_s ?? from.travel_mm_s.start;
  return set === null
    ? null
    : {
        set: { ...set, travel_mm_s: { ...set.travel_mm_s, start: travel, low: travel, high: travel } },
        from: 'chosen',
        wall_mm,
      };
};

const settle = (s: Situation, place: Place): SettingNow | null => {
  const machine = machineOf(s);
  const ruled = machine === null ? null : ruledAt(s, machine, place);
  if (machine === null || ruled === null) return null;
  const turned = turnedSetting(s, machine, place, ruled);
  if (turned !== null) return turned;
  const worked = workedSetting(s, machine, place, ruled);
  if (worked !== null) return worked;
  const chart = chartAt(s, machine, place, ruled);
  return { set: chart ?? ruled, from: chart === null ? 'rule' : 'chart', wall_mm: wallAt(s, place) };
};

/** What to set now for the welds of a place: what worked there, else the door chart, else the rule; null until it can be said. */
export const settingNow = once(settle);
