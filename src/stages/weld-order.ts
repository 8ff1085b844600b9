/** Slits welded between two pauses and two looks (common practice). */
export const ROUND = 4;

/**
 * Slits in the order they are welded: with long skips, so that no slit is welded beside a hot one, and with every round spread
 * along the whole rail, so that what is pulled so far is pulled evenly (skip welding, as welding texts on distortion have it [found];
 * this pattern of it is derived).
 * @param slits numbers of the slits, rising
 */
export const skipOrder = (slits: readonly number[]): readonly number[] => {
  const runs = Math.max(1, Math.min(ROUND, Math.floor(slits.length / 2)));
  const stride = Math.ceil(slits.length / runs);
  const order: number[] = [];
  for (let from = 0; from < stride; from++) {
    for (let at = from; at < slits.length; at += stride) {
      const slit = slits[at];
      if (slit !== undefined) order.push(slit);
    }
  }
  return order;
};

/** The slits of a rail in the two halves they are welded in: every second one from the first, then those between. */
export const halvesOf = (
  slits: readonly number[],
): Readonly<{ first: readonly number[]; rest: readonly number[] }> => ({
  first: skipOrder(slits.filter((_, i) => i % 2 === 0)),
  rest: skipOrder(slits.filter((_, i) => i % 2 === 1)),
});

/** An order cut into rounds; a last round of one is welded with the round before. */
export const roundsOf = (order: readonly number[]): readonly (readonly number[])[] => {
  const rounds: number[][] = [];
  for (let i = 0; i < order.length; i += ROUND) rounds.push(order.slice(i, i + ROUND));
  const last = rounds.at(-1);
  if (rounds.length > 1 && last?.length === 1) {
    rounds.pop();
    rounds.at(-1)?.push(...last);
  }
  return rounds;
};

/**
 * Share of a slit's whole pull that its two side welds bring, the top weld the rest. A ring of four equal walls turns by nothing when
 * its two sides shrink alone (derived); on tight faces the pull comes when the top melts (common practice). Where
 * a gap was left, or a tack gives, the sides may pull all of it. To be learned from the rail at hand.
 */
export const SIDES_SHARE = { low: 0, likely: 0.2, high: 1 } as const;

/** Pull that is in a rail, in slits' worth, from how many slits have their sides and how many their tops welded. */
export const pulledSlits = (sides: number, tops: number, share: number): number =>
  sides * share + tops * (1 - share);
