import type { RailName } from '../../ramp/design.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import { alongLine, jigScene } from '../jig.ts';
import { offsetScene } from '../offset-scene.ts';
import { railTurn } from '../order.ts';
import type { Fills, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { flatStations } from '../slit-errors.ts';
import { slitStrip } from '../slit-strip.ts';
import { halvesOf, ROUND, roundsOf } from '../weld-order.ts';
import { halfReading } from './half-reading.ts';
import { HAND_OFF, HAND_WARM_C, SIDEWAYS_LIMIT, SMOOTH_LIMIT, widestGap } from './limits.ts';
import {
  around,
  type Band,
  bendForeseen,
  KEYS,
  pullOddTops,
  slitNumbers,
  tackedBend,
  topsOf,
} from './rail-pull.ts';
import { topsWords } from './tops-findings.ts';

/** Rail standing slits up, and sides welded downward, up to this wall; thicker ones are welded lying (bench-practice 1-17; common practice). */
const STANDING_TO_WALL = 2.4;
/** Fit-up tacks grown before the sides are welded, mm, low and high (bench-practice 2-8; common practice). */
const GROWN = { thin: [5, 6], thick: [8, 10] } as const;
/** A side weld stops this short of the back corner and is stitched on; it wraps so far round the top corner, mm (bench-practice 1-17; common practice). */
const STITCH = 10;
const WRAP = [5, 8] as const;
/** Minutes of one slit's two sides and of one top, gun in hand and cooling among them (common practice: 0.5 to 0.8 an inch and pauses). */
const SIDE_MINUTES = [3, 6] as const;
const TOP_MINUTES = [2, 4] as const;
const WATCH_s = 3600;
const LOOK_AGAIN_s = 3 * 3600;
const SIDEWAYS_STATIONS = 7;
/** Straight edge's legs: 1 mm on 600 is 0.1° (bench-practice 1-9; exact). */
const LEG = 600;

const length = (v: number) => ({ v, as: 'length' }) as const;
const angle = (v: number) => ({ v, as: 'angle' }) as const;
const thickness = (v: number) => ({ v, as: 'thickness' }) as const;

/**
 * Slits in their order, and after every round a pause that no clock ends: hand-warm before the next arc. After the first round the
 * rail is looked at before more is welded.
 */
const roundItems = (
  key: string,
  order: readonly number[],
  look: boolean,
  slitNote: string,
): readonly Item[] => {
  const rounds = roundsOf(order);
  return rounds.flatMap((round, r): Item[] => [
    ...round.map(
      (slit): Item => ({ key: `${key}#${slit}`, name: String(slit), note: { words: `says.${slitNote}` } }),
    ),
    {
      key: `${key}#warm-${r + 1}`,
      name: 'cold',
      note: { words: 'says.weld-hand-warm', fills: { slits: round.join(', ') } },
    },
    ...(look && r === 0
      ? [{ key: `${key}#look`, name: 'look', note: { words: 'says.weld-first-look' } } satisfies Item]
      : []),
  ]);
};

const openSlit = (s: Situation, items: readonly Item[]): number | undefined => {
  const open = items.find(i => /#\d+$/.test(i.key) && !s.build.ticks.has(i.key) && !s.build.skips.has(i.key));
  return open === undefined ? undefined : Number(open.name);
};

/** A bend read otherwise than foreseen by no more than this is taken as it is, rad: half a degree. */
const SURPRISING = (0.5 * Math.PI) / 180;

/** Bend reading of a rail: what it should be, how far it may be off before the field asks again. */
const bendAsk = (foreseen: Band, turn_rad: number) =>
  ({
    ask: 'bent',
    as: 'angle',
    expected: around(foreseen, SURPRISING),
    possible: [0, 2 * turn_rad + 0.2],
  }) as const;

/** Welding of one slit rail: sides by halves with a survey between, tops in two rounds with a reading between. */
export const slitRailSteps = (s: Situation, plan: RailPlan, index: number): readonly StepDraft[] => {
  const { rail } = plan;
  const d = s.ramp.design;
  const tube = { ...d.tube, ...s.measured.tubes.get(rail) };
  const standing = tube.wall_mm <= STANDING_TO_WALL;
  const grown = standing ? GROWN.thin : GROWN.thick;
  const numbers = slitNumbers(plan);
  const halves = halvesOf(numbers);
  const tops = topsOf(plan);
  const odd = pullOddTops(plan);
  const tacked = tackedBend(s, plan);
  const foreseen = bendForeseen(s, plan);
  const half = halfReading(s, plan);
  const others = s.ramp.rails.filter(r => r !== rail);
  const chosenOf = (remedy: string): readonly string[] =>
    s.build.chosen
      .filter(c => c.remedy === remedy && c.plan.rail === rail)
      .map(c => `weld/${remedy}@${c.entry}`);
  const turn = (at: number) => railTurn(d, index, { after: 'weld', at });
  const fills: Fills = {
    rail,
    round: ROUND,
    'hand-warm': { v: HAND_WARM_C, as: 'temperature' },
    'hand-off': length(HAND_OFF),
    'grown-low': length(grown[0]),
    'grown-high': length(grown[1]),
    stitch: length(STITCH),
    'wrap-low': length(WRAP[0]),
    'wrap-high': length(WRAP[1]),
    gap: thickness(widestGap(tube.wall_mm)),
    first: halves.first.length,
    rest: halves.rest.length,
    odd: tops.odd.length,
    even: tops.even.length,
    count: numbers.length,
    limit: length(SMOOTH_LIMIT[d.tolerance]),
    sideways: length(SIDEWAYS_LIMIT),
    watch: { v: WATCH_s, as: 'time' },
    'look-again': { v: LOOK_AGAIN_s, as: 'time' },
    other: others.join(', '),
    tacked: angle(tacked),
    leg: length(LEG),
    rise: length(1),
    step: angle(1 / LEG),
  };
  const common = { stage: 'weld', fills } as const;
  const inStep = d.sequence === 'in step' && others.length > 0;
  const sides = (name: 'sides-first' | 'sides-rest') =>
    `${name}${standing ? '' : '-lying'}` as
      | 'sides-first'
      | 'sides-first-lying'
      | 'sides-rest'
      | 'sides-rest-lying';
  const firstItems = roundItems(KEYS.sidesFirst(rail), halves.first, true, 'weld-side-item');
  const restItems = roundItems(KEYS.sidesRest(rail), halves.rest, false, 'weld-side-item');
  const oddItems = roundItems(KEYS.topsOdd(rail), tops.odd, false, 'weld-top-item');
  const evenItems = roundItems(KEYS.topsEven(rail), tops.even, false, 'weld-top-item');
  const stations = flatStations(plan, 'tack line');
  const minutes = (n: number, each: readonly [number, number]): [number, number] => [
    n * each[0],
    n * each[1],
  ];
  // Tops of rails welded in step are left for one evening: the sides of all of them come first.
  const sidesOfAll = inStep ? s.ramp.rails.map(KEYS.sidesRest) : [KEYS.sidesRest(rail)];
  const steps: StepDraft[] = [
    {
      ...common,
      key: KEYS.sidesFirst(rail),
      words: sides('sides-first'),
      turn: turn(0),
      needs: [
        `tack/survey@${rail}`,
        `tack/sideways@${rail}`,
        `tack/carry@${rail}`,
        `prep/open-faces@${rail}`,
        'weld/settings',
        'weld/coupons',
        'prep/body',
        'prep/dry-steel',
      ],
      uses: ['weld-amps', `pull-all@${rail}`],
      items: firstItems,
      cautions: ['weld-fume', 'weld-fire-watch'],
      minutes: minutes(halves.first.length, SIDE_MINUTES),
      scene: slitStrip(s, rail, openSlit(s, firstItems)),
    },
    {
      ...common,
      key: KEYS.half(rail),
      words: 'half-survey',
      turn: turn(1),
      needs: [KEYS.sidesFirst(rail)],
      uses: [`half-bend@${rail}`, `half-lip@${rail}`],
      tall: [`half-lip@${rail}`],
      line: 'tack line',
      survey: { kind: 'curve', rail, phase: 'half-welded', to: 'tack line', stations_mm: stations },
      minutes: [stations.length, 2 * stations.length],
      scene: offsetScene(
        plan,
        'tack line',
        stations.map(station_mm => ({ station_mm, offset_mm: null })),
        null,
      ),
    },
    {
      ...common,
      key: KEYS.sidesRest(rail),
      words: sides('sides-rest'),
      turn: turn(4),
      needs: [KEYS.half(rail), ...chosenOf('half-open-gaps'), ...chosenOf('half-check-tacks')],
      uses: half === null ? [`gap@${rail}`] : [`half-told@${rail}`, `gap@${rail}`],
      ...(half === null ? {} : { tall: [`half-told@${rail}`] }),
      items: restItems,
      minutes: minutes(halves.rest.length, SIDE_MINUTES),
      scene: slitStrip(s, rail, openSlit(s, restItems)),
    },
    {
      ...common,
      key: KEYS.topsOdd(rail),
      words: inStep ? 'tops-odd-in-step' : 'tops-odd',
      turn: turn(8),
      needs: sidesOfAll,
      uses: ['weld-amps'],
      items: oddItems,
      minutes: minutes(tops.odd.length, TOP_MINUTES),
      scene: slitStrip(s, rail, openSlit(s, oddItems)),
    },
    {
      ...common,
      key: KEYS.readTops(rail),
      words: 'read-tops',
      turn: turn(10),
      needs: [KEYS.topsOdd(rail)],
      uses: [`odd-bend@${rail}`],
      tall: [`odd-bend@${rail}`],
      asks: [
        bendAsk(
          { low: tacked + odd.low, likely: tacked + odd.likely, high: tacked + odd.high },
          plan.turn_rad,
        ),
      ],
      minutes: [5, 10],
    },
    {
      ...common,
      key: KEYS.topsEven(rail),
      words: topsWords(s, rail),
      turn: turn(12),
      needs: [KEYS.readTops(rail)],
      uses: [`bend-cold@${rail}`],
      tall: [`bend-cold@${rail}`],
      items: evenItems,
      minutes: minutes(tops.even.length, TOP_MINUTES),
      scene: slitStrip(s, rail, openSlit(s, evenItems)),
    },
    {
      ...common,
      key: KEYS.cool(rail),
      words: 'cool',
      turn: railTurn(d, index, { after: 'cold', at: 0 }),
      needs: [tops.even.length > 0 ? KEYS.topsEven(rail) : KEYS.readTops(rail)],
      uses: [],
      minutes: [60, 90],
    },
    {
      ...common,
      key: KEYS.bend(rail),
      words: 'read-bend',
      turn: railTurn(d, index, { after: 'cold', at: 1 }),
      needs: [KEYS.cool(rail)],
      uses: [`bend-cold@${rail}`],
      tall: [`bend-cold@${rail}`],
      asks: [bendAsk(foreseen, plan.turn_rad)],
      minutes: [5, 10],
    },
  ];
  return steps.filter(step => step.items === undefined || step.items.length > 0);
};

/** The rail cold and free, along its curve and sideways: what every later piece is cut to. */
export const coldSteps = (s: Situation, plan: RailPlan, index: number): readonly StepDraft[] => {
  const { rail } = plan;
  const d = s.ramp.design;
  const rolled = plan.slits.length === 0;
  const stations = flatStations(plan, 'finished line');
  const last = stations.length - 1;
  const sideways = [
    ...new Set(
      Array.from({ length: SIDEWAYS_STATIONS }, (_, k) => Math.round((k * last) / (SIDEWAYS_STATIONS - 1))),
    ),
  ].map(k => stations[k] ?? 0);
  const fills: Fills = {
    rail,
    count: stations.length,
    limit: length(SMOOTH_LIMIT[d.tolerance]),
    sideways: length(SIDEWAYS_LIMIT),
  };
  const turn = (at: number) => railTurn(d, index, { after: 'cold', at });
  const curve: StepDraft = {
    key: KEYS.cold(rail),
    stage: 'weld',
    words: rolled ? 'cold-survey-rolled' : 'cold-survey',
    fills,
    turn: turn(3),
    needs: rolled
      ? [`tack/survey@${rail}`, `tack/sideways@${rail}`, `tack/twist@${rail}`]
      : [KEYS.cool(rail), KEYS.bend(rail)],
    uses: [],
    line: 'finished line',
    survey: { kind: 'curve', rail, phase: 'cold', to: 'finished line', stations_mm: stations },
    minutes: [stations.length, 2 * stations.length],
    scene: jigScene(s, rail, {
      railOn: 'finished line',
      lit_mm: alongLine(plan, 'finished line', plan.toLip_mm),
    }),
  };
  if (rolled) return [curve];
  return [
    curve,
    {
      key: `weld/cold-sideways@${rail}`,
      stage: 'weld',
      words: 'cold-sideways',
      fills,
      turn: turn(4),
      needs: [KEYS.cool(rail)],
      uses: [],
      line: 'finished line',
      survey: { kind: 'sideways', rail, phase: 'cold', to: 'finished line', stations_mm: sideways },
      minutes: [10, 15],
    },
  ];
};

/** Rails against each other, once all are cold. */
export const compareSteps = (s: Situation): readonly StepDraft[] => {
  const { rails, design: d } = s.ramp;
  const last = rails.length - 1;
  if (last < 1) return [];
  const pairs = rails.slice(1).map((rail, i) => `rails-apart@${rails[i]}-${rail}`);
  return [
    {
      key: 'weld/compare',
      stage: 'weld',
      words: 'compare',
      fills: { rails: rails.join(', '), count: rails.length, limit: length(SMOOTH_LIMIT[d.tolerance]) },
      turn: railTurn(d, last, { after: 'cold', at: 9 }),
      needs: rails.map(rail => KEYS.cold(rail as RailName)),
      uses: pairs,
      tall: pairs.slice(0, 3),
      line: 'finished line',
      minutes: [10, 20],
    },
  ];
};
