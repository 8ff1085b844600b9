import { TURN } from '../order.ts';
import type { Fills, Gate, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { type Kind, kindOf, MACHINE, type Machine, machineOf, railWall, settingsFor } from './machine.ts';

/** A small machine on a household plug: share of ten minutes it may burn (common practice: 20 % at 90 A). */
const DUTY_pct = 20;
const TEN_MINUTES_s = 600;
/** Travel of a beginner, mm/s (common practice: 250 mm/min). */
const BEGINNER_mm_s = 250 / 60;

const thickness = (v: number) => ({ v, as: 'thickness' }) as const;

/** Weld of one slit: across the face and down both sides to where the corner of the back wall begins, mm (exact). */
const slitWeld = (s: Situation): number => {
  const { width_mm, depth_mm, wall_mm } = s.ramp.design.tube;
  return width_mm + 2 * (depth_mm - 2 * wall_mm);
};

/** What is looked at before any knob is turned; gas only where there is gas. */
const FIRST_EVENING: readonly (readonly [string, string, readonly Kind[] | null])[] = [
  ['polarity', 'polarity', null],
  ['gas', 'gas', [1, 2]],
  ['tip', 'contact tip', [1, 2, 3]],
  ['rods', 'rods dry', [4, 5]],
  ['earth', 'earth clamp', null],
  ['circuit', 'own circuit', null],
  ['lead', 'lead', null],
  ['duty', 'duty', null],
  ['lens', 'helmet', null],
  ['fire', 'hose, extinguisher', null],
];

const polarityNote = (machine: Machine | null): string => {
  if (machine === null || !machine.set.ok) return 'says.weld-first-polarity';
  switch (machine.set.value.polarity) {
    case 'electrode positive':
      return 'says.weld-first-polarity-positive';
    case 'electrode negative':
      return 'says.weld-first-polarity-negative';
    default:
      return 'says.weld-first-polarity-rod';
  }
};

const firstEvening = (s: Situation): StepDraft => {
  const machine = machineOf(s);
  const kind = kindOf(s);
  const slitArc_s = slitWeld(s) / BEGINNER_mm_s;
  const fills: Fills = {
    duty: { v: DUTY_pct, as: 'percent' },
    slits: Math.max(1, Math.floor((TEN_MINUTES_s * DUTY_pct) / 100 / slitArc_s)),
    ten: { v: TEN_MINUTES_s, as: 'time' },
  };
  const key = 'weld/first-evening';
  return {
    key,
    stage: 'weld',
    words: 'first-evening',
    fills,
    turn: TURN.testWeld + 10,
    needs: ['prep/place', 'prep/power'],
    uses: [],
    items: FIRST_EVENING.filter(([, , kinds]) => kinds === null || kind === null || kinds.includes(kind)).map(
      ([id, name]): Item => ({
        key: `${key}#${id}`,
        name,
        note: { words: id === 'polarity' ? polarityNote(machine) : `says.weld-first-${id}`, fills },
      }),
    ),
    minutes: [20, 40],
  };
};

const wireGate = (s: Situation, machine: Machine): readonly Gate[] => {
  if (machine.set.ok || machine.filler_mm === null) return [];
  const suited = settingsFor(machine.kind, railWall(s), null);
  return [
    {
      id: 'wire-wrong',
      shut: true,
      fills: {
        wire: thickness(machine.filler_mm),
        wall: thickness(railWall(s)),
        suited: thickness(suited.ok ? suited.value.filler_mm : machine.filler_mm),
      },
      measure: MACHINE,
    },
  ];
};

const settingsWords = (
  machine: Machine | null,
): 'settings' | 'settings-gas' | 'settings-cored' | 'settings-rods' => {
  switch (machine?.process) {
    case 'gmaw':
      return 'settings-gas';
    case 'fcaw-s':
      return 'settings-cored';
    case 'smaw':
      return 'settings-rods';
    default:
      return 'settings';
  }
};

/** Figures a process is set by, the tall ones first. */
const settingsUses = (machine: Machine | null): readonly string[] => {
  const common = ['weld-amps', 'weld-volts', 'weld-travel', 'weld-shade'];
  switch (machine?.process) {
    case 'gmaw':
      return [...common, 'weld-feed', 'weld-stick-out', 'weld-gas'];
    case 'fcaw-s':
      return [...common, 'weld-feed', 'weld-stick-out'];
    case 'smaw':
      return common;
    default:
      return ['weld-amps'];
  }
};

const settingsStep = (s: Situation): StepDraft => {
  const machine = machineOf(s);
  return {
    key: 'weld/settings',
    stage: 'weld',
    words: settingsWords(machine),
    fills: {
      wall: thickness(railWall(s)),
      wire: thickness(machine?.set.ok === true ? machine.set.value.filler_mm : (machine?.filler_mm ?? 0.8)),
    },
    turn: TURN.testWeld + 20,
    needs: ['weld/first-evening'],
    uses: settingsUses(machine),
    tall: machine?.process === 'smaw' || machine === null ? ['weld-amps'] : ['weld-volts', 'weld-feed'],
    gates: machine === null ? [] : wireGate(s, machine),
    minutes: [20, 30],
  };
};

const machineStep = (s: Situation): StepDraft => {
  const rods = (kindOf(s) ?? 1) >= 4;
  return {
    key: MACHINE,
    stage: 'weld',
    words: 'machine',
    turn: TURN.testWeld,
    needs: [],
    uses: [],
    asks: [
      { ask: 'kind', as: 'count', possible: [1, 5] },
      { ask: 'wire', as: 'thickness', expected: rods ? [1.6, 4] : [0.6, 1.2], possible: [0.4, 6] },
    ],
    minutes: [3, 5],
  };
};

/** The machine told, looked over and set. */
export const setUpSteps = (s: Situation): readonly StepDraft[] => [
  machineStep(s),
  firstEvening(s),
  settingsStep(s),
];
