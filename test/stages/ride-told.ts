import type { Doing, Entry } from '../../src/build/entries.ts';
import { compute } from '../../src/coach/compute.ts';
import { decide } from '../../src/coach/decide/decide.ts';
import type { Intent } from '../../src/coach/intents.ts';
import { asksOf, withAnswer } from '../../src/coach/tasks.ts';
import { openFindings, type View, viewOf } from '../../src/coach/view.ts';
import type { Finding, Offer } from '../../src/stages/sheet.ts';
import type { Answers } from '../../src/stages/situation.ts';
import { DEG, read } from './doings.ts';
import { entriesOf, NOW } from './situation-for.ts';

type Landing = Readonly<{
  table?: number;
  gap?: number;
  drop_mm: number;
  slope_deg: number;
  length_m?: number;
}>;

export const ridden = (speed_m_s: number): Doing => read('plan/ride', 'entry-speed', speed_m_s);
export const landing = (l: Landing): Doing[] => [
  read('plan/landing', 'landing-table', l.table ?? 0),
  read('plan/landing', 'landing-gap', l.gap ?? 0),
  read('plan/landing', 'landing-down', l.drop_mm / 1000),
  read('plan/landing', 'landing-slope', l.slope_deg * DEG),
  read('plan/landing', 'landing-length', l.length_m ?? 0),
];
export const anchored = (anchors: number, atEntry: number): Doing[] => [
  read('plan/ground', 'anchors', anchors),
  read('plan/ground', 'entry-anchors', atEntry),
];

/** Filled level with the lip for a metre, then 25° down over six: a beginner's landing. */
export const KIND_LANDING = landing({ table: 1, drop_mm: 0, slope_deg: 25, length_m: 6 });

/** A build told by doings, looked at and acted on as the bench does: its heavy questions answered before each look. */
export class Told {
  readonly entries: Entry[];
  #answers: Answers = new Map();

  constructor(system: 'metric' | 'us', ...doings: readonly Doing[]) {
    this.entries = entriesOf([{ kind: 'build-begun', name: 'Quarry Lane kicker', system }, ...doings]);
  }

  async view(): Promise<View> {
    for (let round = 0; round < 4; round++) {
      const asks = asksOf(viewOf(this.entries, NOW, this.#answers));
      if (asks.length === 0) break;
      for (const ask of asks) this.#answers = withAnswer(this.#answers, ask, await compute(ask));
    }
    return viewOf(this.entries, NOW, this.#answers);
  }

  async act(intent: Intent): Promise<void> {
    const decided = decide(await this.view(), intent);
    if (!decided.ok) throw new Error(`${JSON.stringify(intent)}: ${JSON.stringify(decided.refusal)}`);
    this.entries.push({
      ...decided.value,
      id: `act-${this.entries.length}`,
      v: 1,
      n: this.entries.length + 1,
      at: new Date(NOW).toISOString(),
    } as Entry);
  }

  /** Chooses a remedy, and enters the numbers it asks to be entered. */
  async mend(finding: string, remedy: string): Promise<Offer> {
    const view = await this.view();
    const offer = view.findings.find(f => f.key === finding)?.offers.find(o => o.remedy === remedy);
    if (offer === undefined) throw new Error(`${finding} offers no ${remedy}`);
    await this.act({ do: 'choose', finding, remedy });
    const asked = (offer.plan.readings ?? []) as readonly { step: string; ask: string; value: number }[];
    for (const { step, ask, value } of asked) {
      const unit = { 'entry-speed': ' m/s', 'landing-slope': ' rad' }[ask] ?? '';
      const metres = ['landing-table', 'landing-gap', 'landing-down', 'landing-length'].includes(ask)
        ? ' m'
        : unit;
      await this.act({ do: 'read', step, ask, value: `${value}${metres}` });
    }
    return offer;
  }
}

/** Findings of strength and ride that are open, the plan's other advice left out. */
export const rideFindingsOf = (view: View): readonly Finding[] =>
  openFindings(view).filter(f => /^(ride-|accepted-|strength-)/.test(f.key));
export const keysOf = (view: View): readonly string[] => rideFindingsOf(view).map(f => f.key);
