import { consumedBy } from '../../ramp/cutting/consumed.ts';
import { steelWanted, type Wanted } from '../../ramp/cutting/needed.ts';
import { sectionOf } from '../../ramp/cutting/stock-section.ts';
import { entryArc } from '../../ramp/entry.ts';
import { deckLength, memberMass } from '../../ramp/mass.ts';
import { type Member, sectionName } from '../../ramp/members.ts';
import { type Consumption, PRACTICE_kg } from '../../reckon/welding/consumption.ts';
import { jigExtent, jigSheets } from '../jig.ts';
import type { Item } from '../sheet.ts';
import type { Situation } from '../situation.ts';

/** A sheet of ply and of plate as a yard sells it, mm: 1220 × 2440 (trade size). */
const SHEET = { long: 2440, wide: 1220 } as const;
/** Blocks stand both sides of the rail every 2.5 flats, and four more; three screws each (common practice). */
const FLATS_PER_BLOCK = 2.5;
/** One clamp for so much of rail, mm (common practice). */
const RAIL_PER_CLAMP = 400;

const YARD = 'the steel yard';
const TIMBER = 'the timber yard';
const WELDING = 'the welding shop';
const TOOLS = 'the tool shop';
/** Where a line of the list is bought; fire kit and body cover are looked at one by one. */
const SHOPS: Readonly<Record<string, string>> = {
  'spare-rail': YARD,
  'rail-tube': YARD,
  'post-tube': YARD,
  plates: YARD,
  'entry-plate': YARD,
  'deck-sheets': TIMBER,
  'deck-boards': TIMBER,
  'jig-sheets': TIMBER,
  blocks: TIMBER,
  wire: WELDING,
  gas: WELDING,
  welder: WELDING,
  bay: WELDING,
  'thin-discs': TOOLS,
  'flap-discs': TOOLS,
  'strip-discs': TOOLS,
  'saw-wheels': TOOLS,
  clamps: TOOLS,
  measuring: TOOLS,
  marking: TOOLS,
  cleaning: TOOLS,
};

type Value = NonNullable<Item['value']>;

const plates = new Set(['side plate', 'foot plate']);

const isPlate = (m: Member): boolean => plates.has(m.kind);

/** What discs, wire and gas the frame is likely to use up; null when its tube is past what the rules know. */
export const uses = (s: Situation): Consumption | null => consumedBy(s.ramp, 'gmaw');

/** Tube of one section that the order sheet shares out to bars, m: all pieces as drawn, the spare rail and a tenth over. */
const steelOf = (wanted: readonly Wanted[], section: string): Value => ({
  v:
    wanted
      .filter(w => w.section.name === section)
      .flatMap(w => w.pieces)
      .reduce((sum, p) => sum + p.long_mm + p.over_mm, 0) / 1000,
  as: 'distance',
});

const deckPieces = (s: Situation): number => {
  const d = s.ramp.design;
  return d.deck.kind === 'sheet'
    ? d.deck.layers * Math.ceil(deckLength(d) / SHEET.long) * Math.ceil(d.width / SHEET.wide - 1e-9)
    : Math.ceil(deckLength(d) / (d.deck.board_mm + 3));
};

