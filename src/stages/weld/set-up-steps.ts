import { readingKey } from '../../build/fold.ts';
import { MAINS_V, thickestOnePass } from '../../reckon/welding/duty.ts';
import type { Settings } from '../../reckon/welding/setting.ts';
import type { StartBand } from '../../reckon/welding/start-band.ts';
import { TURN } from '../order.ts';
import type { Ask, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sameWall } from '../weld-walls.ts';
import { firstEvening } from './first-evening.ts';
import { hotGates, machineGates } from './hot-gates.ts';
import { KINDS, kindOf, MACHINE, type Machine, machineOf } from './machine.ts';
import { numbered } from './numbered.ts';
import { pairingAsks } from './pairing.ts';
import { type Place, placesOf, wallAt } from './places.ts';
import { CHART_ASKS, ruledAt, SETTINGS, settingNow } from './setting-now.ts';

/** A machine is usually a little stronger than its steel asks, A (our own judgement, for what is no surprise to read). */
const STRONGER_A = 60;
/** A socket of a US garage. */
const LOW_MAINS_V = 120;
/** What of the machine each gate is about. */
const ABOUT: Readonly<Record<string, string>> = {
  'wire-wrong': 'wire',
  'machine-small': 'most',
  'mains-small': 'mains',
};
/** A chart is no surprise so far from the rule either way, as a share (makers' tables lie within two fifths of it). */
const CHART_OFF = 0.4;

const thickness = (v: number) => ({ v, as: 'thickness' }) as const;

/** No source gives the feed of this wire, and no chart was typed in: what is to be set is not known yet. */
const feedUnknown = (s: Situation, machine: Machine | null): boolean =>
  machine?.process === 'fcaw-s' && placesOf(s).some(place => settingNow(s, place)?.set.feed_m_min === null);

const settingsWords = (
  s: Situation,
  machine: Machine | null,
): 'settings' | 'settings-gas' | 'settings-cored' | 'settings-cored-chart' | 'settings-rods' => {
  switch (machine?.process) {
    case 'gmaw':
      return 'settings-gas';
    case 'fcaw-s':
      return feedUnknown(s, machine) ? 'settings-cored-chart' : 'settings-cored';
    case 'smaw':
      return 'settings-rods';
    default:
      return 'settings';
  }
};

/** Figures a process is set by, the tall ones first; and what the tick remembers it was set for. */
const settingsUses = (machine: Machine | null): readonly string[] => {
  const told = ['weld-kind', 'weld-wire', 'weld-wall', 'joint-wall'];
  const common = ['weld-amps', 'weld-volts', 'weld-travel', 'weld-shade'];
  switch (machine?.process) {
    case 'gmaw':
      return [...common, 'weld-feed', 'weld-stick-out', 'weld-gas', 'joint-volts', 'joint-feed', ...told];
    case 'fcaw-s':
      return [...common, 'weld-feed', 'weld-stick-out', 'joint-volts', 'joint-feed', ...told];
    case 'smaw':
      return [...common, 'joint-amps', ...told];
    default:
      return ['weld-amps'];
  }
};

/** What the chart in the machine's door says for one wall; nought where there is none. */
const chartAsks = (s: Situation, machine: Machine, place: Place, ruled: Settings): readonly Ask[] => {
  const asks = CHART_ASKS[place];
  const about = (band: StartBand, by: number): readonly [number, number] => [
    band.start * (1 - by),
    band.start * (1 + by),
  ];
  if (machine.process === 'smaw')
    return [{ ask: asks.amps, as: 'current', expected: [0, 2 * ruled.amps.start], possible: [0, 500] }];
  const volts: Ask = {
    ask: asks.volts,
    as: 'tension',
    // Nought, where there is no chart, is no surprise.
    expected: [0, 2 * ruled.volts.start],
    possible: [0, 45],
  };
  const none = s.build.readings.get(readingKey(SETTINGS, asks.volts))?.value === 0;
  const feed = ruled.feed_m_min;
  return none
    ? [volts]
    : [
        volts,
        {
          ask: asks.feed,
          as: 'feed',
          ...(feed === null ? {} : { expected: about(feed, CHART_OFF) }),
          possible: [0.5, 25],
        },
      ];
};

