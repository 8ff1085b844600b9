import type { Cut } from './choice-at-level.ts';
import type { Columns } from './columns.ts';
import { cover } from './cover.ts';
import { dive, type Filled } from './dive.ts';
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
  relaxed: Relaxed;
  refuted: Set<string>;
}> & { trials: number; listed: boolean };

/** Fewer pieces a bar than this leave too few ways to fill one to the last. */
const CROWDED = 3.5;
/** What rounding may add to a bound, in bars. */
const ROUNDING = 1e-6;
/** Columns handed on from one choice to the next. */
const MOST_KNOWN = 2000;

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
    const ways = [() => this.#dive(asked, effort), () => this.#tight(asked, strength)];
    if (effort > 0)
      ways.push(
        () => this.#cover(asked, effort, strength),
        () => this.#search(asked, strength),
      );
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
    const slack = sum(limit, this.#room) - sum(this.#demand, this.#size);
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
      relaxed,
      refuted: new Set<string>(),
      trials: 0,
      listed: false,
    };
    this.#cases.set(limit.join(), opened);
    return opened;
  }

  #dive({ task, budget, relaxed }: Case, effort: number): Fit {
    let finished = null as Filled[] | null;
    const finish = (bars: readonly Filled[], left: Int32Array, limit: Int32Array): boolean => {
      const rest = greedyPlan({ ...task, limit, cost: this.#room }, left, 200, -1);
      if (rest) finished = [...bars, ...rest];
      return rest !== null;
    };
    const tools = { columns: this.#columns, filler: this.#filler, meter: this.#meter };
    const found = dive({ task, ...tools, budget, turns: effort, depth: 2 + 2 * effort, finish }, relaxed);
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
    const { task, slack, budget, relaxed } = asked;
    const { worth, toll, bound } = relaxed;
    const prices = { worth, toll, gap: budget - bound };
    const fillings = allFillings(task, slack, prices, 3000 * strength, 40_000 * strength, this.#meter);
    return fillings === null ? UNKNOWN : fitOf(cover(task, fillings, 200 * strength, this.#meter));
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
