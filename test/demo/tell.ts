import type { Doing, Entry } from '../../src/build/entries.ts';
import { nextN } from '../../src/build/order.ts';
import { compute } from '../../src/coach/compute.ts';
import { decide } from '../../src/coach/decide/decide.ts';
import type { Intent } from '../../src/coach/intents.ts';
import { asksOf, withAnswer } from '../../src/coach/tasks.ts';
import { type View, viewOf } from '../../src/coach/view.ts';
import type { Answers } from '../../src/stages/situation.ts';

/** Ids that are the same in every making: a counter spread over the form of a UUID. */
const idOf = (seed: number, n: number): string => {
  let h = (seed * 2654435761 + n * 40503) >>> 0;
  const hex = (): string => {
    h = (Math.imul(h ^ (h >>> 15), 2246822519) + 0x9e3779b9) >>> 0;
    return h.toString(16).padStart(8, '0');
  };
  const all = hex() + hex() + hex() + hex();
  return `${all.slice(0, 8)}-${all.slice(8, 12)}-4${all.slice(13, 16)}-8${all.slice(17, 20)}-${all.slice(20, 32)}`;
};

/**
 * Tells a build by its acts, each through `decide`, with a clock of its own: three minutes an act, evenings of three hours,
 * the next one two days later.
 */
export class Teller {
  readonly entries: Entry[] = [];
  private answers: Answers = new Map();
  private at: number;
  private evening: number;
  private readonly seed: number;

  constructor(seed: number, begin: string) {
    this.seed = seed;
    this.at = Date.parse(begin);
    this.evening = this.at;
  }

  private stamp(doing: Doing): Entry {
    this.at += 180_000;
    if (this.at - this.evening > 3 * 3_600_000) {
      this.evening += 2 * 86_400_000;
      this.at = this.evening;
    }
    return {
      id: idOf(this.seed, this.entries.length + 1),
      n: nextN(this.entries),
      v: 1,
      at: new Date(this.at).toISOString(),
      ...doing,
    } as Entry;
  }

  begin(doing: Doing): void {
    this.entries.push(this.stamp(doing));
  }

  /** Time goes by with nothing done. */
  wait(seconds: number): void {
    this.at += seconds * 1000;
    this.evening = this.at;
  }

  /** The build now, its heavy questions answered. */
  async view(): Promise<View> {
    for (let round = 0; round < 4; round++) {
      const view = viewOf(this.entries, this.at, this.answers);
      const asks = asksOf(view);
      if (asks.length === 0) return view;
      for (const ask of asks) this.answers = withAnswer(this.answers, ask, await compute(ask));
    }
    return viewOf(this.entries, this.at, this.answers);
  }

  async act(intent: Intent): Promise<void> {
    const decided = decide(await this.view(), intent);
    if (!decided.ok) throw new Error(`${JSON.stringify(intent)}: ${JSON.stringify(decided.refusal)}`);
    this.entries.push(this.stamp(decided.value));
  }
}
