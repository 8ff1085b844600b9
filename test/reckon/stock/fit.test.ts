import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Columns } from '../../../src/reckon/stock/columns.ts';
import { cover } from '../../../src/reckon/stock/cover.ts';
import type { Filled } from '../../../src/reckon/stock/dive.ts';
import { Filler } from '../../../src/reckon/stock/filler.ts';
import { allFillings } from '../../../src/reckon/stock/fillings.ts';
import { Fitting } from '../../../src/reckon/stock/fit.ts';
import { lastBars } from '../../../src/reckon/stock/last-bars.ts';
import { meter } from '../../../src/reckon/stock/meter.ts';
import { NearSums } from '../../../src/reckon/stock/near-sums.ts';
import { Packing } from '../../../src/reckon/stock/packing.ts';
import { relax, type Task } from '../../../src/reckon/stock/relax.ts';
import { search } from '../../../src/reckon/stock/search.ts';
import { dot, kinds, takings } from './small-kinds.ts';

const enough = () => meter(1e9);

describe('do these pieces fit in these bars', () => {
  type Room = { room: number; count: number };

  const taskOf = (size: Float64Array, demand: Int32Array, rooms: Room[]): Task => {
    const falling = [...rooms].sort((a, b) => b.room - a.room);
    const room = Float64Array.from(falling, r => r.room);
    const limit = Int32Array.from(falling, r => r.count);
    return { size, demand, room, limit, cost: room.map(r => r / room[0]!) };
  };

  /** Any pieces and bars, not much more room than there are pieces. */
  const loose = fc
    .record({
      kinds,
      rooms: fc.uniqueArray(
        fc.record({ room: fc.integer({ min: 8, max: 24 }), count: fc.integer({ min: 1, max: 3 }) }),
        { minLength: 1, maxLength: 3, selector: r => r.room },
      ),
    })
    .map(({ kinds: { size, demand }, rooms }) => taskOf(size, demand, rooms))
    .filter(({ size, demand, room, limit }) => {
      const slack = dot(limit, room) - dot(demand, size);
      return slack >= 0 && slack < 12 && size[0]! <= room[0]!;
    });

  /** Bars sawn up to the last or nearly so; then a piece may be made a little longer at another's cost: does it still go? */
  const sawn = fc
    .record({
      bars: fc.array(
        fc.record({
          room: fc.constantFrom(18, 21, 24),
          cuts: fc.uniqueArray(fc.integer({ min: 3, max: 15 }), { minLength: 1, maxLength: 3 }),
          loss: fc.constantFrom(0, 0, 0, 1),
        }),
        { minLength: 3, maxLength: 4 },
      ),
      moved: fc.integer({ min: -3, max: 3 }),
    })
    .map(({ bars, moved }) => {
      const lengths = bars.flatMap(({ room, cuts, loss }) => {
        const places = [0, ...cuts.sort((a, b) => a - b), room - loss];
        return places.slice(1).map((p, i) => p - places[i]!);
      });
      const last = lengths.length - 1;
      const by = Math.max(1 - lengths[0]!, Math.min(moved, lengths[last]! - 1));
      lengths[0]! += by;
      lengths[last]! -= by;
      const sizes = [...new Set(lengths)].sort((a, b) => b - a);
      const rooms = [...new Set(bars.map(b => b.room))].map(room => ({
        room,
        count: bars.filter(b => b.room === room).length,
      }));
      const demand = Int32Array.from(sizes, s => lengths.filter(l => l === s).length);
      return taskOf(Float64Array.from(sizes), demand, rooms);
    });

  const jobs = fc.oneof(loose, sawn);

  const fits = ({ size, demand, room, limit }: Task): boolean => {
    const seen = new Map<string, boolean>();
    const visit = (left: Int32Array, bars: Int32Array): boolean => {
      const first = left.findIndex(n => n > 0);
      if (first < 0) return true;
      const key = `${left.join()};${bars.join()}`;
      const known = seen.get(key);
      if (known !== undefined) return known;
      const found = Array.from(room).some(
        (r, t) =>
          bars[t]! > 0 &&
          takings(size, left, r).some(
            taken =>
              taken[first]! > 0 &&
              visit(
                left.map((n, i) => n - taken[i]!),
                bars.map((n, u) => (u === t ? n - 1 : n)),
              ),
          ),
      );
      seen.set(key, found);
      return found;
    };
    return visit(demand, limit);
  };

  const expectPacked = ({ size, demand, room, limit }: Task, bars: readonly Filled[]) => {
    const all = bars.reduce((sum, b) => sum.map((n, i) => n + b.taken[i]!), new Int32Array(size.length));
    expect([...all]).toEqual([...demand]);
    for (const { type, taken } of bars) expect(dot(taken, size)).toBeLessThanOrEqual(room[type]!);
    for (const [t, n] of limit.entries())
      expect(bars.filter(b => b.type === t).length).toBeLessThanOrEqual(n);
  };

  const slackOf = ({ size, demand, room, limit }: Task): number => dot(limit, room) - dot(demand, size);
  const budgetOf = ({ limit, cost }: Task): number => dot(limit, cost);

  const relaxed = (task: Task) => {
    const columns = new Columns();
    const filler = new Filler(task.size);
    const known = relax(task, columns, filler, [], 0, budgetOf(task) + 1e-6, enough());
    return { columns, filler, known };
  };

  test('the relaxation never asks for more than it takes', () => {
    fc.assert(
      fc.property(jobs, task => {
        if (fits(task)) expect(relaxed(task).known.bound).toBeLessThanOrEqual(budgetOf(task) + 1e-6);
      }),
    );
  });

  test('its prices say of any filling no more than it is worth', () => {
    fc.assert(
      fc.property(jobs, task => {
        const { most, worth } = relaxed(task).known;
        for (const [t, room] of task.room.entries())
          for (const taken of takings(task.size, task.demand, room))
            expect(dot(taken, worth)).toBeLessThanOrEqual(most[t]! + 1e-9);
      }),
    );
  });

  test('the search bar by bar answers as every way does', () => {
    fc.assert(
      fc.property(jobs, task => {
        const { columns, filler, known } = relaxed(task);
        if (known.bound > budgetOf(task) + 1e-6) return;
        const reach = { nodes: 1e5, children: 1e4, steps: 1e6 };
        const found = search(task, columns, filler, known, reach, new Set(), enough());
        if (fits(task)) expectPacked(task, found as Filled[]);
        else expect(found).toBe('never');
      }),
    );
  });

  test('a search that gives up says so, and refuses nothing that fits', () => {
    fc.assert(
      fc.property(
        jobs,
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 3 }),
        (task, nodes, children) => {
          const { columns, filler, known } = relaxed(task);
          if (known.bound > budgetOf(task) + 1e-6) return;
          const found = search(
            task,
            columns,
            filler,
            known,
            { nodes, children, steps: 1e6 },
            new Set(),
            enough(),
          );
          if (found === 'never') expect(fits(task)).toBe(false);
          else if (found !== 'unknown') expectPacked(task, found);
        },
      ),
    );
  });

  test('the cover from the full list answers as every way does', () => {
    fc.assert(
      fc.property(jobs, task => {
        const { known } = relaxed(task);
        const gap = budgetOf(task) - known.bound + 1e-6;
        if (gap < 0) return;
        const { worth, toll } = known;
        const fillings = allFillings(task, slackOf(task), { worth, toll, gap }, 1e5, 1e6, enough())!;
        const found = cover(task, fillings, 1e5, enough());
        if (fits(task)) expectPacked(task, found as Filled[]);
        else expect(found).toBe('never');
      }),
    );
  });

  const pack = (task: Task) =>
    new Packing(task, new NearSums(task.size, task.demand, task.room[0]!), enough()).try(40);

  test('the packing without waste gives what fits, and finds it where there is no slack', () => {
    fc.assert(
      fc.property(jobs, task => {
        const found = pack(task);
        if (found === null) return;
        if (found === 'never') throw new Error('there is room');
        expect(fits(task)).toBe(true);
        expectPacked(task, found);
      }),
    );
    const size = Float64Array.of(9, 8, 7, 6, 5, 4, 3);
    const task = {
      size,
      demand: Int32Array.of(2, 2, 2, 2, 2, 2, 2),
      room: Float64Array.of(21),
      limit: Int32Array.of(4),
      cost: Float64Array.of(1),
    };
    expectPacked(task, pack(task) as Filled[]);
  });

  test('the last bars are filled as every way does', () => {
    fc.assert(
      fc.property(jobs, task => {
        const found = lastBars(task, slackOf(task), enough());
        if (fits(task)) expectPacked(task, found as Filled[]);
        else expect(found).toBe('never');
      }),
    );
  });

  test('where too many pieces are left for the last bars, that is put off', () => {
    const size = Float64Array.from({ length: 40 }, (_, i) => 900 - 13 * i);
    const room = Float64Array.of(4000);
    const demand = new Int32Array(40).fill(2);
    const task = { size, demand, room, limit: Int32Array.of(20), cost: Float64Array.of(1) };
    expect(lastBars(task, slackOf(task), enough())).toBe('later');
  });

  test('asked together, with effort, they leave nothing open', () => {
    fc.assert(
      fc.property(jobs, task => {
        const { size, demand, room, limit } = task;
        const fitting = new Fitting(size, demand, room, new Columns(), new Filler(size), enough());
        const answers = [0, 1, 2, 3].map(effort => fitting.ask(limit, effort));
        const firm = answers.filter(a => a.is !== 'unknown');
        expect(new Set(firm.map(a => a.is))).toEqual(new Set([fits(task) ? 'fits' : 'never']));
        for (const a of firm) if (a.is === 'fits') expectPacked(task, a.bars);
      }),
    );
  });

  test('what a refusal teaches shuts out no choice of bars that would do', () => {
    fc.assert(
      fc.property(jobs, task => {
        const { size, demand, room, limit } = task;
        const fitting = new Fitting(size, demand, room, new Columns(), new Filler(size), enough());
        const none = limit.map((n, t) => (t === 0 ? Math.max(0, n - 2) : n));
        const answer = fitting.ask(none, 0);
        if (answer.is !== 'never' || answer.cut === null) return;
        const { most, needed } = answer.cut;
        expect(dot(none, most)).toBeLessThan(needed + 1e-9);
        for (const other of takings(
          new Float64Array(room.length).fill(1),
          Int32Array.from(room, () => 4),
          99,
        ))
          if (fits({ ...task, limit: other })) expect(dot(other, most)).toBeGreaterThanOrEqual(needed - 1e-9);
      }),
    );
  });

  test('a refusal of short bars alone says nothing against a long one', () => {
    const size = Float64Array.of(6);
    const room = Float64Array.of(24, 11);
    const fitting = new Fitting(size, Int32Array.of(4), room, new Columns(), new Filler(size), enough());
    const answer = fitting.ask(Int32Array.of(0, 3), 0);
    if (answer.is !== 'never' || answer.cut === null) throw new Error('three short bars hold three');
    const { most, needed } = answer.cut;
    expect(3 * most[1]!).toBeLessThan(needed);
    expect(most[0]!).toBeGreaterThanOrEqual(needed - 1e-9);
  });
});
