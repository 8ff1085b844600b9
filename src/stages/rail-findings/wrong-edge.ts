import type { StepKey } from '../../build/fold.ts';
import { offsetScene } from '../offset-scene.ts';
import { offerOtherEdge, worstWithout } from '../remedies/other-edge.ts';
import { everyStation } from '../remedies/read-again.ts';
import { length, offer, type RailCase, signed } from '../remedies/remedy.ts';
import type { Finding, Offer, Stage } from '../sheet.ts';
import { sortOffers } from '../sort-offers.ts';
import { farthest } from './reading.ts';

/** A constant this near to a size is that size, mm and as a share. */
const SAME = 1;
const SHARE = 0.15;
/** Reading all stations again (common practice). */
const MINUTES = { once: 5, each: 0.5 } as const;

/** How far apart lines stand that can be taken for each other, by the name of their words. */
const sizesOf = ({ tube, deck_mm }: RailCase['r']): readonly (readonly [string, number])[] => [
  ['depth', tube.depth_mm],
  ['deck-and-depth', deck_mm + tube.depth_mm],
  ['deck', deck_mm],
  ['wall', tube.wall_mm],
];

/** The edge that a constant is, and its exact size where that is known. */
const edgeOf = (c: RailCase, seen_mm: number): { name: string; edge_mm: number } => {
  const size = Math.abs(seen_mm);
  const known = sizesOf(c.r).find(([, mm]) => Math.abs(size - mm) <= Math.max(SAME, SHARE * mm));
  return known === undefined
    ? { name: 'other', edge_mm: seen_mm }
    : { name: known[0], edge_mm: Math.sign(seen_mm) * known[1] };
};

/**
 * Every station is off by the same: the rail was read to another edge of the tube, or to another line. Said before any
 * fitting, for a constant hides in a shift of the rail. Nothing else is said of the rail until it is decided.
 */
export const wrongEdge = (
  c: RailCase,
  seen_mm: number,
  stage: Stage,
  blocks: readonly StepKey[],
): Finding => {
  const { r } = c;
  const { name, edge_mm } = edgeOf(c, seen_mm);
  const spread = Math.max(...r.offsets_mm) - Math.min(...r.offsets_mm);
  const fills = {
    rail: r.rail,
    size: length(Math.abs(edge_mm)),
    reads: signed(edge_mm),
    spread: length(spread),
    left: length(worstWithout(c, edge_mm)),
    edge: r.survey.edge,
    line: r.survey.to,
  } as const;
  const asRead = r.worst_mm;
  const fix = asRead > c.limit_mm;
  const again = Math.round(MINUTES.once + MINUTES.each * r.stations_mm.length);
  const offers: readonly Offer[] = [
    ...offerOtherEdge(c, edge_mm),
    offer(
      c,
      'read-again',
      again,
      asRead,
      { count: r.stations_mm.length, stations: everyStation(r.numbers) },
      { stations: [] },
    ),
    offer(c, 'leave-survey', 0, asRead, {}, {}),
  ];
  return {
    key: `rail-edge@${r.rail}#${r.survey.id}`,
    stage,
    severity: fix ? 'fix' : 'watch',
    words: `wrong-edge-${name}`,
    fills,
    tall: { v: edge_mm, as: 'length', sign: true },
    worst_mm: asRead,
    limit: { v: c.limit_mm, as: 'length' },
    offers: sortOffers(offers),
    ...(fix ? { blocks } : {}),
    scene: offsetScene(
      r.plan,
      r.survey.to,
      r.stations_mm.map((station_mm, j) => ({ station_mm, offset_mm: r.offsets_mm[j] ?? null })),
      farthest(r.offsets_mm),
    ),
  };
};
