import type { StepKey } from '../../build/fold.ts';
import type { MemberKind } from '../../ramp/members.ts';
import { type Consumption, consumption, learnedUse, type Use } from '../../reckon/welding/consumption.ts';
import type { Situation } from '../situation.ts';
import { once } from './once.ts';
import { welderOf } from './process.ts';
import { readAt, valueAt } from './reading.ts';

/** What is welded in one go and looked over before: the rails' slits, the side frames, the frame that joins them. */
export const PARTS = ['rails', 'sides', 'frame'] as const;
export type Part = (typeof PARTS)[number];
export const SUPPLIES = ['wire', 'gas', 'rods'] as const;
export type Supply = (typeof SUPPLIES)[number];

export const suppliesKey = (part: Part): StepKey => `prep/supplies@${part}`;

/** Gas of a kilogram of CO2, l (0.54 m³ [derived from a gallon's weight and gas, found]). */
export const CO2_l_kg = 540;
/** Members that are welded on the side frames, before these are joined. */
const OF_SIDES: ReadonlySet<MemberKind> = new Set([
  'curved rail',
  'base rail',
  'lip upright',
  'upright',
  'diagonal',
  'side plate',
]);

type Welds = Readonly<{ slits: number; joints: number }>;

const welds = once((s): Readonly<Record<Part, Welds>> => {
  let slits = 0;
  for (const plan of s.ramp.plans.values()) slits += plan.slits.length;
  const joints = { sides: 0, frame: 0 };
  for (const m of s.ramp.members) joints[OF_SIDES.has(m.kind) ? 'sides' : 'frame'] += m.joints;
  return {
    rails: { slits, joints: 0 },
    sides: { slits: 0, joints: joints.sides },
    frame: { slits: 0, joints: joints.frame },
  };
});

/** Slits and joints of a part. */
export const weldsOf = (s: Situation, part: Part): Welds => welds(s)[part];

/** Parts there is something to weld in. */
export const partsOf = once((s): readonly Part[] =>
  PARTS.filter(part => welds(s)[part].slits + welds(s)[part].joints > 0),
);

const reckoned = (s: Situation, part: Part): Consumption | null => {
  const welder = welderOf(s);
  if (welder === null) return null;
  const { slits, joints } = weldsOf(s, part);
  const used = consumption({
    process: welder.process,
    slits,
    rails: 1,
    joints,
    pieces: 0,
    ...s.ramp.design.tube,
    ...(welder.process === 'smaw' ? { rod_mm: (welder.filler_mm ?? 2.5) < 2.9 ? 2.5 : 3.2 } : {}),
  });
  return used.ok ? used.value : null;
};

const ruled = once(
  (s): Readonly<Record<Part, Consumption | null>> => ({
    rails: reckoned(s, 'rails'),
    sides: reckoned(s, 'sides'),
    frame: reckoned(s, 'frame'),
  }),
);

/** By the bench rules: kg of wire, l of gas, rods. */
const ruledUse = (s: Situation, part: Part, supply: Supply): Use | null => {
  const used = ruled(s)[part];
  if (used === null) return null;
  if (supply === 'wire') return used.wire_kg;
  if (supply === 'rods') return used.rods;
  return used.gas_l;
};

/** What was there when a part was looked over: kg of wire, l of gas, rods; null where it was not read. */
export const there = (s: Situation, part: Part, supply: Supply): number | null => {
  const key = suppliesKey(part);
  if (supply === 'wire') return valueAt(s, key, 'spool') ?? null;
  if (supply === 'rods') return valueAt(s, key, 'rods') ?? null;
  const co2 = valueAt(s, key, 'co2');
  if (welderOf(s)?.kind === 2) return co2 === undefined ? null : co2 * CO2_l_kg;
  const needle = valueAt(s, key, 'needle');
  const full = bottleOf(s);
  return needle === undefined || full === null ? null : (needle / 100) * full;
};

/** The bottle as its label has it when full, l: as it was told last. */
export const bottleOf = (s: Situation): number | null => {
  const told = PARTS.map(part => readAt(s, suppliesKey(part), 'bottle')).filter(r => r !== undefined);
  return told.sort((a, b) => (a.at < b.at ? -1 : 1)).at(-1)?.value ?? null;
};

/** The reading that told it. */
export const toldBy = (s: Situation, part: Part, supply: Supply): string => {
  const ask = { wire: 'spool', rods: 'rods', gas: welderOf(s)?.kind === 2 ? 'co2' : 'needle' }[supply];
  return readAt(s, suppliesKey(part), ask)?.entry ?? '';
};

/** What a part is likely to use, learned from the parts before it: what was there before one less what was there before the next. */
export const need = (s: Situation, part: Part, supply: Supply): Use | null =>
  needs(s).get(`${part} ${supply}`) ?? null;

const needs = once(
  (s): ReadonlyMap<string, Use> =>
    new Map(
      partsOf(s).flatMap(part =>
        SUPPLIES.flatMap(supply => {
          const use = needOf(s, part, supply);
          return use === null ? [] : [[`${part} ${supply}`, use] as const];
        }),
      ),
    ),
);

const needOf = (s: Situation, part: Part, supply: Supply): Use | null => {
  const use = ruledUse(s, part, supply);
  if (use === null) return null;
  const parts = partsOf(s);
  const logged = parts.slice(0, parts.indexOf(part)).flatMap((before, i) => {
    const from = there(s, before, supply);
    const to = there(s, parts[i + 1] ?? part, supply);
    const likely = ruledUse(s, before, supply)?.likely ?? 0;
    // More than before: a new spool or bottle was fetched, and nothing is known of the old one's end.
    return from === null || to === null || to >= from ? [] : [{ used: from - to, likely }];
  });
  return learnedUse(use, logged);
};
