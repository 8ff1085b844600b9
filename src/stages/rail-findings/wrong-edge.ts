import type { StepKey } from '../../build/fold.ts';
import { offsetScene } from '../offset-scene.ts';
import { offerOtherEdge, worstWithout } from '../remedies/other-edge.ts';
import { everyStation } from '../remedies/read-again.ts';
import { length, offer, type RailCase, signed } from '../remedies/remedy.ts';
import type { Finding, Offer, Stage } from '../sheet.ts';
import { sortOffers } from '../sort-offers.ts';
import { farthest } from './reading.ts';

/** Sizes nearer to each other than this are one, mm. */
const SAME = 1;
/** Reading all stations again (common practice). */
const MINUTES = { once: 5, each: 0.5 } as const;

/** Which two lines stand so far apart: their name on the page, as a part of the words' key. */
const edgeName = (c: RailCase, edge_mm: number): string => {
  const size = Math.abs(edge_mm);
  const { tube, deck_mm } = c.r;
  const near = (v: number): boolean => Math.abs(size - v) <= Math.max(SAME, 0.15 * v);
  if (near(tube.depth_mm)) return 'depth';
  if (near(deck_mm + tube.depth_mm)) return 'deck-and-depth';
  if (near(deck_mm)) return 'deck';
  return near(tube.wall_mm) ? 'wall' : 'other';
};

/**
 * Every station is off by the same: the rail was read to another edge of the tube, or to another line. Said before any
 * fitting, for a constant hides in a shift of the rail. Nothing else is said of the rail until it is decided.
 */
export const wrongEdge = (
  c: RailCase,
  edge_mm: number,
  stage: Stage,
  blocks: readonly StepKey[],
): Finding => {
  const { r } = c;
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
    words: `wrong-edge-${edgeName(c, edge_mm)}`,
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
