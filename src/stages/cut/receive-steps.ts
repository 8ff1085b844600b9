import { READINGS } from '../../build/reading-names.ts';
import type { RailName } from '../../ramp/design.ts';
import { type Member, sectionName } from '../../ramp/members.ts';
import { SPARE_LENGTH } from '../../ramp/rail-plan.ts';
import { sideTolerance, wallTolerance } from '../../reckon/steel/size-tolerance.ts';
import { TURN } from '../order.ts';
import { pieceName } from '../piece-findings.ts';
import type { Fill, Item, PieceAsk, StepDraft } from '../sheet.ts';
import { sideView } from '../side-view.ts';
import type { Situation } from '../situation.ts';
import { slitStrip } from '../slit-strip.ts';
import { nominalTube } from './nominal-tube.ts';
import { sawNeeds, sawSteps, slitSawNeeds } from './saw-steps.ts';
import { handOf } from './slit-marks.ts';

const length = (v: number): Fill => ({ v, as: 'length' });
const thickness = (v: number): Fill => ({ v, as: 'thickness' });
/** A length of practice, not of the frame: to the whole unit. */
const roughly = (v: number): Fill => ({ v, as: 'length', step: 1 });

/** Scale is taken off the blank this far to each side of where a slit's weld will lie, mm (common practice). */
const CLEAN_BACK = 25;
/** Offcut for the test piece, mm (common practice). */
const TEST_PIECE_LONG = 300;
/** Legs over which the test piece's bend is read, and the rise on them that a rule shows, mm: 1 on 600 is 0.1° (common practice). */
const LEGS = { metric: { leg: 600, rise: 1 }, us: { leg: 24 * 25.4, rise: 25.4 / 16 } } as const;

export const pieceAsk = (m: Member): PieceAsk => ({
  need: m.need,
  section: sectionName(m.tube),
  long_mm: m.long_mm,
  ends_rad: [m.ends.first_rad, m.ends.second_rad],
});

const member = (s: Situation, need: string): Member | undefined => s.ramp.members.find(m => m.need === need);

/** Steps of one rail's blank, from the caliper to the names chalked on it. */
const blankSteps = (s: Situation, rail: RailName, i: number): readonly StepDraft[] => {
  const rolled = s.ramp.design.route === 'rolled';
  const nominal = nominalTube(s);
  const blank = member(s, `curved rail@${rail}`);
  const base = member(s, `base rail@${rail}`);
  const common = { stage: 'cut', fills: { rail } } as const;
  const steps: StepDraft[] = [
    {
      ...common,
      key: READINGS.tube(rail),
      words: 'measure-tube',
      fills: {
        rail,
        depth: length(nominal.depth_mm),
        width: length(nominal.width_mm),
        wall: thickness(nominal.wall_mm),
        side: thickness(sideTolerance(nominal.depth_mm)),
      },
      turn: TURN.receive + 10 + i,
      needs: ['cut/check-steel'],
      uses: [],
      asks: [
        {
          ask: 'depth',
          as: 'thickness',
          expected: [
            nominal.depth_mm - sideTolerance(nominal.depth_mm),
            nominal.depth_mm + sideTolerance(nominal.depth_mm),
          ],
          possible: [10, 150],
        },
        {
          ask: 'width',
          as: 'thickness',
          expected: [
            nominal.width_mm - sideTolerance(nominal.width_mm),
            nominal.width_mm + sideTolerance(nominal.width_mm),
          ],
          possible: [10, 150],
        },
        {
          ask: 'wall',
          as: 'thickness',
          expected: [
            nominal.wall_mm - wallTolerance(nominal.wall_mm),
            nominal.wall_mm + wallTolerance(nominal.wall_mm),
          ],
          possible: [0.5, Math.min(12, nominal.depth_mm / 4)],
        },
      ],
      minutes: [5, 10],
    },
    {
      ...common,
      key: `cut/clean-rail@${rail}`,
      words: rolled ? 'clean-rail-rolled' : 'clean-rail',
      fills: { rail, clean: roughly(CLEAN_BACK) },
      turn: TURN.receive + 60 + i,
      needs: [`cut/rail@${rail}`],
      uses: [],
      minutes: [20, 40],
    },
    {
      ...common,
      key: `cut/mark-blank@${rail}`,
      words: rolled ? 'mark-blank-rolled' : 'mark-blank',
      fills: { rail, side: handOf(s.ramp.rails, rail) },
      turn: TURN.receive + 80 + i,
      needs: [`cut/clean-rail@${rail}`],
      uses: [],
      minutes: [5, 10],
      ...(rolled ? {} : { scene: slitStrip(s, rail) }),
    },
  ];
  if (blank !== undefined) {
    steps.push({
      ...common,
      key: `cut/rail@${rail}`,
      words: rolled ? 'rail-rolled' : 'rail',
      fills: { rail, long: length(blank.long_mm), spare: length(SPARE_LENGTH) },
      turn: TURN.receive + 40 + i,
      needs: ['cut/pair-rails', ...sawNeeds(s)],
      uses: [`blank-length@${rail}`],
      tall: [`blank-length@${rail}`],
      line: { face: 'hinge line', rail },
      piece: pieceAsk(blank),
      minutes: rolled ? [5, 10] : [10, 15],
      cautions: ['cut-wood-saw'],
      scene: sideView(s, { lit: rail }),
    });
  }
  if (base !== undefined) {
    steps.push({
      ...common,
      key: `cut/base-rail@${rail}`,
      words: 'base-rail',
      fills: { rail, long: length(base.long_mm) },
      turn: TURN.receive + 110 + i,
      needs: ['cut/pair-rails', ...sawNeeds(s)],
      uses: [`base-rail-length@${rail}`],
      tall: [`base-rail-length@${rail}`],
      line: { face: 'ground', rail },
      piece: pieceAsk(base),
      minutes: [8, 12],
      cautions: ['cut-wood-saw'],
      scene: sideView(s, { lit: base.need }),
    });
  }
  return steps;
};

