import type { View } from '../../coach/view.ts';
import type { Quantity } from '../../quantity/quantities.ts';
import { write } from '../../quantity/write.ts';
import { consumedBy } from '../../ramp/cutting/consumed.ts';
import { deckScrews } from '../../ramp/cutting/deck-screws.ts';
import { PRACTICE_kg } from '../../reckon/welding/consumption.ts';
import { LUG } from '../../stages/assemble/stand-up.ts';
import type { Fills, Value } from '../../stages/sheet.ts';
import { anchorsAnEnd } from '../../stages/standing-still.ts';
import { say, type Voice } from '../../words/say.ts';
import { figuresOf } from './step-words.ts';

/** Something to buy that is no bar: how much, and why so much. */
export type Good = Readonly<{
  id: string;
  name: string;
  amount: string;
  why: string;
  /** Ticked on the plan page; null for what that page does not list. */
  done: boolean | null;
}>;

/** Lines of the plan's own list that stand with the bars, or here with a band. */
const SAID_ELSEWHERE = new Set([
  'spare-rail',
  'rail-tube',
  'post-tube',
  'plates',
  'entry-plate',
  'deck-sheets',
  'deck-boards',
  'thin-discs',
  'flap-discs',
  'strip-discs',
  'saw-wheels',
  'wire',
  'gas',
]);

/** Pilot for screws into a 2 to 3 mm wall, and the core of a thin rod, as a shop of either system names them [practice]. */
const PILOT = { metric: '5 mm', us: '13/64 in' } as const;
const ROD = { metric: '2.5 mm', us: '3/32 in' } as const;

type Amount = Readonly<{ value: Value; as: Quantity }>;

const amountText = (voice: Voice, { value, as }: Amount): string => {
  const text = (v: number, unit = true): string => write(v, as, voice.system, { unit });
  switch (value.is) {
    case 'exact':
      return text(value.v);
    case 'band':
      // Minutes below two hours and hours above have each their unit.
      return `${text(value.low, as === 'time')} to ${text(value.high)}`;
    default:
      return '';
  }
};

const exact = (v: number, as: Quantity = 'count'): Amount => ({ value: { is: 'exact', v }, as });
const band = (b: { low: number; likely: number; high: number }, as: Quantity): Amount => ({
  value: { is: 'band', ...b },
  as,
});

/** A figure of some page by its name, as an amount to buy. */
const figure = (view: View, id: string): Amount | null => {
  const found = view.sheets.flatMap(s => s.figures).find(f => f.id === id);
  return found === undefined || (found.value.is !== 'exact' && found.value.is !== 'band')
    ? null
    : { value: found.value, as: found.as };
};

type Line = Readonly<{ id: string; amount: Amount | null; fills?: Fills }>;

/** Wire and gas, or self-shielded wire, or rods, and the thin discs: each a band, with what it hangs on. */
const consumed = (view: View): readonly Line[] => {
  const { ramp } = view;
  const { system } = view.build;
  const wire = consumedBy(ramp, 'gmaw');
  const cored = consumedBy(ramp, 'fcaw-s');
  const rods = consumedBy(ramp, 'smaw');
  const slits = [...ramp.plans.values()].reduce((n, p) => n + p.slits.length, 0);
  const fills: Fills = {
    slits,
    joints: [...ramp.members, ...ramp.entry.pieces].reduce((n, m) => n + m.joints, 0),
    practice: { v: PRACTICE_kg, as: 'mass' },
  };
  const lines: Line[] = [];
  const more = (b: { low: number; likely: number; high: number }) => ({
    low: b.low + PRACTICE_kg,
    likely: b.likely + PRACTICE_kg,
    high: b.high + PRACTICE_kg,
  });
  if (wire?.wire_kg) lines.push({ id: 'wire', amount: band(more(wire.wire_kg), 'mass'), fills });
  if (wire?.gas_min && wire.gas_l)
    lines.push({
      id: 'gas',
      amount: band(wire.gas_l, 'gas'),
      fills: {
        from: { v: wire.gas_l.low / wire.gas_min.low, as: 'flow' },
        to: { v: wire.gas_l.high / wire.gas_min.high, as: 'flow' },
        low: { v: wire.gas_min.low * 60, as: 'time' },
        high: { v: wire.gas_min.high * 60, as: 'time' },
      },
    });
  if (cored?.wire_kg) lines.push({ id: 'cored-wire', amount: band(more(cored.wire_kg), 'mass'), fills });
  if (rods?.rods)
    lines.push({
      id: 'rods',
      amount: band(rods.rods, 'count'),
      fills: { ...fills, buy: rods.buy.rods ?? 0, rod: ROD[system] },
    });
  if (wire !== null && slits > 0)
    lines.push({
      id: 'thin-discs',
      amount: exact(wire.buy.thin_discs),
      fills: { slits, low: wire.thin_discs.low, high: wire.thin_discs.high },
    });
  if (wire !== null) {
    const { rails } = ramp;
    const { flap_discs, strip_discs, chop_discs } = wire.buy;
    // One dresses five to ten joints, and one or two go on the beads of a rail [practice]; the least that may do, and what is bought.
    const least = Math.ceil(Number(fills.joints) / 10 + rails.length);
    lines.push({
      id: 'flap-discs',
      amount: band({ low: least, likely: flap_discs, high: flap_discs }, 'count'),
      fills: { ...fills, rails: rails.length },
    });
    lines.push({ id: 'strip-discs', amount: exact(strip_discs), fills: { rails: rails.length } });
    lines.push({ id: 'saw-wheels', amount: exact(chop_discs), fills: { worn: chop_discs - 1 } });
  }
  return lines;
};

