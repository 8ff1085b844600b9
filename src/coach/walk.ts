import { SURVEY_PHASES } from '../build/entries.ts';
import type { Build, StepKey } from '../build/fold.ts';
import { readingKey } from '../build/fold.ts';
import { pauseParts } from '../build/read-again.ts';
import type { Figure, FigureId, Finding, Item, SheetDraft, StepDraft } from '../stages/sheet.ts';

export type StepState = 'done' | 'stale' | 'skipped' | 'to do' | 'waiting' | 'stop';

/** A figure that changed since a step was done with it. `now` is missing when the figure is no longer asked. */
export type Change = Readonly<{ id: FigureId; was: number; now: number | undefined; figure?: Figure }>;

export type Step = Readonly<
  StepDraft & {
    state: StepState;
    changes: readonly Change[];
    /** Steps that keep it waiting. */
    waitsFor: readonly StepKey[];
    /** Gates that are shut and were not passed with a reason. */
    shut: readonly string[];
    itemsDone: number;
    at?: string;
    why?: string;
  }
>;

/** A tick's figures that changed by more than matters at the bench. */
export const changesSince = (
  basis: Readonly<Record<string, number>>,
  figures: ReadonlyMap<FigureId, Figure>,
): readonly Change[] =>
  Object.entries(basis).flatMap(([id, was]): Change[] => {
    const figure = figures.get(id);
    if (figure === undefined) return [{ id, was, now: undefined }];
    return figure.value.is === 'exact' && Math.abs(figure.value.v - was) > figure.matters
      ? [{ id, was, now: figure.value.v, figure }]
      : [];
  });

const asksRead = (b: Build, step: StepDraft): boolean =>
  (step.asks ?? []).every(a => a.optional === true || b.readings.has(readingKey(step.key, a.ask)));

/** The basis a step was done with: its tick's, or the oldest of its readings' (each froze what it stood on). */
const basisOf = (b: Build, step: StepDraft): Readonly<Record<string, number>> | null => {
  const tick = b.ticks.get(step.key);
  if (tick !== undefined) return tick.basis;
  const asks = step.asks ?? [];
  if (asks.length === 0 || !asksRead(b, step)) return null;
  return Object.assign({}, ...asks.map(a => b.readings.get(readingKey(step.key, a.ask))?.basis ?? {}));
};

/** Remedies that begin a rail again: nothing read of the old one stands for the new one. */
const NEW_RAIL = new Set(['start-again', 'slits-new-rail', 'nick-new-rail']);

/**
 * Whether the survey a step asks is there. One that a later re-cut retired still stands for its step once a later phase was
 * read: a rail re-cut when cold is not to be read as tacked again.
 */
const surveyDone = (b: Build, step: StepDraft): boolean => {
  const ask = step.survey;
  if (ask === undefined) return false;
  const mine = b.surveys.filter(s => s.closed && s.rail === ask.rail && s.kind === ask.kind);
  return mine.some(s => {
    if (s.phase !== ask.phase || s.n <= (ask.after ?? Number.NEGATIVE_INFINITY)) return false;
    if (!s.retired) return true;
    const later = mine.some(
      t => t.n > s.n && SURVEY_PHASES.indexOf(t.phase) > SURVEY_PHASES.indexOf(s.phase),
    );
    const anew = b.chosen.some(c => c.n > s.n && c.plan.rail === ask.rail && NEW_RAIL.has(c.remedy));
    return later && !anew;
  });
};

/** Needs that a piece serves, kept with the build: every item of every step asks. */
const served = new WeakMap<Build, ReadonlySet<string>>();

const pieceCut = (b: Build, need: string): boolean => {
  let needs = served.get(b);
  if (needs === undefined) {
    needs = new Set(b.pieces.filter(p => p.fate !== 'spoiled').map(p => p.serves));
    served.set(b, needs);
  }
  return needs.has(need);
};

/** An item is settled by its tick, a reason, or the piece that was cut for it. */
export const itemSettled = (b: Build, item: Item): boolean =>
  item.piece === undefined
    ? b.ticks.has(item.key) || b.skips.has(item.key)
    : pieceCut(b, item.piece.need) || b.skips.has(item.key);

const settledItems = (b: Build, step: StepDraft): number =>
  (step.items ?? []).filter(i => itemSettled(b, i)).length;

/** Whether a step's own act is done (whatever changed since). */
const isDone = (b: Build, step: StepDraft): boolean => {
  if (step.survey !== undefined) return surveyDone(b, step);
  if (step.piece !== undefined) return pieceCut(b, step.piece.need);
  if (step.marks !== undefined)
    return b.marks.some(m => m.rail === step.marks?.rail && m.third === step.marks?.third);
  if (step.items !== undefined && step.items.length > 0) {
    return settledItems(b, step) === step.items.length && asksRead(b, step);
  }
  if ((step.asks ?? []).length > 0) return asksRead(b, step);
  return b.ticks.has(step.key);
};

