import { readingKey } from '../../build/fold.ts';
import type { GroundName } from '../../ramp/design.ts';
import { FRICTION, type Ground, type Slide, START_PULL_N, slide } from '../../reckon/handling/slide.ts';
import { TURN } from '../order.ts';
import type { Figure, Gate, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { type Balance, carriedBalance } from './balance.ts';
import { lowLimit_kg } from './lifting.ts';
import { MATTERS } from './limits.ts';
import { handsGate, handsSaid, handsWanted } from './people.ts';

/** Clear room on each side of the frame in a doorway, mm (common practice). */
const DOOR_CLEAR = 50;
/** Carried so far without putting down, m: HSE's carrying filter [found]. */
const CARRY_m = 10;
/** From such a slope on nobody carries: it is let down or pulled up by a rope, rad (common practice). */
const ROPE_FROM = (5 * Math.PI) / 180;
/** Breaking strength of a rope over the pull it is trusted with: fibre rope, a safety page on slings [found]. */
const ROPE_FACTOR = 5;

const length = (v: number) => ({ v, as: 'length' }) as const;
const WAY = 'assemble/way';

const read = (s: Situation, ask: string): number | null =>
  s.build.readings.get(readingKey(WAY, ask))?.value ?? null;

/** What the frame slides on where no boards are laid: its own ground, by the ranges of steel on it. */
const SLIDES_ON: Readonly<Record<GroundName, Ground>> = {
  concrete: 'concrete',
  gravel: 'gravel',
  sand: 'firm soil',
  clay: 'firm soil',
  'dry lawn': 'dry grass',
  'wet lawn': 'wet grass',
  'soft or filled ground': 'feet dug in',
};

type Moves = Readonly<{ bare: Slide; boards: Slide; wheels: Slide; slope_rad: number }>;

/** Pulls of the frame along its steepest slope, on the bare ground, on boards and on wheels. */
export const movesOf = (s: Situation, mass_kg: number = carriedBalance(s).mass_kg): Moves | null => {
  const slope_rad = read(s, 'slope') ?? 0;
  const on = (friction: { low: number; high: number }) => slide({ mass_kg, slope_rad, friction });
  const bare = on(FRICTION[SLIDES_ON[s.ramp.design.ground]]);
  const boards = on(FRICTION.boards);
  const wheels = on(FRICTION['wheels on grass']);
  return bare.ok && boards.ok && wheels.ok
    ? { bare: bare.value, boards: boards.value, wheels: wheels.value, slope_rad }
    : null;
};

type How = Readonly<{
  words: 'move-out' | 'move-out-slide' | 'move-out-trolley' | 'move-out-rope';
  people: number;
}>;

/** The pull that counts for each way of moving it. */
const TALL: Readonly<Record<How['words'], readonly string[]>> = {
  'move-out': [],
  'move-out-slide': ['pull-boards'],
  'move-out-trolley': ['pull-wheels'],
  'move-out-rope': ['pull-wheels', 'hold-back'],
};

/** People who pull a load off, by what each may: never fewer than two. */
const pullers = (start_N: number): number => Math.max(2, Math.ceil(start_N / START_PULL_N.man - 1e-9));

/** On a slope roped on wheels, whoever is there; else carried where hands suffice, slid on boards by fewer, rolled by still fewer. */
export const howMoved = (s: Situation, carried: Balance = carriedBalance(s)): How => {
  const moves = movesOf(s, carried.mass_kg);
  const carriers = handsWanted(s, carried.mass_kg);
  if (moves === null) return { words: 'move-out', people: carriers };
  const rollers = pullers(moves.wheels.start_N.high);
  if (moves.slope_rad >= ROPE_FROM) return { words: 'move-out-rope', people: rollers };
  const said = handsSaid(s);
  if (said === null || said >= carriers) return { words: 'move-out', people: carriers };
  const sliders = pullers(moves.boards.start_N.high);
  return said >= sliders
    ? { words: 'move-out-slide', people: sliders }
    : { words: 'move-out-trolley', people: rollers };
};

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

/** The way walked and measured, and the frame moved along it: as light as it will be, between paint and deck. */
export const movingSteps = (s: Situation): readonly StepDraft[] => {
  const carried = carriedBalance(s);
  const how = howMoved(s, carried);
  return [
    {
      key: WAY,
      stage: 'assemble',
      words: 'way',
      fills: {
        wide: length(s.ramp.envelope.width_mm),
        clear: length(DOOR_CLEAR),
        steep: { v: ROPE_FROM, as: 'angle' },
      },
      turn: TURN.finish + 112,
      needs: ['assemble/feet', 'assemble/lugs'],
      uses: [],
      asks: [
        { ask: 'way', as: 'distance', expected: [2, 60], possible: [0.5, 2000] },
        { ask: 'slope', as: 'angle', expected: [0, (6 * Math.PI) / 180], possible: [0, Math.PI / 4] },
      ],
      minutes: [5, 10],
    },
    {
      key: 'assemble/move-out',
      stage: 'assemble',
      words: how.words,
      fills: {
        movers: how.people,
        here: handsSaid(s) ?? how.people,
        mass: { v: carried.mass_kg, as: 'mass' },
        long: length(s.ramp.entry.length_mm + s.ramp.envelope.length_mm),
        wide: length(s.ramp.envelope.width_mm),
        high: length(s.ramp.envelope.height_mm),
        rest: { v: CARRY_m, as: 'distance', step: 1 },
        slope: { v: read(s, 'slope') ?? 0, as: 'angle' },
      },
      turn: TURN.finish + 115,
      needs: [WAY],
      uses: ['carried-mass', 'carried-balance', 'pull-boards', 'pull-wheels', 'hold-back', 'rope-breaks'],
      tall: ['carried-mass', ...TALL[how.words]],
      gates: [doorGate(s), handsGate(s, how.people)],
      minutes: [20, 60],
    },
  ];
};

export const movingFigures = (s: Situation): readonly Figure[] => {
  const carried = carriedBalance(s);
  const people = handsWanted(s, carried.mass_kg);
  const moves = movesOf(s, carried.mass_kg);
  const size = (id: string, as: Figure['as'], value: Figure['value'], matters: number): Figure =>
    ({ id, kind: 'size', as, value, matters }) as Figure;
  const exact = (v: number): Figure['value'] => ({ is: 'exact', v });
  const band = (of: (m: Moves) => { low: number; high: number }): Figure['value'] => {
    if (moves === null) return { is: 'unknown', needs: WAY };
    const { low, high } = of(moves);
    return { is: 'band', low, likely: (low + high) / 2, high };
  };
  const pull = Math.max(moves?.boards.start_N.high ?? 0, moves?.wheels.hold_N.high ?? 0);
  return [
    size('carried-mass', 'mass', exact(carried.mass_kg), MATTERS.mass),
    {
      id: 'carried-balance',
      kind: 'dimension',
      as: 'length',
      line: { face: 'ground' },
      value: exact(carried.x_mm - s.ramp.entry.length_mm),
      matters: 10,
    },
    size('carry-limit', 'mass', exact(lowLimit_kg('handles')), MATTERS.mass),
    size('carry-each', 'mass', exact(carried.mass_kg / people), MATTERS.mass),
    size(
      'pull-bare',
      'force',
      band(m => m.bare.start_N),
      10,
    ),
    size(
      'pull-boards',
      'force',
      band(m => m.boards.start_N),
      10,
    ),
    size(
      'pull-wheels',
      'force',
      band(m => m.wheels.start_N),
      10,
    ),
    size(
      'hold-back',
      'force',
      band(m => m.wheels.hold_N),
      10,
    ),
    size('rope-breaks', 'force', exact(ROPE_FACTOR * pull), 50),
  ];
};
