import { readingKey } from '../../build/fold.ts';
import { dutyShare } from '../../reckon/welding/duty.ts';
import { TURN } from '../order.ts';
import type { Fills, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { type Kind, kindOf, type Machine, machineOf } from './machine.ts';
import { placesOf } from './places.ts';
import { settingNow } from './setting-now.ts';

/** Where the machine is not told: share of ten minutes a small one on a household plug burns at 90 A (common practice). */
const DUTY = 0.2;
const TEN_MINUTES_s = 600;
/** Travel of a beginner, mm/s (common practice: 250 mm/min). */
const BEGINNER_mm_s = 250 / 60;
/** Earth clamp no farther from the weld, mm (common practice). */
const EARTH_NEAR = 300;

/** Weld of one slit: across the face and down both sides to where the corner of the back wall begins, mm (exact). */
const slitWeld = (s: Situation): number => {
  const { width_mm, depth_mm, wall_mm } = s.ramp.design.tube;
  return width_mm + 2 * (depth_mm - 2 * wall_mm);
};

/** What is looked at before any knob is turned; gas only where there is gas. */
const LIST: readonly (readonly [string, string, readonly Kind[] | null])[] = [
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
  if (machine === null || !machine.set.ok) return 'weld-first-polarity';
  switch (machine.set.value.polarity) {
    case 'electrode positive':
      return 'weld-first-polarity-positive';
    case 'electrode negative':
      return 'weld-first-polarity-negative';
    default:
      return 'weld-first-polarity-rod';
  }
};

const leadRead = (s: Situation): number | undefined =>
  ['prep/lead', 'plan/power']
    .map(step => s.build.readings.get(readingKey(step, 'lead'))?.value)
    .find(v => v !== undefined);

const noteOf = (s: Situation, id: string, machine: Machine | null): string => {
  const set = settingNow(s, 'slits') ?? settingNow(s, 'joints');
  switch (id) {
    case 'polarity':
      return polarityNote(machine);
    case 'gas':
      return set?.set.gas_l_min == null ? 'weld-first-gas' : 'weld-first-gas-flow';
    case 'tip':
      return machine?.filler_mm == null ? 'weld-first-tip' : 'weld-first-tip-size';
    case 'lead':
      return leadRead(s) === undefined ? 'weld-first-lead' : 'weld-first-lead-long';
    case 'duty':
      return placesOf(s).includes('slits') ? 'weld-first-duty' : 'weld-first-duty-joints';
    default:
      return `weld-first-${id}`;
  }
};

/** Polarity, gas, tip, earth, circuit, lead and duty before any knob: one page, one key an item. */
export const firstEvening = (s: Situation): StepDraft => {
  const machine = machineOf(s);
  const kind = kindOf(s);
  const set = settingNow(s, 'slits') ?? settingNow(s, 'joints');
  const reckoned =
    machine?.mains_V == null || set === null ? null : dutyShare(machine.mains_V, set.set.amps.start);
  const share = reckoned?.ok === true ? reckoned.value : DUTY;
  const slitArc_s = slitWeld(s) / BEGINNER_mm_s;
  const fills: Fills = {
    burn: { v: TEN_MINUTES_s * share, as: 'time' },
    ten: { v: TEN_MINUTES_s, as: 'time' },
    slits: Math.max(1, Math.floor((TEN_MINUTES_s * share) / slitArc_s)),
    near: { v: EARTH_NEAR, as: 'length' },
    lead: { v: leadRead(s) ?? 0, as: 'distance' },
    wire: { v: machine?.filler_mm ?? 0, as: 'thickness' },
    flow: { v: set?.set.gas_l_min?.start ?? 0, as: 'flow' },
  };
  const key = 'weld/first-evening';
  return {
    key,
    stage: 'weld',
    words: 'first-evening',
    fills,
    turn: TURN.testWeld + 10,
    needs: ['prep/place', 'prep/power', 'weld/machine'],
    uses: [],
    items: LIST.filter(([, , kinds]) => kinds === null || kind === null || kinds.includes(kind)).map(
      ([id, name]): Item => ({
        key: `${key}#${id}`,
        name,
        note: { words: `says.${noteOf(s, id, machine)}`, fills },
      }),
    ),
    minutes: [20, 40],
  };
};
