import { SPARE_LENGTH } from '../../ramp/rail-plan.ts';
import { TURN } from '../order.ts';
import type { Figure, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sideBalance, sideTipsAt } from './balance.ts';
import { MATTERS } from './limits.ts';
import { basePacks, mismatch } from './match.ts';
import { handsGate, handsSaid } from './people.ts';

/** Timber spreaders between two frames: two for every so much of height (bench list: 2·⌈H/0.5 m⌉; practice). */
const SPREADER_EVERY = 500;
/** A pad's own level, mm, and ends of rails after trimming (common practice). */
const PAD_LEVEL = 1;
const ENDS_FLUSH = 1;

/** Spreaders for all the bays between side frames. */
const spreaders = (s: Situation): number =>
  2 * Math.ceil(s.ramp.envelope.height_mm / SPREADER_EVERY) * (s.ramp.rails.length - 1);

const length = (v: number) => ({ v, as: 'length' }) as const;

/** Trimming the rails alike, a level place, and the side frames held up before anybody lets go of one. */
export const setUpSteps = (s: Situation): readonly StepDraft[] => {
  const { rails } = s.ramp;
  const first = rails[0] ?? '';
  const last = rails.at(-1) ?? '';
  const packs = basePacks(s);
  const alone = handsSaid(s) === 1;
  return [
    {
      key: 'assemble/trim-rails',
      stage: 'assemble',
      words: 'trim-rails',
      fills: {
        count: rails.length,
        spare: length(SPARE_LENGTH),
        flush: length(ENDS_FLUSH),
      },
      turn: TURN.assemble,
      needs: rails.map(rail => `brace/survey@${rail}`),
      uses: ['lip-mark', 'mismatch'],
      tall: ['lip-mark'],
      line: { face: 'hinge line' },
      minutes: [20, 35],
    },
    {
      key: 'assemble/pads',
      stage: 'assemble',
      words: 'pads',
      fills: { first, last, level: length(PAD_LEVEL) },
      turn: TURN.assemble + 10,
      needs: rails.map(rail => `brace/survey@${rail}`),
      uses: [],
      line: { face: 'ground' },
      asks: [1, 2, 3, 4].map(k => ({
        ask: `z${k}`,
        as: 'length',
        expected: [0, 5],
        possible: [0, 150],
        line: { face: 'ground' },
      })),
      minutes: [25, 45],
    },
    ...[...packs].map(
      ([rail, pack], k): StepDraft => ({
        key: `assemble/pack-base@${rail}`,
        stage: 'assemble',
        words: 'pack-base',
        fills: { rail, pack: length(pack) },
        turn: TURN.assemble + 20 + k,
        needs: ['assemble/pads'],
        uses: [`base-pack@${rail}`],
        tall: [`base-pack@${rail}`],
        line: { face: 'ground', rail },
        minutes: [5, 10],
      }),
    ),
    {
      key: 'assemble/props',
      stage: 'assemble',
      words: alone ? 'props-alone' : 'props',
      fills: { first, last },
      turn: TURN.assemble + 30,
      needs: ['assemble/trim-rails', 'assemble/pads'],
      uses: [
        'spreaders',
        ...['tips-at', 'side-mass', 'side-start', 'side-balance', 'side-high'].map(
          name => `${name}@${first}`,
        ),
      ],
      tall: ['spreaders', `side-mass@${first}`, `tips-at@${first}`],
      gates: [handsGate(s, 2)],
      minutes: [20, 40],
    },
  ];
};

export const setUpFigures = (s: Situation): readonly Figure[] => {
  const worst = mismatch(s);
  const first = s.ramp.rails[0] ?? '';
  const surveys = s.ramp.rails.map(rail => s.ramp.shapes.get(rail)?.survey ?? null);
  const on = surveys.find(id => id !== null);
  return [
    {
      id: 'lip-mark',
      kind: 'dimension',
      as: 'length',
      line: { face: 'hinge line' },
      value: { is: 'exact', v: s.ramp.plans.get(first)?.toLip_mm ?? 0 },
      matters: MATTERS.length,
    },
    {
      id: 'mismatch',
      kind: 'dimension',
      as: 'length',
      line: 'finished line',
      value: surveys.every(id => id !== null)
        ? { is: 'exact', v: worst.mm }
        : { is: 'unknown', needs: `brace/survey@${first}` },
      matters: MATTERS.length,
      ...(on === undefined || on === null ? {} : { on }),
    },
    {
      id: 'spreaders',
      kind: 'size',
      as: 'count',
      value: { is: 'exact', v: spreaders(s) },
      matters: MATTERS.count,
    },
    ...s.ramp.rails.flatMap((rail): readonly Figure[] => [
      {
        id: `side-mass@${rail}`,
        kind: 'size',
        as: 'mass',
        value: { is: 'exact', v: sideBalance(s, rail).mass_kg },
        matters: MATTERS.mass,
      },
      {
        id: `side-balance@${rail}`,
        kind: 'dimension',
        as: 'length',
        line: { face: 'ground', rail },
        value: { is: 'exact', v: sideBalance(s, rail).x_mm - s.ramp.entry.length_mm },
        matters: 10,
      },
      {
        id: `side-high@${rail}`,
        kind: 'dimension',
        as: 'length',
        line: { face: 'ground', rail },
        value: { is: 'exact', v: sideBalance(s, rail).y_mm },
        matters: 10,
      },
      {
        id: `tips-at@${rail}`,
        kind: 'size',
        as: 'angle',
        value: { is: 'exact', v: sideTipsAt(s, rail) },
        matters: MATTERS.angle,
      },
    ]),
    ...[...basePacks(s)].map(
      ([rail, pack]): Figure => ({
        id: `base-pack@${rail}`,
        kind: 'dimension',
        as: 'length',
        line: { face: 'ground', rail },
        value: { is: 'exact', v: pack },
        matters: MATTERS.length,
      }),
    ),
  ];
};