/** Plates that are cut with the rails, one key each. */
const plateItems = (s: Situation): readonly Item[] =>
  s.ramp.members
    .filter(m => m.kind === 'side plate' || m.kind === 'foot plate')
    .map(m => ({
      key: `cut/plates#${m.need}`,
      name: pieceName(m.need),
      value: { v: m.long_mm, as: 'length' },
      second: { v: m.tube.width_mm, as: 'length' },
      piece: pieceAsk(m),
    }));

/** The test piece: five slits closed in an offcut of the same tube, whose bend tells the true kerf. */
const testPiece = (s: Situation): StepDraft => {
  const d = s.ramp.design;
  const tube = nominalTube(s);
  // Asked from the kerf as planned, never from the one this very reading teaches.
  const { leg, rise } = LEGS[s.build.system];
  const turn = (READINGS.testKerf.slits * d.cutter.kerf_mm) / (tube.depth_mm - tube.wall_mm / 2);
  return {
    key: READINGS.testKerf.step,
    stage: 'cut',
    words: 'test-piece',
    fills: {
      slits: READINGS.testKerf.slits,
      long: roughly(TEST_PIECE_LONG),
      turn: { v: turn, as: 'angle' },
      kerf: thickness(d.cutter.kerf_mm),
      leg: length(leg),
      rise: length(rise),
      step: { v: Math.atan(rise / leg), as: 'angle', step: 0.05 },
      stop: length(2 * tube.wall_mm),
    },
    turn: TURN.receive + 100,
    needs: [`cut/rail@${s.ramp.rails[0] ?? 'A'}`, ...slitSawNeeds(s)],
    uses: [],
    asks: [
      {
        ask: READINGS.testKerf.ask,
        as: 'angle',
        expected: [0.75 * turn, 1.25 * turn],
        possible: [Math.PI / 180, Math.PI / 4],
      },
    ],
    minutes: [40, 60],
    cautions: ['cut-guard'],
  };
};

/** From the steel on the horses to marked blanks, base rails and plates. */
export const receiveSteps = (s: Situation): readonly StepDraft[] => {
  const { rails, design: d } = s.ramp;
  return [
    {
      key: 'cut/check-steel',
      stage: 'cut',
      words: 'check-steel',
      fills: { bars: rails.length },
      turn: TURN.receive,
      needs: ['plan/dangers'],
      uses: [],
      minutes: [10, 20],
      cautions: ['cut-zinc'],
    },
    ...rails.flatMap((rail, i) => blankSteps(s, rail, i)),
    {
      key: 'cut/pair-rails',
      stage: 'cut',
      words: d.route === 'rolled' ? 'pair-rails-rolled' : 'pair-rails',
      fills: { rails: rails.join(', ') },
      turn: TURN.receive + 30,
      needs: rails.map(rail => READINGS.tube(rail)),
      uses: [],
      minutes: [10, 15],
    },
    ...sawSteps(s),
    ...(d.route === 'rolled' ? [] : [testPiece(s)]),
    {
      key: 'cut/plates',
      stage: 'cut',
      words: 'plates',
      turn: TURN.receive + 130,
      needs: ['cut/check-steel', ...sawNeeds(s)],
      uses: [],
      items: plateItems(s),
      minutes: [20, 40],
    },
  ];
};
