import { boardSpan, SHEET_SUPPORT_LEAST, SHEET_SUPPORT_MOST } from '../../ramp/deck.ts';
import { discReach } from '../../ramp/disc-reach.ts';
import { clearWidth } from '../../ramp/members.ts';
import { largestKerf } from '../../ramp/problems.ts';
import { SPARE_LENGTH } from '../../ramp/rail-plan.ts';
import { deckThickness } from '../../ramp/settle.ts';
import { jigSheets } from '../jig.ts';
import { TURN } from '../order.ts';
import type { Fill, StepDraft } from '../sheet.ts';
import { sideView } from '../side-view.ts';
import type { Situation } from '../situation.ts';
import { slitStrip } from '../slit-strip.ts';
import { DOOR_CLEAR, LEAD_m, liftPeople, ROOM_ROUND_JIG } from './place.ts';
import { pullWays } from './pull-ways.ts';
import type { Ride } from './ride-facts.ts';
import { RIDE_STEPS, rideSpecs } from './ride-steps.ts';
import { shoppingList } from './shopping.ts';
import { slitMinutes } from './slit-ways.ts';
import type { Strength } from './strength-asks.ts';
import { sheetSpans } from './strength-deck.ts';

/** Word keys of the plan's steps, in walk order. */
export const STEPS = [
  'dangers',
  'curve',
  'lines',
  'entry',
  'entry-ribs',
  'slits',
  'slits-rolled',
  'deck-sheet',
  'deck-boards',
  'saw-disc',
  'saw-disc-deep',
  'saw-blade',
  'saw-chop',
  'sequence-in-step',
  'sequence-one-by-one',
  'place',
  'power',
  'helpers',
  'door',
  'buy',
  'order',
  ...RIDE_STEPS,
] as const;

type Words = (typeof STEPS)[number];

/** A thin disc worn to this goes for other work, mm (common practice). */
const WORN_DISC = 90;
/** Nothing that burns within this of sparks, m: 35 ft (state text that mirrors OSHA 1910.252(a)(2)(iii) [found]). */
const FIRE_m = 10.7;

const length = (v: number): Fill => ({ v, as: 'length' });
/** A length of practice, not of the frame: to the whole unit. */
const roughly = (v: number): Fill => ({ v, as: 'length', step: 1 });

/** What a plan step needs beyond its words. */
type Spec = Partial<Omit<StepDraft, 'key' | 'stage' | 'words' | 'turn'>> &
  Readonly<{ name: string; words: Words }>;

const slitSpec = (s: Situation): Spec => {
  const rail = s.ramp.rails[0] ?? 'A';
  const plan = s.ramp.plans.get(rail);
  if (plan === undefined || plan.slits.length === 0) {
    return {
      name: 'slits',
      words: 'slits-rolled',
      uses: [`rail-length@${rail}`, `finished-radius@${rail}`, `rail-bend@${rail}`],
      minutes: [10, 20],
    };
  }
  const closed = plan.slits.reduce((n, slit) => n + slit.close_rad, 0);
  return {
    name: 'slits',
    words: 'slits',
    fills: {
      count: plan.slits.length,
      closed: { v: closed, as: 'angle' },
      pulled: { v: plan.turn_rad - closed, as: 'angle' },
      start: { v: s.ramp.design.arc.exit_rad - plan.turn_rad, as: 'angle' },
      exit: { v: s.ramp.design.arc.exit_rad, as: 'angle' },
      all: plan.slits.length * s.ramp.rails.length,
      widest: { v: largestKerf(s.ramp.design.tube.wall_mm), as: 'thickness' },
      lever: { v: s.ramp.design.tube.depth_mm - s.ramp.design.tube.wall_mm / 2, as: 'thickness' },
      hours: { v: slitMinutes(s, plan) * 60, as: 'time' },
      spare: length(SPARE_LENGTH),
      kerf: { v: plan.kerf_mm, as: 'thickness' },
      pitch: { v: plan.pitch_mm, as: 'slit' },
      close: { v: plan.slits.at(-1)?.close_rad ?? 0, as: 'angle' },
      gap: { v: plan.slits.at(-1)?.gap_mm ?? 0, as: 'thickness' },
      long: length(plan.cut_mm),
      tack: length(plan.tack.radius_mm),
      finished: length(plan.finished.radius_mm),
    },
    // Only the count is remembered: pitch and closing are laid out anew with every reading, and the tick must not go stale for that.
    uses: [`slit-count@${rail}`, `slit-count-band@${rail}`, `pull@${rail}`, ...pullWays(s).map(f => f.id)],
    tall: [`slit-count@${rail}`],
    line: { face: 'hinge line', rail },
    minutes: [10, 20],
    scene: slitStrip(s, rail),
  };
};

