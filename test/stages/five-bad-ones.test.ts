import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import type { Quantity, System } from '../../src/quantity/quantities.ts';
import { write } from '../../src/quantity/write.ts';
import { DEG, set } from './doings.ts';
import { anchored, KIND_LANDING, landing, ridden, rideFindingsOf, Told } from './ride-told.ts';

/** Five ramps that would hurt somebody, and the first thing that plan has to say of each. */
const BAD: readonly Readonly<{
  name: string;
  says: string;
  doings: readonly Doing[];
  us?: readonly Doing[];
}>[] = [
  {
    name: 'too fast for its radius',
    says: 'ride-load-novice',
    doings: [set('shape', { radius: 2500, exit: 30 * DEG }), ridden(7.3), ...KIND_LANDING, ...anchored(4, 2)],
  },
  { name: 'no anchors', says: 'ride-anchors-few', doings: [ridden(5), ...KIND_LANDING, ...anchored(0, 0)] },
  {
    name: 'boards that span too far',
    says: 'ride-deck-boards',
    doings: [
      set('deck', { kind: 'boards', thickness_mm: 38, board_mm: 145 }),
      set('width', 1380),
      set('rider', 104),
      ridden(5),
      ...KIND_LANDING,
      ...anchored(4, 2),
    ],
    // Four rails are laid for the usual rider, a heavier one is too much at that span.
    us: [set('width', 1800)],
  },
  {
    name: 'a flat landing from high',
    says: 'ride-flat-from-high',
    doings: [
      set('shape', { height: 900, exit: 30 * DEG }),
      ridden(5.5),
      ...landing({ drop_mm: 900, slope_deg: 0 }),
      ...anchored(4, 2),
    ],
  },
  {
    name: 'uprights too far apart',
    says: 'strength-far',
    doings: [set('spacing', 900), ridden(5), ...KIND_LANDING, ...anchored(4, 2)],
  },
];

const READ_AS: Readonly<Record<string, Quantity>> = {
  'entry-speed': 'speed',
  'landing-table': 'reach',
  'landing-gap': 'reach',
  'landing-down': 'reach',
  'landing-slope': 'angle',
  'landing-length': 'reach',
};
const NO_CHANGE = /^(leave|accept|ride-ask|design-by)/;

/** Chooses the first change of the first finding, and types its numbers as they stand on the page. */
const mendFirst = async (told: Told, system: System): Promise<string> => {
  const finding = rideFindingsOf(await told.view())[0];
  const offer = finding?.offers.find(o => !NO_CHANGE.test(o.remedy));
  if (finding === undefined || offer === undefined) throw new Error(`nothing mends ${finding?.key}`);
  await told.act({ do: 'choose', finding: finding.key, remedy: offer.remedy });
  const asked = (offer.plan.readings ?? []) as readonly { step: string; ask: string; value: number }[];
  for (const { step, ask, value } of asked) {
    const as = READ_AS[ask];
    await told.act({ do: 'read', step, ask, value: as === undefined ? value : write(value, as, system) });
  }
  return offer.remedy;
};

describe.each([
  ['metric', 'skate'],
  ['metric', 'bike'],
  ['us', 'bike'],
  ['us', 'skate'],
] as const)('in %s, for a %s', (system, use) => {
  test.each(BAD)(
    '$name: said first, and the first change or the first two turn it green',
    async ({ says, doings, us = [] }) => {
      const told = new Told(system, set('use', use), ...doings, ...(system === 'us' ? us : []));
      expect(rideFindingsOf(await told.view())[0]).toMatchObject({ words: says, severity: 'stop' });
      const made: string[] = [];
      while (rideFindingsOf(await told.view()).length > 0 && made.length < 3)
        made.push(await mendFirst(told, system));
      expect(
        rideFindingsOf(await told.view()).map(f => f.key),
        made.join(', '),
      ).toEqual([]);
      expect(made.length).toBeLessThanOrEqual(2);
    },
  );
});
