import { TURN } from '../order.ts';
import type { Figure, Fills, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { anchorsAnEnd } from '../standing-still.ts';
import { frameBalance } from './balance.ts';
import { liftFigures } from './lifting.ts';
import { MATTERS } from './limits.ts';
import { enoughHands, handsGate, handsSaid, handsWanted } from './people.ts';

/** Base rails on soft ground stand on boards so high and so wide, mm; a rear foot stands so far behind the lip (common practice). */
const RAISE = 25;
const BOARD = 300;
const REAR_FOOT = 100;
/** Anchor lug: plate and hole, mm (common practice: 6 mm plate, hole 14 to 18). */
export const LUG = { plate: 6, hole: 16 } as const;

const length = (v: number) => ({ v, as: 'length' }) as const;

const footItems = (s: Situation): readonly Item[] =>
  s.ramp.members
    .filter(m => m.kind === 'foot plate')
    .map(m => {
      const name = (m.need.split('@')[1] ?? '').replace(':', ' ');
      return { key: `assemble/feet#${name}`, name };
    });

/** A foot plate as it was ordered. */
const footSize = (s: Situation): Fills => {
  const foot = s.ramp.members.find(m => m.kind === 'foot plate')?.tube;
  return {
    long: length(foot?.depth_mm ?? 0),
    wide: length(foot?.width_mm ?? 0),
    thick: length(foot?.wall_mm ?? 0),
  };
};

const lugItems = (s: Situation): readonly Item[] => {
  const outer = [...new Set([s.ramp.rails[0], s.ramp.rails.at(-1)])].filter(r => r !== undefined);
  const places = Array.from({ length: anchorsAnEnd(s) / 2 }, (_, k) => (k === 0 ? '' : ` ${k + 1}`));
  return ['entry', 'rear'].flatMap(end =>
    places.flatMap(place =>
      outer.map(rail => ({ key: `assemble/lugs#${end}${place} ${rail}`, name: `${end}${place} ${rail}` })),
    ),
  );
};

/** Turning the welded frame onto its base, its feet and its lugs. */
export const standUpSteps = (s: Situation): readonly StepDraft[] => {
  const wanted = handsWanted(s);
  const enough = enoughHands(s);
  return [
    {
      key: 'assemble/stand-up',
      stage: 'assemble',
      words: enough === false ? 'stand-up-few' : 'stand-up',
      fills: { wanted, here: handsSaid(s) ?? wanted },
      turn: TURN.assemble + 90,
      needs: ['assemble/weld'],
      uses: ['bare-mass', 'stand-force', 'stand-at-30', 'stand-at-60', 'stand-balance', 'stand-grip'],
      tall: ['bare-mass', 'stand-force', 'stand-balance'],
      gates: [handsGate(s, wanted)],
      minutes: [10, 25],
    },
    {
      key: 'assemble/feet',
      stage: 'assemble',
      words: 'feet',
      fills: { raise: length(RAISE), board: length(BOARD), behind: length(REAR_FOOT), ...footSize(s) },
      turn: TURN.assemble + 95,
      // A plate over the end of a base rail closes it.
      needs: ['assemble/stand-up', 'prep/vents'],
      uses: [],
      items: footItems(s),
      minutes: [30, 60],
    },
    {
      key: 'assemble/lugs',
      stage: 'assemble',
      words: 'lugs',
      fills: { plate: length(LUG.plate), hole: length(LUG.hole), handles: 2, lugs: 2 * anchorsAnEnd(s) },
      turn: TURN.assemble + 100,
      needs: ['assemble/stand-up'],
      uses: ['carried-balance'],
      tall: ['carried-balance'],
      line: { face: 'ground' },
      items: lugItems(s),
      minutes: [30, 60],
    },
  ];
};

export const standUpFigures = (s: Situation): readonly Figure[] => {
  const { mass_kg, y_mm } = frameBalance(s);
  const size = (id: string, as: Figure['as'], v: number, matters: number): Figure =>
    ({ id, kind: 'size', as, value: { is: 'exact', v }, matters }) as Figure;
  return [
    size('bare-mass', 'mass', mass_kg, MATTERS.mass),
    size('hands-wanted', 'count', handsWanted(s), MATTERS.count),
    {
      id: 'balance-high',
      kind: 'dimension',
      as: 'length',
      line: { face: 'ground' },
      value: { is: 'exact', v: y_mm },
      matters: 10,
    },
    ...liftFigures(s),
  ];
};