/** What to have before the first cut, the spare rail first. Counts are computed; each line is one key. */
export const shoppingList = (s: Situation): readonly Item[] => {
  const { design: d, plans, rails, members } = s.ramp;
  const first = plans.get(rails[0] ?? '');
  const used = uses(s);
  const list: Item[] = [];
  const add = (
    id: string,
    name: string,
    value?: Value,
    fills: Readonly<Record<string, Value>> = {},
  ): void => {
    list.push({
      key: `plan/buy#${id}`,
      name,
      note: { words: `says.buy-${id}`, fills },
      ...(SHOPS[id] === undefined ? {} : { group: SHOPS[id] }),
      ...(value === undefined ? {} : { value }),
    });
  };
  const count = (v: number): Value => ({ v, as: 'count' });
  const slit = (first?.slits.length ?? 0) > 0;

  if (first !== undefined && slit) add('spare-rail', 'spare rail', { v: first.cut_mm, as: 'length' });
  // As drawn: the list is for the day before the first cut. The saw's kerf is in no piece's length.
  const wanted = steelWanted(s.ramp, [], 0, s.ramp.nominal);
  const same = sectionName(d.tube) === sectionName(d.post);
  add(
    'rail-tube',
    `tube ${s.build.system === 'us' ? 'for rails' : sectionName(d.tube)}`,
    steelOf(wanted, sectionName(d.tube)),
    {
      depth: { v: d.tube.depth_mm, as: 'length' },
      width: { v: d.tube.width_mm, as: 'length' },
      wall: { v: d.tube.wall_mm, as: 'thickness' },
    },
  );
  if (!same) {
    add(
      'post-tube',
      `tube ${s.build.system === 'us' ? 'for uprights' : sectionName(d.post)}`,
      steelOf(wanted, sectionName(d.post)),
      {
        depth: { v: d.post.depth_mm, as: 'length' },
        width: { v: d.post.width_mm, as: 'length' },
        wall: { v: d.post.wall_mm, as: 'thickness' },
      },
    );
  }
  add('plates', 'side and foot plates', count(members.filter(isPlate).length), {
    side: count(members.filter(m => m.kind === 'side plate').length),
    foot: count(members.filter(m => m.kind === 'foot plate').length),
  });
  const plate = s.ramp.entry.pieces.find(m => m.kind === 'entry plate');
  add(
    'entry-plate',
    'entry plate',
    // As the order asks the yard for it.
    { v: plate === undefined ? entryArc(d) : sectionOf(d, plate).width_mm, as: 'length' },
    {
      wide: { v: d.width, as: 'length' },
      bearers: count(s.ramp.entry.bearers.length),
      heavy: { v: plate === undefined ? 0 : memberMass(plate), as: 'mass' },
    },
  );
  if (d.deck.kind === 'sheet') {
    add('deck-sheets', 'deck sheets', count(deckPieces(s)), {
      layer: { v: d.deck.layer_mm, as: 'length' },
      layers: count(d.deck.layers),
    });
  } else {
    add('deck-boards', 'deck boards', count(deckPieces(s)), {
      board: { v: d.deck.board_mm, as: 'length' },
      thick: { v: d.deck.thickness_mm, as: 'length' },
      long: { v: d.width, as: 'length' },
    });
  }
  if (used !== null) {
    if (slit) {
      add('thin-discs', 'thin cutting discs', count(used.buy.thin_discs), {
        low: count(used.thin_discs.low),
        high: count(used.thin_discs.high),
      });
    }
    add('flap-discs', 'flap discs', count(used.buy.flap_discs));
    add('strip-discs', 'strip discs', count(used.buy.strip_discs));
    add('saw-wheels', 'saw wheels or blades', count(used.buy.chop_discs));
    // The most it may take, as the order sheet's bands end.
    if (used.wire_kg !== null) add('wire', 'solid wire', { v: used.wire_kg.high + PRACTICE_kg, as: 'mass' });
    if (used.gas_l !== null) {
      add(
        'gas',
        'shielding gas',
        { v: used.gas_l.high, as: 'gas' },
        {
          low: { v: used.gas_l.low, as: 'gas' },
          likely: { v: used.gas_l.likely, as: 'gas' },
        },
      );
    }
  }
  if (first !== undefined) {
    const blocks = 2 * Math.ceil(first.toLip_mm / (FLATS_PER_BLOCK * first.pitch_mm)) + 4;
    add('jig-sheets', 'jig sheets', count(jigSheets(s)), {
      run: { v: jigExtent(s).run_mm, as: 'length' },
      high: { v: jigExtent(s).rise_mm, as: 'length' },
    });
    add('blocks', 'jig blocks', count(blocks), { screws: count(3 * blocks) });
    const clamps = Math.ceil(first.toLip_mm / RAIL_PER_CLAMP);
    add('clamps', 'clamps', count(clamps), { own: count(d.clamps) });
  }
  for (const [id, name] of [
    ['measuring', 'measuring kit'],
    ['marking', 'marking kit'],
    ['cleaning', 'cleaning kit'],
    ['bay', 'welding place'],
    ['fire', 'fire kit'],
    ['body', 'body cover'],
    ['welder', 'welder spares'],
  ] as const) {
    add(id, name);
  }
  return list;
};
