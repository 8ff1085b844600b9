import { TURN } from '../order.ts';
import type { StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { carriedBalance } from './balance.ts';
import { handsSaid, handsWanted } from './people.ts';

/** A side frame is stood up by two, whatever it weighs. */
const SIDE_HANDS = 2;

/** Asking for the hands of the lifts before the first of them, by how many each takes and how many were said to come. */
export const helpSteps = (s: Situation): readonly StepDraft[] => {
  const turners = handsWanted(s);
  const movers = handsWanted(s, carriedBalance(s).mass_kg);
  const most = Math.max(turners, movers);
  const said = handsSaid(s);
  return [
    {
      key: 'assemble/help',
      stage: 'assemble',
      words: said === null ? 'help' : said >= most ? 'help-enough' : 'help-few',
      fills: {
        sides: SIDE_HANDS,
        turners,
        movers,
        most,
        here: said ?? 1,
        more: Math.max(0, most - (said ?? 1)),
      },
      turn: TURN.assemble - 5,
      needs: s.ramp.rails.map(rail => `brace/survey@${rail}`),
      uses: ['bare-mass', 'carried-mass', 'lift-limit', 'lift-each', 'carry-limit', 'carry-each'],
      minutes: [3, 10],
    },
  ];
};
