import type { Cut } from './choice-at-level.ts';
import type { Columns } from './columns.ts';
import { cover } from './cover.ts';
import { dive, type Filled, type Finish } from './dive.ts';
import type { Filler } from './filler.ts';
import { allFillings } from './fillings.ts';
import { greedyPlan } from './greedy.ts';
import type { Meter } from './meter.ts';
import { type Relaxed, relax, type Task } from './relax.ts';
import { search } from './search.ts';
import { packTight } from './tight.ts';

/** Whether pieces fit in given bars. */
export type Fit =
  | Readonly<{ is: 'fits'; bars: readonly Filled[] }>
  /** Proven not to, with what it teaches about other choices of bars, if it does. */
  | Readonly<{ is: 'never'; cut: Cut | null }>
  | Readonly<{ is: 'unknown' }>;

/** What is known of a choice of bars that was asked about before. */
type Case = Readonly<{
  task: Task;
  budget: number;
  slack: number;
  /** Pieces a bar. */
  crowd: number;
  /** Next to nothing may be wasted. */
  brimful: boolean;
  relaxed: Relaxed;
  refuted: Set<string>;
}> & { trials: number; listed: boolean };

/** Fewer pieces a bar than this leave too few ways to fill one to the last. */
const CROWDED = 3.5;
/** Waste below this share of the bars leaves few ways that will do. */
const BRIMFUL = 1e-3;
/** So many fillings are looked through in a tenth of a second. */
const MOST_LISTED = 120_000;
/** The same where it is asked at every bar of a dive. */
const LISTED_BELOW = 40_000;
/** How often a dive in a brimful task may take another bar first. */
const TURNS = 2;
/** What rounding may add to a bound, in bars. */
const ROUNDING = 1e-6;
/** Columns handed on from one choice to the next. */
const MOST_KNOWN = 2000;

/** Room of the bars beyond the pieces. */
const roomOver = (size: Float64Array, demand: Int32Array, room: Float64Array, limit: Int32Array): number => {
  let over = 0;
  for (let t = 0; t < room.length; t++) over += limit[t]! * room[t]!;
  for (let i = 0; i < size.length; i++) over -= demand[i]! * size[i]!;
  return over;
};

const NEVER: Fit = { is: 'never', cut: null };
const UNKNOWN: Fit = { is: 'unknown' };

const fitOf = (found: readonly Filled[] | 'never' | 'unknown' | null): Fit =>
  found === 'never' ? NEVER : found === 'unknown' || found === null ? UNKNOWN : { is: 'fits', bars: found };

/**
 * Do these pieces fit in these bars? Asked with growing effort; what was found out is kept from one asking to the next.
 * Rooms are distinct and fall from the first to the last.
 */
export class Fitting {
  readonly #size: Float64Array;
  readonly #demand: Int32Array;
  readonly #room: Float64Array;
  /** The rooms themselves, the longest 1: what counts here is how full the bars are. */
  readonly #cost: Float64Array;
  readonly #columns: Columns;
  readonly #filler: Filler;
  readonly #meter: Meter;
  #known: readonly number[];
  readonly #cases = new Map<string, Case>();

  constructor(
    size: Float64Array,
    demand: Int32Array,
    room: Float64Array,
    columns: Columns,
    filler: Filler,
    meter: Meter,
  ) {
    this.#size = size;
    this.#demand = demand;
    this.#room = room;
    this.#cost = room.map(r => r / room[0]!);
    this.#columns = columns;
    this.#filler = filler;
    this.#meter = meter;
    this.#known = Array.from({ length: columns.count }, (_, c) => c);
  }

  /**
   * Asks of one choice of bars.
   * @param limit how many bars of each room
   * @param effort 0 relaxes and rounds; each step more searches several times as long
   */
  ask(limit: Int32Array, effort: number): Fit {
    const asked = this.#cases.get(limit.join()) ?? this.#open(limit);
    if ('is' in asked) return asked;
    const strength = 4 ** effort;
    const diving = () => this.#dive(asked, effort);
    const packing = () => this.#tight(asked, strength);
    const covering = () => this.#cover(asked, effort, strength);
    const searching = () => this.#search(asked, strength);
    const harder = asked.brimful
      ? [packing, covering, diving, searching]
      : [diving, packing, covering, searching];
    const ways = effort === 0 ? [diving, packing] : harder;
    for (const way of ways) {
      const fit = way();
      if (fit.is !== 'unknown') return fit;
    }
    return UNKNOWN;
  }

