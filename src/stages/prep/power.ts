import { TURN } from '../order.ts';
import type { StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { LONGEST_LEAD_m, leadOf } from './lead.ts';

/** The lead measured where the plan never asked, and the circuit the welder hangs on. */
export const powerSteps = (s: Situation): readonly StepDraft[] => {
  const lead = leadOf(s);
  const far = lead.m !== null && lead.m > LONGEST_LEAD_m.thick;
  const fills = {
    thin: { v: LONGEST_LEAD_m.thin, as: 'distance' },
    thick: { v: LONGEST_LEAD_m.thick, as: 'distance' },
  } as const;
  const ask: StepDraft[] = lead.askHere
    ? [
        {
          key: 'prep/lead',
          stage: 'prep',
          words: 'lead',
          fills,
          turn: TURN.place + 5,
          needs: [],
          uses: [],
          asks: [
            { ask: 'lead', as: 'distance', expected: [0, 2 * LONGEST_LEAD_m.thick], possible: [0, 200] },
          ],
          minutes: [2, 5],
        },
      ]
    : [];
  return [
    ...ask,
    {
      key: 'prep/power',
      stage: 'prep',
      words: far ? 'power-far' : lead.m !== null && lead.m > LONGEST_LEAD_m.thin ? 'power-thick' : 'power',
      fills,
      turn: TURN.place + 10,
      needs: ['prep/lead'],
      uses: ['lead'],
      ...(lead.m === null ? {} : { tall: ['lead'] }),
      gates: far
        ? [
            {
              id: 'lead-long',
              shut: true,
              fills: { ...fills, lead: { v: lead.m ?? 0, as: 'distance' } },
              measure: lead.step,
            },
          ]
        : [],
      minutes: [10, 20],
    },
  ];
};
