import { describe, expect, test } from 'vitest';
import type { Offer } from '../../src/stages/sheet.ts';
import { sortOffers } from '../../src/stages/sort-offers.ts';

const offer = (remedy: string, minutes: number, v?: number, within = false): Offer => ({
  remedy,
  minutes,
  plan: {},
  ...(v === undefined ? {} : { after: { v, as: 'length', within } }),
});
const order = (...offers: Offer[]): readonly string[] => sortOffers(offers).map(o => o.remedy);

describe('remedies, best first', () => {
  test('what brings it within the limit, by least work', () => {
    expect(
      order(offer('begin-again', 240, 2, true), offer('re-cut', 18, 0.5, true), offer('roll', 5)),
    ).toEqual(['roll', 're-cut', 'begin-again']);
  });

  test('over the limit: what leaves least, and only leaving it never above what does something', () => {
    expect(
      order(
        offer('leave', 0, 22),
        offer('re-lay', 7, 4),
        offer('pack-deck', 25, 22),
        offer('re-cut', 18, 0.5, true),
      ),
    ).toEqual(['re-cut', 're-lay', 'pack-deck', 'leave']);
    expect(order(offer('leave-door', 0), offer('wider-gate', 90))).toEqual(['wider-gate', 'leave-door']);
  });
});
