import { Agenda } from './agenda.ts';
import { BarChoices } from './bar-choices.ts';
import type { Cut } from './choice-at-level.ts';
import { Columns } from './columns.ts';
import { dive, type Filled, type Finish } from './dive.ts';
import { Filler } from './filler.ts';
import { firstPlan } from './first-plan.ts';
import { Fitting } from './fit.ts';
import { greedyPlan } from './greedy.ts';
import { ontoGrid } from './grid.ts';
import type { Meter } from './meter.ts';
import { relax } from './relax.ts';
import { better, type Settled, settle } from './settle.ts';
import type { Shelf } from './shelf.ts';

export type Best = Readonly<{
  /** Null when the pieces do not go into the bars there are, or no way was found. */
  plan: Settled | null;
  /** No plan costs less. */
  bound: number;
  /** The plan is the best there is; without a plan: there is none. */
  proven: boolean;
}>;

/**
 * The cheapest plan: goes through the choices of bars in order of cost and asks of each whether the pieces fit, the harder the longer a
 * choice stays open. It ends with the first that fits when all cheaper ones were shown not to.
 * @param given costs whole
 * @param onBetter is given each plan better than those before, with the bound known by then
 */
export const bestPlan = (
  given: Shelf,
  demand: Int32Array,
  meter: Meter,
  onBetter?: (plan: Settled, bound: number) => void,
): Best => {
  const { limit, cost } = given;
  const { size, room } = ontoGrid(given.size, demand, given.room);
  const shelf = { size, room, limit, cost };
  let plan = null as Settled | null;
  let bound = 0;
  const value = () => plan?.cost ?? Number.POSITIVE_INFINITY;
  const take = (bars: readonly Filled[] | null): void => {
    // On the rooms as given: brought down to what can be filled they do not tell which bar is the shorter.
    const settled = bars && settle(given, bars);
    if (settled === null || !better(settled, plan)) return;
    plan = settled;
    onBetter?.(settled, bound);
  };
  take(firstPlan(shelf, demand)?.bars ?? null);

  const choices = new BarChoices(cost, limit, value(), meter);
  const needed = (worth: Float64Array): number => demand.reduce((sum, n, i) => sum + n * worth[i]!, 0);
  choices.add({ most: room, needed: needed(size) });
  bound = choices.raise(0);
  const filler = new Filler(size);
  const own = new Columns();
  const top = Math.max(...cost);
  if (bound < value() && top > 0) {
    // The relaxation in the aim's own cost: its prices are a cut on all choices, its columns a start.
    const task = { size, demand, room, limit, cost: cost.map(c => c / top) };
    const relaxed = relax(task, own, filler, [], 0, (value() - 1 + 1e-3) / top, meter);
    choices.add({ most: relaxed.most, needed: needed(relaxed.worth) });
    // Costs are whole; a little is taken off for what rounding may have added.
    bound = choices.raise(Math.ceil(relaxed.bound * top * (1 - 1e-7) - 1e-6));
    if (bound < value()) {
      const finish = (bars: readonly Filled[], left: Int32Array, still: Int32Array): Finish => {
        const rest = greedyPlan({ ...shelf, limit: still }, left, 300, -1);
        take(rest && [...bars, ...rest]);
        return 'on';
      };
      const budget = Number.POSITIVE_INFINITY;
      take(dive({ task, columns: own, filler, meter, budget, turns: 0, depth: 0, finish }, relaxed));
    }
  }
  if (bound >= value()) return { plan, bound: value(), proven: true };

  // To the fitting bars of one length are one, whatever they cost.
  const rooms = [...new Set(room)];
  const roomOf = Array.from(room, r => rooms.indexOf(r));
  const columns = new Columns();
  for (let c = 0; c < own.count; c++)
    columns.add(own.taken(c, size.length), roomOf[own.type[c]!]!, own.size[c]!);
  const fitting = new Fitting(size, demand, Float64Array.from(rooms), columns, filler, meter);
  const ofTypes = ({ most, needed }: Cut): Cut => ({
    most: Float64Array.from(room, (_, t) => most[roomOf[t]!]!),
    needed,
  });
  const agenda = new Agenda(choices, meter);
  while (!meter.over()) {
    const now = agenda.next(value());
    bound = Math.max(bound, agenda.lowest(now, value()));
    if (now === null || bound >= value()) break;
    const bars = new Int32Array(rooms.length);
    for (let t = 0; t < room.length; t++) bars[roomOf[t]!]! += now.bars[t]!;
    const fit = fitting.ask(bars, now.effort);
    agenda.put(now, fit.is);
    if (fit.is === 'fits') take(fit.bars);
    if (fit.is === 'never' && fit.cut !== null) choices.add(ofTypes(fit.cut));
  }
  return { plan, bound: Math.min(bound, value()), proven: plan === null ? agenda.sure : bound >= value() };
};
