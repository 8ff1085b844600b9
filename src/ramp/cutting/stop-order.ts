/** The bars in an order, each with its lengths in the order they are cut. */
export type StopOrder = Readonly<{
  order: readonly number[];
  lengths: readonly (readonly number[])[];
  /** Times the stop of the saw is set. */
  settings: number;
}>;

/** Up to so many bars every order is tried, by the bars already done and the length the stop stands at. */
const MOST_EXACT = 10;

/** The best way found to a set of bars done with the stop at a length. */
type State = Readonly<{ settings: number; bar: number; first: number; last: number; before: State | null }>;

/** First and last length a bar can be cut with: different ones, unless it has one only. */
const endsOf = (lengths: readonly number[]): readonly (readonly [number, number])[] =>
  lengths.length === 1
    ? [[lengths[0] as number, lengths[0] as number]]
    : lengths.flatMap(first => lengths.filter(last => last !== first).map(last => [first, last] as const));

const between = (lengths: readonly number[], first: number, last: number): readonly number[] =>
  lengths.length === 1
    ? lengths
    : [first, ...lengths.filter(l => l !== first && l !== last).sort((a, b) => b - a), last];

const exact = (bars: readonly (readonly number[])[]): StopOrder => {
  const all = 2 ** bars.length - 1;
  // By the bars done, as bits, then by the length the stop stands at.
  const states = Array.from({ length: all + 1 }, () => new Map<number, State>());
  for (let done = 0; done < all; done++) {
    const here: readonly (State | null)[] = done === 0 ? [null] : [...(states[done]?.values() ?? [])];
    for (const before of here) {
      for (const [bar, lengths] of bars.entries()) {
        if (((done >> bar) & 1) === 1) continue;
        const next = states[done | (1 << bar)];
        for (const [first, last] of endsOf(lengths)) {
          const settings = (before?.settings ?? 0) + lengths.length - (before?.last === first ? 1 : 0);
          const there = next?.get(last);
          if (there === undefined || settings < there.settings)
            next?.set(last, { settings, bar, first, last, before });
        }
      }
    }
  }
  const ends = [...(states[all]?.values() ?? [])];
  let best: State | null = ends.reduce<State | null>(
    (a, b) => (a === null || b.settings < a.settings ? b : a),
    null,
  );
  const settings = best?.settings ?? 0;
  const order: number[] = [];
  const lengths: (readonly number[])[] = [];
  for (; best !== null; best = best.before) {
    order.unshift(best.bar);
    lengths.unshift(between(bars[best.bar] ?? [], best.first, best.last));
  }
  return { order, lengths, settings };
};

/** Bar after bar, each time one that begins with the length the stop stands at, where there is one. */
const oneByOne = (bars: readonly (readonly number[])[]): StopOrder => {
  const left = bars.map((_, i) => i);
  const order: number[] = [];
  const lengths: (readonly number[])[] = [];
  let stop: number | null = null;
  let settings = 0;
  while (left.length > 0) {
    const at = Math.max(
      0,
      left.findIndex(i => stop !== null && bars[i]?.includes(stop)),
    );
    const bar = left.splice(at, 1)[0] as number;
    const own = bars[bar] ?? [];
    const first: number = stop !== null && own.includes(stop) ? stop : (own[0] as number);
    if (first === stop) settings--;
    settings += own.length;
    const shared: number | undefined = own.find(l => l !== first && left.some(i => bars[i]?.includes(l)));
    const last: number = shared ?? own.find(l => l !== first) ?? first;
    order.push(bar);
    lengths.push(between(own, first, last));
    stop = last;
  }
  return { order, lengths, settings };
};

/** Bars that one length joins, directly or by way of others: only they can leave the stop where it stands. */
const families = (bars: readonly (readonly number[])[]): readonly (readonly number[])[] => {
  const of: number[] = bars.map((_, i) => i);
  for (const [i, own] of bars.entries()) {
    for (let k = 0; k < i; k++) {
      if (of[k] === of[i] || !bars[k]?.some(l => own.includes(l))) continue;
      const [from, to] = [of[k], of[i]] as [number, number];
      for (const [at, family] of of.entries()) if (family === from) of[at] = to;
    }
  }
  return [...new Set(of)].map(family => of.flatMap((f, i) => (f === family ? [i] : [])));
};

/** Bars of one length alone, all of the same: cut one after the other they are one setting, wherever they come. */
const alike = (
  bars: readonly (readonly number[])[],
  at: readonly number[],
): readonly (readonly number[])[] => {
  const groups = new Map<string, number[]>();
  for (const i of at) {
    const own = bars[i] ?? [];
    const key = own.length === 1 ? `all ${own[0]}` : `bar ${i}`;
    groups.set(key, [...(groups.get(key) ?? []), i]);
  }
  return [...groups.values()];
};

/**
 * The order of bars, and of the lengths in each, that sets the saw's stop fewest times: it stays where the last length of a bar
 * is the first of the next. Families of bars that share no length are ordered each by itself, which loses nothing; only a family
 * of more than ten different bars is ordered one by one.
 * @param bars the different lengths to cut from each bar, mm, none twice, at least one each
 */
export const stopOrder = (bars: readonly (readonly number[])[]): StopOrder => {
  const order: number[] = [];
  const lengths: (readonly number[])[] = [];
  let settings = 0;
  for (const family of families(bars)) {
    const groups = alike(bars, family);
    const own = groups.map(group => bars[group[0] as number] ?? []);
    const best = own.length <= MOST_EXACT ? exact(own) : oneByOne(own);
    settings += best.settings;
    for (const [k, at] of best.order.entries()) {
      for (const bar of groups[at] ?? []) {
        order.push(bar);
        lengths.push(best.lengths[k] ?? []);
      }
    }
  }
  return { order, lengths, settings };
};