/** Charts of each wall there is; without one for the first wall there is none for the second. */
const allChartAsks = (s: Situation, machine: Machine): readonly Ask[] => {
  const [first, second] = placesOf(s);
  if (first === undefined) return [];
  const ruled = ruledAt(s, machine, first);
  if (ruled === null) return [];
  const asks = chartAsks(s, machine, first, ruled);
  const head = asks[0]?.ask ?? '';
  const none = s.build.readings.get(readingKey(SETTINGS, head))?.value === 0;
  const other = second === undefined ? null : ruledAt(s, machine, second);
  return second === undefined || other === null || none || sameWall(wallAt(s, first), wallAt(s, second))
    ? asks
    : [...asks, ...chartAsks(s, machine, second, other)];
};

const settingsStep = (s: Situation): StepDraft => {
  const machine = machineOf(s);
  const first = placesOf(s)[0] ?? 'joints';
  // A setting that an older journal ticked off was not asked what stood on spool and bottle.
  const ticked = s.build.ticks.has(SETTINGS) && !s.build.readings.has(readingKey(SETTINGS, 'spool'));
  return {
    key: SETTINGS,
    stage: 'weld',
    words: settingsWords(s, machine),
    fills: {
      wall: thickness(wallAt(s, first)),
      joint: thickness(wallAt(s, 'joints')),
      wire: thickness(machine?.set.ok === true ? machine.set.value.filler_mm : (machine?.filler_mm ?? 0.8)),
    },
    turn: TURN.testWeld + 20,
    needs: ['weld/machine', 'weld/first-evening'],
    uses: settingsUses(machine),
    tall:
      machine?.process === 'smaw' || machine === null || feedUnknown(s, machine)
        ? ['weld-amps']
        : ['weld-volts', 'weld-feed'],
    ...(machine === null || ticked
      ? {}
      : { asks: [...pairingAsks(s, machine.kind), ...allChartAsks(s, machine)] }),
    gates: [...hotGates(s), ...machineGates(s)],
    minutes: [20, 30],
  };
};

const machineStep = (s: Situation): StepDraft => {
  const rods = (kindOf(s) ?? 1) >= 4;
  const machine = machineOf(s);
  const needed = Math.max(
    ...placesOf(s).map(place => {
      const ruled = machine === null ? null : ruledAt(s, { ...machine, most_A: null }, place);
      return ruled?.amps.high ?? 120;
    }),
  );
  const thickest = Math.max(...placesOf(s).map(place => wallAt(s, place)));
  const onePass = thickestOnePass(LOW_MAINS_V, 'gmaw') ?? Infinity;
  const asks: readonly Ask[] = [
    numbered('kind', 1, KINDS.length),
    { ask: 'wire', as: 'thickness', expected: rods ? [1.6, 4] : [0.6, 1.2], possible: [0.4, 6] },
    { ask: 'most', as: 'current', expected: [needed, needed + STRONGER_A], possible: [20, 600] },
    {
      ask: 'mains',
      as: 'tension',
      expected: s.build.system === 'us' && thickest <= onePass ? [110, 130] : [220, 240],
      possible: [MAINS_V.atLeast, MAINS_V.atMost],
    },
  ];
  // What a shut gate is about comes first: it is the one that is read again.
  const wrong = [...hotGates(s), ...machineGates(s)].map(gate => ABOUT[gate.id]).find(a => a !== undefined);
  return {
    key: MACHINE,
    stage: 'weld',
    words: 'machine',
    turn: TURN.testWeld,
    needs: [],
    uses: [],
    asks: [...asks.filter(a => a.ask === wrong), ...asks.filter(a => a.ask !== wrong)],
    minutes: [3, 5],
  };
};

/** The machine told, looked over and set. */
export const setUpSteps = (s: Situation): readonly StepDraft[] => [
  machineStep(s),
  firstEvening(s),
  settingsStep(s),
];