/** Done, or left with a reason. */
export const isSettled = (b: Build, step: StepDraft): boolean => isDone(b, step) || b.skips.has(step.key);

/** A finding is settled while the last thing chosen about it was no smaller than what it says now. */
export const isDecided = (b: Build, f: Finding): boolean => {
  const last = b.chosen.filter(c => c.finding === f.key).at(-1);
  if (last === undefined) return false;
  return f.worst_mm === undefined || last.worst_mm === undefined || f.worst_mm <= last.worst_mm + 0.5;
};

/** The states of all steps of a build, in walk order; needs are looked up across stages. */
export const walk = (b: Build, sheets: readonly SheetDraft[]): readonly Step[] => {
  let byId: ReadonlyMap<FigureId, Figure> | null = null;
  const figures = (): ReadonlyMap<FigureId, Figure> => {
    byId ??= new Map(sheets.flatMap(s => s.figures.map(f => [f.id, f] as const)));
    return byId;
  };
  const drafts = sheets.flatMap(s => s.steps);
  const settled = new Map(drafts.map(d => [d.key, isSettled(b, d)] as const));
  const blocked = new Map<StepKey, boolean>();
  const raised = new Set<StepKey>();
  for (const f of sheets.flatMap(s => s.findings)) {
    if (isDecided(b, f)) continue;
    for (const k of f.blocks ?? []) blocked.set(k, true);
    if (f.severity === 'stop') for (const k of f.raisedBy ?? []) raised.add(k);
  }

  return drafts
    .map((draft): Step => {
      const waitsFor = draft.needs.filter(k => settled.get(k) === false);
      const shut = (draft.gates ?? [])
        .filter(g => g.shut && (g.never === true || !b.overrides.has(`${draft.key} ${g.id}`)))
        .map(g => g.id);
      const done = settled.get(draft.key) === true;
      const skip = b.skips.get(draft.key);
      const basis = basisOf(b, draft);
      const changes = done && skip === undefined && basis !== null ? changesSince(basis, figures()) : [];
      const itemsDone = settledItems(b, draft);
      // One copy of a draft a step: this runs for every step at every entry.
      if (skip !== undefined)
        return { ...draft, changes, waitsFor, shut, itemsDone, state: 'skipped', at: skip.at, why: skip.why };
      if (done) {
        const at = b.ticks.get(draft.key)?.at;
        // An answer that a stop stands on is not a thing done: it is to be looked at again.
        const state = raised.has(draft.key) ? 'stop' : changes.length > 0 ? 'stale' : 'done';
        return at === undefined
          ? { ...draft, changes, waitsFor, shut, itemsDone, state }
          : { ...draft, changes, waitsFor, shut, itemsDone, state, at };
      }
      const stopped = shut.length > 0 || blocked.get(draft.key) === true;
      const state = waitsFor.length > 0 ? 'waiting' : stopped ? 'stop' : 'to do';
      return { ...draft, changes, waitsFor, shut, itemsDone, state };
    })
    .sort((x, y) => x.turn - y.turn);
};

/** Shut by nothing but what a look at the bench opens: as good as open. */
const opensSoon = (s: Step): boolean =>
  s.state === 'stop' && (s.gates ?? []).some(g => g.soon === true && s.shut.includes(g.id));

const isOpen = (s: Step): boolean => s.state === 'to do' || opensSoon(s);

/** What a chosen remedy brought, and what that waits for. */
const ofRemedy = (steps: readonly Step[]): ReadonlySet<StepKey> =>
  new Set(steps.filter(s => s.led === true).flatMap(s => [s.key, ...s.waitsFor]));

/**
 * The step to do next: the first open one, but what a chosen remedy brought before all else; a shut gate is next only when nothing
 * else is open, but for one that opens soon. Stale ones ask for a look first within their stage.
 */
export const nextStep = (steps: readonly Step[]): Step | null => {
  const first = ofRemedy(steps);
  return (
    steps.find(s => first.has(s.key) && isOpen(s)) ??
    steps.find(isOpen) ??
    steps.find(s => s.state === 'stop') ??
    steps.find(s => s.state === 'stale') ??
    null
  );
};

/** Ticks whose step no page offers any more: kept and listed as "done, no longer asked". Those of a pause that is over go without saying. */
export const noLongerAsked = (b: Build, sheets: readonly SheetDraft[]): readonly StepKey[] => {
  const asked = new Set(
    sheets.flatMap(s => s.steps.flatMap(d => [d.key, ...(d.items ?? []).map(i => i.key)])),
  );
  return [...b.ticks.keys()].filter(k => !asked.has(k) && pauseParts(k) === null);
};