const sawSpec = (s: Situation): Spec => {
  const d = s.ramp.design;
  const { kind } = d.cutter;
  const { least, most } = discReach(d.grinder);
  // From the top, down to where the flat of the side turns into the corner.
  const down = d.tube.depth_mm - 2 * d.tube.wall_mm;
  const disc = least < down ? 'saw-disc' : 'saw-disc-deep';
  return {
    name: 'saw',
    words: kind === 'thin disc' ? disc : kind === 'chop saw' ? 'saw-chop' : 'saw-blade',
    fills: {
      disc: length(d.grinder),
      least: length(Math.round(least)),
      most: length(Math.round(most)),
      worn: length(Math.round(discReach(WORN_DISC).least)),
      down: length(down),
      'worn-disc': length(WORN_DISC),
      wall: length(d.tube.wall_mm),
      widest: { v: largestKerf(d.tube.wall_mm), as: 'thickness' },
      saw: kind,
    },
    minutes: [5, 10],
  };
};

const deckSpec = (s: Situation): Spec => {
  const d = s.ramp.design;
  const common = {
    thick: length(deckThickness(d.deck)),
    rails: s.ramp.rails.length,
    clear: length(clearWidth(d)),
    apart: length(clearWidth(d) + d.tube.width_mm),
  };
  if (d.deck.kind === 'boards') {
    return {
      name: 'deck',
      words: 'deck-boards',
      fills: { ...common, span: length(boardSpan(d.deck.thickness_mm, d.deck.board_mm)) },
      uses: ['rail-count'],
      minutes: [5, 10],
    };
  }
  return {
    name: 'deck',
    words: 'deck-sheet',
    fills: {
      ...common,
      layers: d.deck.layers,
      layer: length(d.deck.layer_mm),
      least: roughly(SHEET_SUPPORT_LEAST),
      most: roughly(SHEET_SUPPORT_MOST),
      apart: length(Math.max(0, ...sheetSpans(s.ramp))),
      radius: length(d.arc.radius_mm),
    },
    uses: ['rail-count'],
    minutes: [5, 10],
  };
};

