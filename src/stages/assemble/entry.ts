import { entryPlate } from '../../ramp/deck.ts';
import { entryArc } from '../../ramp/entry.ts';
import { TURN } from '../order.ts';
import type { Figure, StepDraft } from '../sheet.ts';
import { sideView } from '../side-view.ts';
import type { Situation } from '../situation.ts';
import { MATTERS } from './limits.ts';

/** The plate's lower edge stands no prouder than this, mm (common practice for small wheels). */
const EDGE = 3;

const length = (v: number) => ({ v, as: 'length' }) as const;

/** The entry in front of the rails: bearers that follow the arc, and the plate that is bent over them. */
export const entrySteps = (s: Situation): readonly StepDraft[] => {
  const { bearers } = s.ramp.entry;
  const plate = entryPlate(s.ramp.design.system);
  const fills = {
    count: bearers.length,
    spacing: length(plate.spacing_mm),
    thick: length(plate.thick_mm),
    wide: length(s.ramp.design.width),
    edge: length(EDGE),
  } as const;
  const scene = sideView(s, { lit: 'entry' });
  const bearerStep: StepDraft = {
    key: 'assemble/bearers',
    stage: 'assemble',
    words: 'bearers',
    fills,
    turn: TURN.assemble + 110,
    needs: ['assemble/stand-up'],
    uses: ['entry-run'],
    line: { face: 'ground' },
    items: bearers.map((b, k) => ({
      key: `assemble/bearers#${k + 1}`,
      name: String(k + 1),
      value: { v: s.ramp.entry.length_mm - b.x_mm, as: 'length' },
      second: { v: b.height_mm, as: 'length' },
      note: {
        words: b.height_mm > b.thick_mm ? 'says.assemble-bearer-edge' : 'says.assemble-bearer-flat',
        fills: { wide: length(b.wide_mm), thick: length(b.thick_mm) },
      },
    })),
    minutes: [20 * Math.max(1, bearers.length), 35 * Math.max(1, bearers.length)],
    scene,
  };
  return [
    ...(bearers.length === 0 ? [] : [bearerStep]),
    {
      key: 'assemble/entry-plate',
      stage: 'assemble',
      words: 'entry-plate',
      fills,
      turn: TURN.assemble + 120,
      needs: bearers.length === 0 ? ['assemble/stand-up'] : ['assemble/bearers'],
      uses: ['plate-length'],
      tall: ['plate-length'],
      line: { face: 'deck top' },
      minutes: [40, 80],
      scene,
    },
  ];
};

export const entryFigures = (s: Situation): readonly Figure[] => [
  {
    id: 'entry-run',
    kind: 'dimension',
    as: 'length',
    line: { face: 'ground' },
    value: { is: 'exact', v: s.ramp.entry.length_mm },
    matters: MATTERS.length,
  },
  {
    id: 'plate-length',
    kind: 'dimension',
    as: 'length',
    line: { face: 'deck top' },
    value: { is: 'exact', v: entryArc(s.ramp.design) },
    matters: MATTERS.length,
  },
];
