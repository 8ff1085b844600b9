import { TURN } from '../order.ts';
import type { Ask, Figure, Fill, Fills, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { welderOf } from './process.ts';
import {
  bottleOf,
  CO2_l_kg,
  need,
  type Part,
  partsOf,
  SUPPLIES,
  type Supply,
  suppliesKey,
  weldsOf,
} from './supplies.ts';

/** A spool or packet as it is sold is so much more than the part wants, kg and rods (trade sizes). */
const MORE = { wire: 4, rods: 60 } as const;
/** Bottles of a hobby shop, l: 20 to 330 ft³ (common practice). */
const BOTTLES = { usual: [1000, 10_000], possible: [400, 20_000] } as const;
/** Gas of the beginner's flow, l/min (two makers' tables to 3.2 mm of wall [found]). */
export const FLOW_l_min = { least: 10, likely: 12 } as const;

/** When each part is looked over, and what has to be settled before. */
const WHEN: Readonly<Record<Part, { turn: number; needs: (s: Situation) => readonly string[] }>> = {
  rails: { turn: TURN.testWeld + 25, needs: () => ['weld/machine'] },
  sides: {
    turn: TURN.fit + 60,
    needs: s => ['weld/machine', ...s.ramp.rails.map(rail => `weld/cold-survey@${rail}`)],
  },
  frame: {
    turn: TURN.assemble - 5,
    needs: s => ['weld/machine', ...s.ramp.rails.map(rail => `brace/survey@${rail}`)],
  },
};

const suppliesAsks = (s: Situation, part: Part): readonly Ask[] => {
  const welder = welderOf(s);
  if (welder === null) return [];
  const high = (supply: Supply): number => need(s, part, supply)?.high ?? 0;
  if (welder.process === 'smaw') {
    const most = Math.ceil(high('rods'));
    return [{ ask: 'rods', as: 'count', expected: [most, most + MORE.rods], possible: [0, 5000] }];
  }
  const spool: Ask = {
    ask: 'spool',
    as: 'mass',
    expected: [high('wire'), high('wire') + MORE.wire],
    possible: [0, 25],
  };
  if (welder.process === 'fcaw-s') return [spool];
  if (welder.kind === 2) {
    const least = high('gas') / CO2_l_kg;
    return [spool, { ask: 'co2', as: 'mass', expected: [least, least + 8], possible: [0, 60] }];
  }
  const full = bottleOf(s);
  const wanted = full === null ? 0 : (100 * high('gas')) / full;
  const asked = partsOf(s)[0] === part ? {} : { optional: true as const };
  return [
    spool,
    {
      ask: 'bottle',
      as: 'gas',
      expected: BOTTLES.usual,
      possible: BOTTLES.possible,
      ...(full === null ? {} : asked),
    },
    { ask: 'needle', as: 'percent', expected: [Math.min(90, wanted), 100], possible: [0, 100] },
  ];
};

const wordsOf = (s: Situation): 'supplies-gas' | 'supplies-co2' | 'supplies-wire' | 'supplies-rods' => {
  switch (welderOf(s)?.kind) {
    case 2:
      return 'supplies-co2';
    case 3:
      return 'supplies-wire';
    case 4:
    case 5:
      return 'supplies-rods';
    default:
      return 'supplies-gas';
  }
};

/** CO2 lies liquid in its bottle and is weighed. */
const isWeighed = (s: Situation, supply: Supply): boolean => supply === 'gas' && welderOf(s)?.kind === 2;

/** An amount as it is told: gas as a bottle's label has it, CO2 as its scale, wire to ten grams, rods as whole ones. */
export const amount = (s: Situation, supply: Supply, v: number): Fill => {
  if (isWeighed(s, supply)) return { v: v / CO2_l_kg, as: 'mass', step: 0.01 };
  if (supply === 'gas') return { v, as: 'gas' };
  return supply === 'wire' ? { v, as: 'mass', step: 0.01 } : Math.ceil(v);
};

const needFills = (s: Situation, part: Part): Fills =>
  Object.fromEntries(
    SUPPLIES.flatMap(supply => {
      const use = need(s, part, supply);
      return use === null
        ? []
        : (['low', 'likely', 'high'] as const).map(
            end => [`${supply}-${end}`, amount(s, supply, use[end])] as const,
          );
    }),
  );

/** What is weighed and read before a part: there once the welder is told. */
export const suppliesSteps = (s: Situation): readonly StepDraft[] =>
  welderOf(s) === null
    ? []
    : partsOf(s).map((part): StepDraft => {
        const { slits, joints } = weldsOf(s, part);
        return {
          key: suppliesKey(part),
          stage: 'prep',
          words: wordsOf(s),
          fills: {
            part: { rails: 'the rails', sides: 'the side frames', frame: 'the frame' }[part],
            welds: slits + joints,
            ...needFills(s, part),
          },
          turn: WHEN[part].turn,
          needs: WHEN[part].needs(s),
          uses: SUPPLIES.filter(supply => need(s, part, supply) !== null).map(
            supply => `${supply}-need@${part}`,
          ),
          asks: suppliesAsks(s, part),
          minutes: [5, 10],
        };
      });

/** Needs as bands: wire as its mass, gas as a bottle or its scale has it, rods as their count. */
export const suppliesFigures = (s: Situation): readonly Figure[] =>
  partsOf(s).flatMap(part =>
    SUPPLIES.flatMap((supply): readonly Figure[] => {
      const use = need(s, part, supply);
      if (use === null) return [];
      const weighed = isWeighed(s, supply);
      const as = weighed ? 'mass' : ({ wire: 'mass', gas: 'gas', rods: 'count' } as const)[supply];
      const round = (v: number): number => (supply === 'rods' ? Math.ceil(v) : weighed ? v / CO2_l_kg : v);
      return [
        {
          id: `${supply}-need@${part}`,
          kind: 'size',
          as,
          value: { is: 'band', low: round(use.low), likely: round(use.likely), high: round(use.high) },
          matters: 1,
        },
      ];
    }),
  );
