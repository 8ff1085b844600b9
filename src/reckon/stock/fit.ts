import type { Cut } from './bar-choices.ts';
import type { Columns } from './columns.ts';
import { cover } from './cover.ts';
import { dive, type Filled } from './dive.ts';
import type { Filler } from './filler.ts';
import { allFillings } from './fillings.ts';
import { greedyPlan } from './greedy.ts';
import type { Meter } from './meter.ts';
import { type Relaxed, relax } from './relax.ts';
import { search } from './search.ts';
import { packTight } from './tight.ts';

/** Whether pieces fit in given bars. */
export type Fit =
  | Readonly<{ is: 'fits'; bars: readonly Filled[]; by: string }>
  /** Proven not to, with what it teaches about other choices of bars, if it does. */
  | Readonly<{ is: 'never'; cut: Cut | null }>
  | Readonly<{ is: 'unknown' }>;

/**
 * Do these pieces fit in these bars? Asked with growing effort; what was found out is kept from one asking to the next.
 * Rooms are distinct and fall from the first to the last.
 */
export class Fitting {
  readonly #size: Float64Array;
  readonly #demand: Int32Array;
  readonly #room: Float64Array;
  readonly #cost: Float64Array;
  readonly #columns: Columns;
  readonly #filler: Filler;
  readonly #meter: Meter;
  /** Columns that served before, a start for the next relaxation. */
  #known: readonly number[];
  readonly #asked = new Map<
    string,
    { relaxed: Relaxed; refuted: Set<string>; trials: number; listed: boolean }
  >();

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
    const size = this.#size;
    const room = this.#room;
    const demand = this.#demand;
    const task = { size, demand, room, limit, cost: this.#cost };
    let budget = 0;
    let slack = 0;
    let bars = 0;
    let pieces = 0;
    for (let t = 0; t < room.length; t++) {
      budget += limit[t]! * this.#cost[t]!;
      slack += limit[t]! * room[t]!;
      bars += limit[t]!;
    }
    for (let i = 0; i < size.length; i++) {
      slack -= demand[i]! * size[i]!;
      pieces += demand[i]!;
    }
    if (slack < 0) return { is: 'never', cut: null };
    const key = limit.join();
    let had = this.#asked.get(key);
    if (had === undefined) {
      const relaxed = relax(task, this.#columns, this.#filler, this.#known, 0, budget + 1e-6, this.#meter);
      if (relaxed.ids.length < 2000) this.#known = relaxed.ids;
      if (relaxed.bound > budget + 1e-6) {
        return { is: 'never', cut: this.#cut(relaxed, limit) };
      }
      had = { relaxed, refuted: new Set(), trials: 0, listed: false };
      this.#asked.set(key, had);
    }
    const { relaxed } = had;
    const strength = 4 ** effort;
    let finished = null as Filled[] | null;
    const dived = dive(
      {
        task,
        columns: this.#columns,
        filler: this.#filler,
        meter: this.#meter,
        budget,
        turns: effort,
        depth: 2 + 2 * effort,
        finish: (done, left, still) => {
          const rest = greedyPlan({ size, room, limit: still, cost: room }, left, 200, -1);
          if (rest) finished = [...done, ...rest];
          return rest !== null;
        },
      },
      relaxed,
    );
    if (dived ?? finished) return { is: 'fits', bars: (dived ?? finished)!, by: 'dive' };
    if (pieces >= 3.5 * bars && room[0]! < 130_000) {
      const trials = 5 * strength;
      const tight = packTight(size, room, demand, limit, had.trials, trials, this.#meter);
      had.trials += trials;
      if (tight) return { is: 'fits', bars: tight, by: 'tight' };
    }
    if (effort === 0) return { is: 'unknown' };
    if (!had.listed || effort > 2) {
      const fillings = allFillings(
        {
          ...task,
          slack,
          worth: relaxed.worth,
          toll: relaxed.toll,
          gap: budget - relaxed.bound + 1e-6,
        },
        3000 * strength,
        40_000 * strength,
        this.#meter,
      );
      had.listed = true;
      if (fillings) {
        const covered = cover(task, fillings, 200 * strength, this.#meter);
        if (covered === 'never') return { is: 'never', cut: null };
        if (covered !== 'unknown') return { is: 'fits', bars: covered, by: 'cover' };
      }
    }
    const reach = { nodes: 6 * strength, children: 60 * strength, steps: 15_000 * strength };
    const found = search(task, this.#columns, this.#filler, relaxed, reach, had.refuted, this.#meter);
    if (found === 'never') return { is: 'never', cut: null };
    return found === 'unknown' ? { is: 'unknown' } : { is: 'fits', bars: found, by: 'search' };
  }
  /** What the prices that prove it say of any choice of bars, those of which this choice has none included. */
  #cut(relaxed: Relaxed, limit: Int32Array): Cut {
    const demand = this.#demand;
    const most = relaxed.most.slice();
    this.#filler.price(relaxed.worth, demand);
    for (let t = 0; t < most.length; t++) {
      if (limit[t]! > 0) continue;
      this.#filler.fillSurely(this.#room[t]!, 0, this.#room[0]!);
      most[t] = this.#filler.upper;
    }
    let needed = 0;
    for (let i = 0; i < demand.length; i++) needed += relaxed.worth[i]! * demand[i]!;
    return { most, needed };
  }
}
