import { metricDemo, read } from '../demo/builds.ts';
import { Teller } from '../demo/tell.ts';
import { nextIntent } from '../walk/hand.ts';

type Print = (name: string, ...cells: readonly (string | number)[]) => void;

/** Keys an act takes at the bench, on the page of the next step: a number's own signs, Enter before and after. */
const keysOf = (intent: { do: string } & Record<string, unknown>): number => {
  const signs = (v: unknown): number => String(v).replace(/ .*$/, '').length;
  switch (intent.do) {
    case 'caution':
      return 2;
    case 'read':
      return 2 + signs(intent.value);
    case 'cut-piece':
      return 2 + signs(intent.length);
    case 'open-survey':
      return 2;
    case 'offsets':
      return (intent.values as unknown[]).reduce<number>((n, v) => n + 1 + signs(v), 0);
    case 'override':
      return 2 + String(intent.why).length;
    case 'choose':
      return 2;
    default:
      return 1;
  }
};

/** Key presses and gates of the whole demo build, from the first question to the last tick. */
export const keysOfTheDemo = async (print: Print): Promise<void> => {
  const told = await metricDemo();
  const whole = new Teller(41, '2026-09-14T16:30:00Z');
  whole.begin({ kind: 'build-begun', name: 'Orchard Bank kicker', system: 'metric', invented: true });
  for (const e of told.entries.slice(1)) {
    if (e.kind === 'design-set') whole.begin({ kind: e.kind, field: e.field, value: e.value });
    if (e.kind === 'design-agreed') whole.begin({ kind: e.kind });
  }
  const acts: Record<string, number> = {};
  let keys = 0;
  let count = 0;
  for (; count < 900; count++) {
    const intent = nextIntent(await whole.view(), { read });
    if (intent === null) break;
    keys += keysOf(intent);
    acts[intent.do] = (acts[intent.do] ?? 0) + 1;
    await whole.act(intent);
  }
  print('the whole demo build', 'acts', 'keys', 'gates passed', 'numbers read');
  print('', count, keys, acts.override ?? 0, (acts.read ?? 0) + (acts['cut-piece'] ?? 0));
};
