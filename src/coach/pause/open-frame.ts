import type { Build } from '../../build/fold.ts';
import { LEAST_ANCHORS, MOST_AN_END } from '../../reckon/strength/anchors.ts';
import { type Again, begunItems, DAYS, look, NEAR, type Open, value } from './open.ts';

/** The diagonals of a frame that is only tacked. */
export const diagonals = (b: Build): readonly Open[] => {
  if (b.ticks.has('assemble/weld')) return [];
  const asks = ['d1', 'd2'].flatMap((ask): readonly Again[] => {
    const was = value(b, 'assemble/diagonals', ask);
    return was === null
      ? []
      : [{ ask, as: 'length', was, expected: [was - NEAR, was + NEAR], possible: [was / 2, 2 * was] }];
  });
  if (asks.length < 2) return [];
  return [
    {
      stage: 'assemble',
      name: 'diagonals',
      words: 'pause-diagonals',
      subject: '',
      same: '',
      days: DAYS.measured,
      asks,
      items: [],
      holds: 'frame',
      fills: {},
      minutes: [5, 10],
    },
  ];
};

/** Anchors that were pulled, as many as there are. */
export const anchors = (b: Build): readonly Open[] => {
  const asks = Array.from({ length: 2 * MOST_AN_END }, (_, k) => k + 1).flatMap((k): readonly Again[] => {
    const was = value(b, 'finish/anchors', `pull${k}`);
    return was === null
      ? []
      : [
          {
            ask: `pull${k}`,
            as: 'force',
            was,
            expected: [0.95 * was, 1.05 * was],
            possible: [0, 20_000],
          },
        ];
  });
  if (asks.length < LEAST_ANCHORS) return [];
  return [
    {
      stage: 'finish',
      name: 'anchors',
      words: 'pause-anchors',
      subject: '',
      same: '',
      days: DAYS.outdoors,
      asks,
      items: [],
      holds: 'frame',
      fills: { all: asks.length },
      minutes: [10, 25],
    },
  ];
};

/** The welding set, by what it burns; gas where it is not known. */
export const welder = (b: Build): readonly Open[] => {
  const begun = b.marks.length > 0 || value(b, 'cut/test-piece', 'turn') !== null;
  if (!begun || b.ticks.has('assemble/weld')) return [];
  const kind = value(b, 'weld/machine', 'kind') ?? 1;
  const burns = kind <= 2 ? ['gas', 'wire'] : kind === 3 ? ['wire'] : ['rods'];
  return [
    look({
      stage: 'weld',
      name: 'welder',
      days: DAYS.welder,
      items: [...burns, 'lens', 'leads'],
      holds: 'arc',
      minutes: [5, 15],
    }),
  ];
};

/** A frame that stands bare, primed or decked. */
export const outdoors = (b: Build, days: number): readonly Open[] => {
  // Coats of an older build are items of one step.
  const coats = begunItems(b, 'finish/paint');
  const primed = b.ticks.has('finish/prime') || coats.includes('primer');
  const painted = b.ticks.has('finish/paint') || coats.includes('second-top');
  const decked = b.ticks.has('finish/deck') || begunItems(b, 'finish/deck').length > 0;
  if (decked) {
    return [
      look({
        stage: 'finish',
        name: 'deck',
        days: DAYS.outdoors,
        items: ['screws', 'edges', 'paint', 'welds'],
        holds: 'frame',
        minutes: [10, 25],
      }),
    ];
  }
  if (painted || !b.ticks.has('assemble/weld')) return [];
  if (!primed)
    return [look({ stage: 'finish', name: 'frame', days: DAYS.frame, holds: 'frame', minutes: [15, 40] })];
  return [
    look({
      stage: 'finish',
      name: 'primed',
      words: days >= DAYS.primedLong ? 'pause-primed-long' : 'pause-primed',
      days: DAYS.primed,
      holds: 'frame',
      minutes: days >= DAYS.primedLong ? [60, 150] : [10, 30],
    }),
  ];
};
