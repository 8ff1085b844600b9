import type { BarChoice, BarChoices } from './bar-choices.ts';
import type { Fit } from './fit.ts';
import type { Meter } from './meter.ts';

/** A choice of bars to ask about, and how hard. */
export type Question = BarChoice & { effort: number };

/** A step of effort is put off until so many more choices were looked at. */
const CHOICES_BEFORE_EFFORT = 3;

/**
 * Which choice of bars to ask about next: the cheapest first; one that stays open is asked again with more effort, in turn with those
 * that cost more.
 */
export class Agenda {
  readonly #choices: BarChoices;
  readonly #meter: Meter;
  /** In order of cost. */
  #open: Question[] = [];
  #more = true;

  constructor(choices: BarChoices, meter: Meter) {
    this.#choices = choices;
    this.#meter = meter;
  }

  /** The next question, or null when there is none left that costs less than `under`. */
  next(under: number): Question | null {
    this.#open = this.#open.filter(q => q.cost < under);
    for (;;) {
      const ranks = this.#open.map((q, k) => q.effort * CHOICES_BEFORE_EFFORT + k);
      const rank = Math.min(...ranks);
      if (this.#more && this.#open.length < rank) {
        const choice = this.#choices.next(under);
        if (choice !== null) {
          this.#choices.leaveOut(choice.bars);
          return { ...choice, effort: 0 };
        }
        this.#more = false;
      }
      if (this.#open.length > 0) return this.#open[ranks.indexOf(rank)]!;
      if (!this.#choices.cutShort || this.#meter.over()) return null;
      this.#choices.lookLonger();
      this.#more = true;
    }
  }

  /** Takes the answer: a question not answered stays open, to be asked again harder. */
  put(question: Question, fit: Fit['is']): void {
    const had = this.#open.indexOf(question);
    if (fit === 'unknown') {
      question.effort++;
      if (had < 0) this.#open.push(question);
    } else if (had >= 0) this.#open.splice(had, 1);
    if (fit === 'fits') this.#choices.takeBack(question.bars);
  }

  /** No plan costs less than this, with the question at hand not answered yet. */
  lowest(now: Question | null, under: number): number {
    const first = this.#open[0] ?? now;
    if (first !== null) return Math.min(first.atLeast, under);
    return this.sure ? under : 0;
  }

  /** Nothing is open, and nothing was passed over. */
  get sure(): boolean {
    return this.#open.length === 0 && !this.#more && !this.#choices.cutShort;
  }
}
