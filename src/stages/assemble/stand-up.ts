import { standUp } from '../../reckon/handling/stand-up.ts';
import { TURN } from '../order.ts';
import type { Figure, Gate, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { frameBalance } from './balance.ts';
import { MATTERS } from './limits.ts';
import { enoughHands, handsGate, handsSaid, handsWanted } from './people.ts';

/** Clear room on each side of the frame in a doorway, mm (common practice). */
const DOOR_CLEAR = 50;
/** Base rails on soft ground stand on boards so high and so wide, mm; a rear foot stands so far behind the lip (common practice). */
const RAISE = 25;
const BOARD = 300;
const REAR_FOOT = 100;
/** Anchor lug: plate and hole, mm (common practice: 6 mm plate, hole 14 to 18). */
const LUG = { plate: 6, hole: 16 } as const;

const length = (v: number) => ({ v, as: 'length' }) as const;

/** Mass of what is carried out: steel and entry plate, the deck not on yet. */
const movedMass = (s: Situation): number => s.ramp.masses.frame_kg + s.ramp.masses.entry_kg;

const doorGate = (s: Situation): Gate => {
  const { envelope, design: d } = s.ramp;
  return {
    id: 'door-too-small',
    shut: !envelope.fits,
    fills: {
      door: length(d.door.width_mm),
      high: length(d.door.height_mm),
      wide: length(envelope.width_mm),
      tall: length(envelope.height_mm),
      clear: length(DOOR_CLEAR),
    },
    measure: 'plan/door',
  };
};

const footItems = (s: Situation): readonly Item[] =>
  s.ramp.members
    .filter(m => m.kind === 'foot plate')
    .map(m => {
      const name = (m.need.split('@')[1] ?? '').replace(':', ' ');
      return { key: `assemble/feet#${name}`, name };
    });

const lugItems = (s: Situation): readonly Item[] => {
  const outer = [...new Set([s.ramp.rails[0], s.ramp.rails.at(-1)])].filter(r => r !== undefined);
  return ['entry', 'rear'].flatMap(end =>
    outer.map(rail => ({ key: `assemble/lugs#${end} ${rail}`, name: `${end} ${rail}` })),
  );
};

/** Turning the welded frame onto its base, its feet and lugs, and the way out of the door. */
export const standUpSteps = (s: Situation): readonly StepDraft[] => {
  const wanted = handsWanted(s);
  const enough = enoughHands(s);
  const moved = movedMass(s);
  const movers = handsWanted(s, moved);
  return [
    {
      key: 'assemble/stand-up',
      stage: 'assemble',
      words: enough === false ? 'stand-up-few' : 'stand-up',
      fills: { wanted, here: handsSaid(s) ?? wanted },
      turn: TURN.assemble + 90,
      needs: ['assemble/weld'],
      uses: ['bare-mass', 'balance-point', 'stand-force'],
      tall: ['bare-mass'],
      gates: [handsGate(s, wanted)],
      minutes: [10, 25],
    },
    {
      key: 'assemble/feet',
      stage: 'assemble',
      words: 'feet',
      fills: { raise: length(RAISE), board: length(BOARD), behind: length(REAR_FOOT) },
      turn: TURN.assemble + 95,
      needs: ['assemble/stand-up'],
      uses: [],
      items: footItems(s),
      minutes: [30, 60],
    },
    {
      key: 'assemble/lugs',
      stage: 'assemble',
      words: 'lugs',
      fills: { plate: length(LUG.plate), hole: length(LUG.hole), handles: 2 },
      turn: TURN.assemble + 100,
      needs: ['assemble/stand-up'],
      uses: ['balance-point'],
      tall: ['balance-point'],
      line: { face: 'ground' },
      items: lugItems(s),
      minutes: [30, 60],
    },
    {
      key: 'assemble/move-out',
      stage: 'assemble',
      words: 'move-out',
      fills: {
        movers,
        mass: { v: moved, as: 'mass' },
        long: length(s.ramp.envelope.length_mm),
        wide: length(s.ramp.envelope.width_mm),
        high: length(s.ramp.envelope.height_mm),
      },
      // Painted, but without its deck, it is as light as it will be: between paint and deck of the last stage.
      turn: TURN.finish + 115,
      needs: ['assemble/feet', 'assemble/lugs'],
      uses: ['balance-point'],
      gates: [doorGate(s), handsGate(s, movers)],
      minutes: [20, 60],
    },
  ];
};

export const standUpFigures = (s: Situation): readonly Figure[] => {
  const { mass_kg, x_mm, y_mm } = frameBalance(s);
  const front = s.ramp.entry.length_mm;
  // Turned over about its rear edge: hands at the entry end, the whole length away.
  const lift = standUp({
    mass_kg,
    along_mm: Math.max(1, s.ramp.lip.x_mm - x_mm),
    above_mm: Math.max(0, y_mm),
    hands_mm: s.ramp.lip.x_mm - front,
  });
  const size = (id: string, as: Figure['as'], v: number, matters: number): Figure =>
    ({ id, kind: 'size', as, value: { is: 'exact', v }, matters }) as Figure;
  return [
    size('bare-mass', 'mass', mass_kg, MATTERS.mass),
    size('hands-wanted', 'count', handsWanted(s), MATTERS.count),
    {
      id: 'balance-point',
      kind: 'dimension',
      as: 'length',
      line: { face: 'ground' },
      value: { is: 'exact', v: x_mm - front },
      matters: 10,
    },
    lift.ok
      ? size('stand-force', 'force', lift.value.start_N, 10)
      : {
          id: 'stand-force',
          kind: 'size',
          as: 'force',
          value: { is: 'unknown', needs: 'assemble/weld' },
          matters: 10,
        },
  ];
};