const specs = (s: Situation, ride: Ride, strength: Strength): readonly Spec[] => {
  const { design: d, entry, envelope } = s.ramp;
  const first = s.ramp.plans.get(s.ramp.rails[0] ?? '');
  const slit = d.route === 'slit';
  return [
    {
      name: 'dangers',
      words: 'dangers',
      cautions: ['plan-not-for', 'plan-guidance', 'plan-alone'],
      minutes: [5, 10],
    },
    {
      name: 'curve',
      words: 'curve',
      needs: ['plan/dangers'],
      uses: ['lip-height', 'run', 'radius', 'exit', 'arc'],
      tall: ['lip-height', 'run', 'radius'],
      line: { face: 'deck top' },
      minutes: [5, 10],
    },
    ...rideSpecs(s, ride, strength),
    {
      name: 'lines',
      words: 'lines',
      fills: {
        deck: length(deckThickness(d.deck)),
        depth: length(d.tube.depth_mm),
        off: length(deckThickness(d.deck) + d.tube.depth_mm),
      },
      uses: ['deck', 'top-face', 'back-wall', 'bottom-face'].map(face => `${face}-radius`),
      tall: ['deck-radius', 'bottom-face-radius'],
      minutes: [5, 10],
    },
    {
      name: 'entry',
      words: entry.share > 0.5 ? 'entry-ribs' : 'entry',
      fills: { bearers: entry.bearers.length, high: length(deckThickness(d.deck) + d.tube.depth_mm) },
      uses: ['entry-length', 'entry-share'],
      tall: ['entry-length'],
      line: { face: 'ground' },
      minutes: [5, 10],
      scene: sideView(s, { lit: 'entry' }),
    },
    slitSpec(s),
    deckSpec(s),
    ...(slit ? [sawSpec(s)] : []),
    ...(slit && s.ramp.rails.length > 1
      ? [
          {
            name: 'sequence',
            words: d.sequence === 'in step' ? 'sequence-in-step' : 'sequence-one-by-one',
            fills: {
              first: s.ramp.rails[0] ?? '',
              second: s.ramp.rails[1] ?? '',
              rails: s.ramp.rails.length,
            },
            minutes: [3, 5],
          } as const,
        ]
      : []),
    {
      name: 'place',
      words: 'place',
      fills: {
        long: roughly(Math.ceil(((first?.cut_mm ?? 0) + 2 * ROOM_ROUND_JIG) / 50) * 50),
        room: roughly(ROOM_ROUND_JIG),
        sheets: jigSheets(s),
        fire: { v: FIRE_m, as: 'distance', step: 1 },
      },
      minutes: [15, 30],
    },
    {
      name: 'power',
      words: 'power',
      fills: {
        thin: { v: LEAD_m.thin, as: 'distance', step: 0.5 },
        thick: { v: LEAD_m.thick, as: 'distance', step: 0.5 },
        // The one trade's word for it is the other's metal.
        cord: s.build.system === 'us' ? 'cord' : 'lead',
      },
      asks: [{ ask: 'lead', as: 'distance', expected: [0, 2 * LEAD_m.thick], possible: [0, 200] }],
      minutes: [10, 20],
    },
    {
      name: 'helpers',
      words: 'helpers',
      // Not remembered: the mass moves with every measured rail, and the number of helpers does not go stale for that.
      fills: { people: liftPeople(s), mass: { v: s.ramp.masses.frame_kg, as: 'mass' } },
      asks: [{ ask: 'helpers', as: 'count', expected: [1, 6], possible: [0, 30] }],
      minutes: [2, 5],
    },
    {
      name: 'door',
      words: 'door',
      fills: {
        wide: length(envelope.width_mm),
        long: length(envelope.length_mm),
        high: length(envelope.height_mm),
        door: length(d.door.width_mm),
        'door-high': length(d.door.height_mm),
        clear: roughly(DOOR_CLEAR),
      },
      uses: ['frame-length', 'frame-width', 'frame-height', 'mass-frame'],
      tall: ['frame-width', 'frame-height'],
      minutes: [5, 10],
    },
    { name: 'buy', words: 'buy', needs: ['plan/dangers'], items: shoppingList(s), minutes: [20, 40] },
    {
      name: 'order',
      words: 'order',
      needs: ['plan/dangers', 'plan/buy'],
      uses: ['mass-frame', 'mass-all'],
      minutes: [30, 60],
    },
  ];
};

/** The steps of the plan, in walk order. */
export const planSteps = (s: Situation, ride: Ride, strength: Strength): readonly StepDraft[] =>
  specs(s, ride, strength).map(
    ({ name, words, ...spec }, i): StepDraft => ({
      key: `plan/${name}`,
      stage: 'plan',
      words,
      turn: TURN.plan + 10 * i,
      needs: [],
      uses: [],
      minutes: [5, 10],
      ...spec,
    }),
  );
