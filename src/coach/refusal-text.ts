import type { Voice } from '../words/say.ts';
import { say, textAt } from '../words/say.ts';
import type { Refusal } from './decide/refusal.ts';
import type { View } from './view.ts';

/** A refusal in words: what is wrong, and what would do. */
export const refusalText = (
  voice: Voice,
  view: View | null,
  refusal: Refusal,
): { says: string; accepted: string } => {
  if (refusal.fault !== undefined) return { says: refusal.fault.message, accepted: refusal.fault.accepted };
  const fills = { ...refusal.fills };
  // Keys of steps and findings mean nothing to a person: their titles stand in the words.
  if (view !== null) {
    for (const name of ['step', 'for'] as const) {
      const key = fills[name];
      if (typeof key !== 'string') continue;
      const step = view.steps.find(s => s.key === key);
      if (step !== undefined && typeof fills.ask === 'string') {
        const label = `steps.${step.stage}.${step.words}.asks.${fills.ask.split('@')[0]}`;
        if (textAt(voice.content, label) !== undefined)
          fills.ask = say(voice, { words: label, fills: step.fills ?? {} });
      }
      if (step !== undefined)
        fills[name] = say(
          voice,
          { words: `steps.${step.stage}.${step.words}.title`, fills: step.fills ?? {} },
          view.sheets.find(s => s.stage === step.stage)?.figures ?? [],
        );
    }
    const finding = view.findings.find(f => f.key === fills.finding);
    if (finding !== undefined)
      fills.finding = say(voice, { words: `findings.${finding.words}.title`, fills: finding.fills ?? {} });
    for (const name of ['gate', 'caution'] as const) {
      const key = fills[name];
      const gate = view.steps.flatMap(s => s.gates ?? []).find(g => g.id === key);
      const path =
        name === 'gate' ? `gates.${gate?.words ?? String(key)}.stop` : `cautions.${String(key)}.title`;
      if (typeof key === 'string' && textAt(voice.content, path) !== undefined) {
        fills[name] = say(voice, { words: path, fills: gate?.fills ?? {} });
      }
    }
  }
  if (refusal.problem !== undefined) {
    return {
      says: say(voice, { words: `problems.${refusal.problem}.says`, fills }),
      accepted: say(voice, { words: `problems.${refusal.problem}.change`, fills }),
    };
  }
  return {
    says: say(voice, { words: `refusals.${refusal.code}.says`, fills }),
    accepted: say(voice, { words: `refusals.${refusal.code}.accepted`, fills }),
  };
};