/** Stakes bought at the least: some bend, and a weak one gets a second beside it (bench rule; practice). */
const SPARE_STAKES = 8;

/** Caulk of one tube, m of corner; plates of 3 mm under the tacks (both common practice). */
const SEAM_PER_TUBE_m = 6;
const PACKING_PLATES = 6;

/** Seam of one closed slit: both sides and the top, mm. */
const slitSeam_mm = (t: Readonly<{ depth_mm: number; width_mm: number }>): number =>
  2 * t.depth_mm + t.width_mm;

/** What the later stages want and nobody thinks of at the yard (common practice), counted from the design. */
const forgotten = (view: View): readonly Line[] => {
  const { ramp } = view;
  const rails = ramp.rails.length;
  const plans = [...ramp.plans.values()];
  const slits = plans.reduce((n, p) => n + p.slits.length, 0);
  const long_m = plans.reduce((sum, p) => sum + p.toLip_mm, 0) / 1000;
  const seams_m = (slits * slitSeam_mm(ramp.design.tube)) / 1000;
  const side = figure(view, 'foot-board');
  const screws = figure(view, 'deck-screws') ?? exact(deckScrews(ramp));
  const lines: Line[] = [
    { id: 'labels', amount: exact(ramp.members.length + ramp.entry.pieces.length) },
    ...(slits > 0 ? [{ id: 'shims', amount: exact(Math.ceil(0.3 * slits)), fills: { slits } }] : []),
    // A cut slit's burr is a sixth of its kerf.
    ...(slits > 0
      ? [
          { id: 'deburring', amount: null },
          { id: 'template', amount: exact(1) },
        ]
      : []),
    { id: 'packing', amount: exact(PACKING_PLATES) },
    { id: 'burns', amount: null },
    { id: 'planks', amount: exact(rails), fills: { rails } },
    {
      id: 'spreaders',
      amount: exact(2 * Math.ceil(ramp.lip.y_mm / 500)),
      fills: { high: { v: ramp.lip.y_mm, as: 'length' } },
    },
    { id: 'props', amount: exact(2 * rails), fills: { rails } },
    { id: 'straps', amount: exact(4) },
    { id: 'pads', amount: exact(4) },
    { id: 'caps', amount: exact(2 * rails), fills: { rails } },
    { id: 'primer', amount: figure(view, 'primer') },
    { id: 'top-coat', amount: figure(view, 'top-coat') },
    ...(slits > 0
      ? [
          {
            id: 'caulk',
            amount: exact(Math.max(1, Math.ceil(seams_m / SEAM_PER_TUBE_m))),
            fills: { seams: { v: seams_m, as: 'distance' } as const },
          },
        ]
      : []),
    { id: 'wax', amount: null },
    { id: 'deck-screws', amount: screws },
    // Copper in treated boards eats bare steel: a washer keeps them off it.
    ...(ramp.design.deck.kind === 'boards' ? [{ id: 'washers', amount: screws }] : []),
    { id: 'packer-strip', amount: exact(long_m, 'distance'), fills: { rails } },
    { id: 'bits', amount: exact(3), fills: { bit: PILOT[view.build.system] } },
    { id: 'proof', amount: figure(view, 'proof-mass') },
    { id: 'dye', amount: null },
    { id: 'handles', amount: exact(4) },
    {
      id: 'lugs',
      amount: exact(2 * anchorsAnEnd(view.situation)),
      fills: { plate: { v: LUG.plate, as: 'length' }, hole: { v: LUG.hole, as: 'length' } },
    },
    ...(side?.value.is === 'exact'
      ? [{ id: 'foot-boards', amount: exact(4), fills: { side: { v: side.value.v, as: side.as } as const } }]
      : []),
    {
      id: 'stakes',
      amount: exact(Math.max(SPARE_STAKES, 2 * anchorsAnEnd(view.situation))),
      fills: { need: 2 * anchorsAnEnd(view.situation) },
    },
    { id: 'first-ride', amount: null },
  ];
  return lines;
};

/** All that is wanted beside bars, boards and sheets: first what is used up, then the plan's own list, then what later stages want. */
export const goodsOf = (view: View, voice: Voice): readonly Good[] => {
  const own = (l: Line): Good => ({
    id: l.id,
    name: say(voice, { words: `says.good-${l.id}` }),
    amount: l.amount === null ? '' : amountText(voice, l.amount),
    why: say(voice, { words: `says.good-${l.id}-why`, fills: l.fills ?? {} }),
    done: null,
  });
  const buy = view.steps.find(s => s.key === 'plan/buy');
  const listed = (buy?.items ?? [])
    .filter(i => !SAID_ELSEWHERE.has(i.key.replace(/^.*#/, '')))
    .map(
      (i): Good => ({
        id: i.key.replace(/^.*#/, ''),
        name: i.name,
        amount: i.value === undefined ? '' : write(i.value.v, i.value.as, voice.system),
        why: i.note === undefined || buy === undefined ? '' : say(voice, i.note, figuresOf(view, buy)),
        done: view.build.ticks.has(i.key),
      }),
    );
  return [...consumed(view).map(own), ...listed, ...forgotten(view).map(own)];
};
