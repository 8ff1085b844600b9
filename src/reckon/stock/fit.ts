import { Brimful } from './brimful.ts';
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
  refuted: Set<string>;
}> & {
  /** Null until it is asked for. */
  relaxed: Relaxed | null;
  listed: boolean;
};

/** Fewer pieces a bar than this leave too few ways to fill one to the last. */
const CROWDED = 3.5;
/** Waste below this share of the bars leaves few ways that will do. */
const BRIMFUL = 1e-3;
/** How often a dive in a brimful task may take another bar first. */
const TURNS = 2;
/** Rooms of more steps than this make a fine grid. */
const FINE = 40_000;
/** No more than this part of the time left goes into one dive or search of a brimful task: other ways are as likely to lead there. */
const PART_OF_TIME = 0.25;
const PART_AT_FIRST = 0.08;
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
  readonly #brimful: Brimful;
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
    this.#brimful = new Brimful(size, demand, room, meter);
    this.#known = Array.from({ length: columns.count }, (_, c) => c);
  }

  /**
   * Asks of one choice of bars.
   * @param limit how many bars of each room
   * @param effort 0 relaxes and rounds; each step more searches several times as long
   */
  ask(limit: Int32Array, effort: number): Fit {
    const asked = this.#cases.get(limit.join()) ?? this.#open(limit);
    if (asked === null) return NEVER;
    const filling = () => this.#fill(asked, effort);
    // On a fine grid to relax takes long.
    const fine = asked.brimful && this.#room[0]! > FINE;
    const before = fine ? filling() : UNKNOWN;
    if (before.is !== 'unknown') return before;
    asked.relaxed ??= this.#relax(asked);
    const { relaxed } = asked;
    if (relaxed.bound > asked.budget) return { is: 'never', cut: this.#cut(relaxed, limit) };
    const diving = () => this.#dive(asked, relaxed, effort);
    const packing = () => (asked.crowd < CROWDED ? UNKNOWN : this.#pack(asked, effort));
    const covering = () => this.#cover(asked, relaxed, effort);
    const searching = () => this.#search(asked, relaxed, effort);
    const loose = effort === 0 ? [diving, packing] : [diving, packing, covering, searching];
    const coarse = effort === 0 ? [diving, filling] : [diving, filling, searching];
    const brimful = !fine ? coarse : effort === 0 ? [] : [diving, searching];
    for (const way of asked.brimful ? brimful : loose) {
      const fit = way();
      if (fit.is !== 'unknown') return fit;
    }
    return UNKNOWN;
  }

  /** A brimful task is packed, and covered from its list. */
  #fill(asked: Case, effort: number): Fit {
    const { task, slack } = asked;
    const packing = () => this.#pack(asked, effort);
    const covering = () => fitOf(this.#brimful.cover(task, slack, effort));
    if (effort === 0) return packing();
    for (const way of this.#brimful.isShort(task, slack) ? [covering, packing] : [packing, covering]) {
      const fit = way();
      if (fit.is !== 'unknown') return fit;
    }
    return UNKNOWN;
  }

  /** The first look: null where there is not room enough. */
  #open(limit: Int32Array): Case | null {
    const sum = (n: Int32Array, of: Float64Array): number => n.reduce((s, v, i) => s + v * of[i]!, 0);
    const slack = roomOver(this.#size, this.#demand, this.#room, limit);
    if (slack < 0) return null;
    const count = (n: Int32Array): number => n.reduce((s, v) => s + v, 0);
    const opened = {
      task: { size: this.#size, demand: this.#demand, room: this.#room, limit, cost: this.#cost },
      budget: sum(limit, this.#cost) + ROUNDING,
      slack,
      crowd: count(this.#demand) / count(limit),
      brimful: slack < BRIMFUL * sum(limit, this.#room),
      relaxed: null,
      refuted: new Set<string>(),
      listed: false,
    };
    this.#cases.set(limit.join(), opened);
    return opened;
  }

  #relax({ task, budget }: Case): Relaxed {
    const relaxed = relax(task, this.#columns, this.#filler, this.#known, 0, budget, this.#meter);
    if (relaxed.ids.length < MOST_KNOWN) this.#known = relaxed.ids;
    return relaxed;
  }

  #dive({ task, budget, brimful }: Case, relaxed: Relaxed, effort: number): Fit {
    const { size, room } = task;
    let finished = null as Filled[] | null;
    const finish = (bars: readonly Filled[], left: Int32Array, limit: Int32Array): Finish => {
      const rest = greedyPlan({ ...task, limit, cost: room }, left, 200, -1);
      if (rest) finished = [...bars, ...rest];
      if (rest !== null) return 'found';
      if (!brimful || effort === 0) return 'on';
      const over = roomOver(size, left, room, limit);
      const found = this.#brimful.rest({ ...task, demand: left, limit }, over, 50 * 4 ** effort);
      if (found === null) return 'on';
      if (typeof found === 'string') return 'dead';
      finished = [...bars, ...found];
      return 'found';
    };
    const part = effort === 0 ? PART_AT_FIRST : PART_OF_TIME;
    const meter = brimful ? this.#meter.share(part) : this.#meter;
    const tools = { columns: this.#columns, filler: this.#filler, meter };
    const turns = brimful ? TURNS + effort : effort;
    const found = dive({ task, ...tools, budget, turns, depth: 2 + 2 * effort, finish }, relaxed);
    return fitOf(found ?? finished);
  }

  #pack({ task }: Case, effort: number): Fit {
    return fitOf(this.#brimful.pack(task, 5 * 4 ** effort));
  }

  #cover(asked: Case, { worth, toll, bound }: Relaxed, effort: number): Fit {
    const { task, slack, budget } = asked;
    const strength = 4 ** effort;
    const nodes = 200 * strength;
    // Once listed the list only grows with the reach; twice as far is not worth the time again.
    if (asked.listed && effort <= 2) return UNKNOWN;
    asked.listed = true;
    const prices = { worth, toll, gap: budget - bound };
    const fillings = allFillings(task, slack, prices, 3000 * strength, 40_000 * strength, this.#meter);
    return fillings === null ? UNKNOWN : fitOf(cover(task, fillings, nodes, this.#meter));
  }

  #search({ task, refuted, brimful }: Case, relaxed: Relaxed, effort: number): Fit {
    const strength = 4 ** effort;
    const reach = { nodes: 6 * strength, children: 60 * strength, steps: 15_000 * strength };
    const meter = brimful ? this.#meter.share(PART_OF_TIME) : this.#meter;
    return fitOf(search(task, this.#columns, this.#filler, relaxed, reach, refuted, meter));
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
