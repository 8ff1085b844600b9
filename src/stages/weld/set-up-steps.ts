import { READINGS } from '../../build/reading-names.ts';
import { TURN } from '../order.ts';
import type { Fills, Gate, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { type Kind, kindOf, MACHINE, type Machine, machineOf, railWall, settingsFor } from './machine.ts';
import { around, pullBand } from './rail-pull.ts';

/** Angle of a straight edge's legs: 1 mm on 600 is 0.1° (bench-practice 1-9; exact). */
const LEG = 600;
/** A gauge's step at each end of what is read, rad. */
const GAUGE = (0.2 * Math.PI) / 180;
/** What a closed slit of the bend test is opened to, rad, without a tear (bench-practice 1-16; common practice). */
const OPENED_TO = (20 * Math.PI) / 180;
/** After so long without welding, or with another wire, gas or wall, the test pieces are made again, weeks (bench-practice 2-12; common practice). */
const GOOD_FOR_WEEKS = 8;
/** A small machine on a household plug: share of ten minutes it may burn (common practice: 20 % at 90 A). */
const DUTY_pct = 20;
const TEN_MINUTES_s = 600;
/** Travel of a beginner, mm/s (common practice: 250 mm/min). */
const BEGINNER_mm_s = 250 / 60;

const thickness = (v: number) => ({ v, as: 'thickness' }) as const;
const angle = (v: number) => ({ v, as: 'angle' }) as const;

/** Weld of one slit: across the face and down both sides to where the corner of the back wall begins, mm (exact). */
export const slitWeld = (s: Situation): number => {
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

const testPiece = (s: Situation): StepDraft | null => {
  const plan = s.ramp.plans.get(s.ramp.rails[0] ?? '');
  if (plan === undefined || plan.slits.length === 0) return null;
  const { step, ask, slits } = READINGS.testPull;
  const closed =
    s.build.readings.get(`${READINGS.testKerf.step}#${READINGS.testKerf.ask}`)?.value ??
    (READINGS.testKerf.slits * plan.kerf_mm) / (s.ramp.design.tube.depth_mm - s.ramp.design.tube.wall_mm / 2);
  const pull = pullBand(plan);
  return {
    key: step,
    stage: 'weld',
    words: 'test-piece',
    fills: {
      slits,
      all: READINGS.testKerf.slits,
      closed: angle(closed),
      low: angle(slits * pull.low),
      high: angle(slits * pull.high),
      leg: { v: LEG, as: 'length' },
      rise: { v: 1, as: 'length' },
      step: angle(1 / LEG),
    },
    turn: TURN.testWeld + 30,
    needs: [
      'cut/test-piece',
      'prep/place',
      'prep/power',
      'prep/weather',
      'prep/dry-steel',
      'prep/body',
      'weld/first-evening',
      'weld/settings',
    ],
    uses: ['weld-amps'],
    asks: [
      {
        ask,
        as: 'angle',
        expected: around(
          {
            low: closed + slits * pull.low,
            likely: closed + slits * pull.likely,
            high: closed + slits * pull.high,
          },
          GAUGE,
        ),
        possible: [Math.max(0, closed - 0.05), closed + 0.3],
      },
    ],
    cautions: ['weld-fume'],
    minutes: [45, 90],
  };
};

const coupons = (s: Situation): StepDraft => {
  const slit = s.ramp.design.route === 'slit';
  const items: readonly (readonly [string, string])[] = [
    ['tee', 'T joint, bent'],
    ...(slit ? ([['slit', 'slit, opened']] as const) : []),
    ['sawn', 'sawn through'],
  ];
  return {
    key: 'weld/coupons',
    stage: 'weld',
    words: slit ? 'coupons' : 'coupons-rolled',
    fills: { opened: angle(OPENED_TO), weeks: GOOD_FOR_WEEKS },
    turn: TURN.testWeld + 40,
    needs: ['weld/settings', 'prep/weather', 'prep/dry-steel', 'prep/body'],
    uses: [],
    items: items.map(
      ([id, name]): Item => ({
        key: `weld/coupons#${id}`,
        name,
        note: { words: `says.weld-coupon-${id}`, fills: { opened: angle(OPENED_TO) } },
      }),
    ),
    minutes: [45, 90],
  };
};

/** The machine told, looked over and set, and its first welds made on steel that is not the job. */
export const setUpSteps = (s: Situation): readonly StepDraft[] => {
  const test = testPiece(s);
  return [machineStep(s), firstEvening(s), settingsStep(s), ...(test === null ? [] : [test]), coupons(s)];
};