  /** The first look: room enough, and the relaxation within it. */
  #open(limit: Int32Array): Case | Fit {
    const task = { size: this.#size, demand: this.#demand, room: this.#room, limit, cost: this.#cost };
    const sum = (n: Int32Array, of: Float64Array): number => n.reduce((s, v, i) => s + v * of[i]!, 0);
    const budget = sum(limit, this.#cost) + ROUNDING;
    const slack = roomOver(this.#size, this.#demand, this.#room, limit);
    if (slack < 0) return NEVER;
    const relaxed = relax(task, this.#columns, this.#filler, this.#known, 0, budget, this.#meter);
    if (relaxed.ids.length < MOST_KNOWN) this.#known = relaxed.ids;
    if (relaxed.bound > budget) return { is: 'never', cut: this.#cut(relaxed, limit) };
    const count = (n: Int32Array): number => n.reduce((s, v) => s + v, 0);
    const crowd = count(this.#demand) / count(limit);
    const opened = {
      task,
      budget,
      slack,
      crowd,
      brimful: slack < BRIMFUL * sum(limit, this.#room),
      relaxed,
      refuted: new Set<string>(),
      trials: 0,
      listed: false,
    };
    this.#cases.set(limit.join(), opened);
    return opened;
  }

  #dive({ task, budget, relaxed, brimful }: Case, effort: number): Fit {
    const { size, room } = task;
    let finished = null as Filled[] | null;
    const finish = (bars: readonly Filled[], left: Int32Array, limit: Int32Array): Finish => {
      const rest = greedyPlan({ ...task, limit, cost: room }, left, 200, -1);
      if (rest) finished = [...bars, ...rest];
      if (rest !== null) return 'found';
      if (!brimful || effort === 0) return 'on';
      const found = this.#coverRest(
        { ...task, demand: left, limit },
        roomOver(size, left, room, limit),
        4 ** effort,
      );
      if (found === null) return 'on';
      if (typeof found === 'string') return 'dead';
      finished = [...bars, ...found];
      return 'found';
    };
    const tools = { columns: this.#columns, filler: this.#filler, meter: this.#meter };
    const turns = brimful ? TURNS + effort : effort;
    const found = dive({ task, ...tools, budget, turns, depth: 2 + 2 * effort, finish }, relaxed);
    return fitOf(found ?? finished);
  }

  #tight(asked: Case, strength: number): Fit {
    if (asked.crowd < CROWDED) return UNKNOWN;
    const trials = 5 * strength;
    const from = asked.trials;
    asked.trials += trials;
    return fitOf(packTight(asked.task, from, trials, this.#meter));
  }

  #cover(asked: Case, effort: number, strength: number): Fit {
    // Once listed the list only grows with the reach; twice as far is not worth the time again.
    if (asked.listed && effort <= 2) return UNKNOWN;
    asked.listed = true;
    const { task, slack, budget, relaxed, brimful } = asked;
    const { worth, toll, bound } = relaxed;
    const prices = { worth, toll, gap: budget - bound };
    // Where next to nothing may be wasted a table of sums leads to every filling straight: many more can be listed.
    const most = brimful ? MOST_LISTED : 3000 * strength;
    const steps = brimful ? 50 * MOST_LISTED : 40_000 * strength;
    const fillings = allFillings(task, slack, prices, most, steps, this.#meter);
    return fillings === null ? UNKNOWN : fitOf(cover(task, fillings, 200 * strength, this.#meter));
  }

  /** What is left of a brimful task after some bars, once its fillings can be listed; null while they cannot. */
  #coverRest(rest: Task, slack: number, strength: number): Filled[] | 'never' | 'unknown' | null {
    const none = new Float64Array(rest.size.length);
    const free = { worth: none, toll: none, gap: Number.POSITIVE_INFINITY };
    const fillings = allFillings(rest, slack, free, LISTED_BELOW, 50 * LISTED_BELOW, this.#meter);
    return fillings && cover(rest, fillings, 50 * strength, this.#meter);
  }

  #search({ task, relaxed, refuted }: Case, strength: number): Fit {
    const reach = { nodes: 6 * strength, children: 60 * strength, steps: 15_000 * strength };
    return fitOf(search(task, this.#columns, this.#filler, relaxed, reach, refuted, this.#meter));
  }

  /** What the prices that prove it say of any choice of bars, with types that this choice has none of. */
  #cut(relaxed: Relaxed, limit: Int32Array): Cut {
    const demand = this.#demand;
    const most = relaxed.most.slice();
    this.#filler.price(relaxed.worth, demand);
    for (let t = 0; t < most.length; t++) {
      if (limit[t]! > 0) continue;
      this.#filler.fillSurely(this.#room[t]!, 0, this.#room[0]!);
      most[t] = this.#filler.upper;
    }
    return { most, needed: demand.reduce((s, n, i) => s + n * relaxed.worth[i]!, 0) };
  }
}
