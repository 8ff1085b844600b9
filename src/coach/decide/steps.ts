import type { Doing } from '../../build/entries.ts';
import { readingKey } from '../../build/fold.ts';
import { deckWanted } from '../../ramp/cutting/deck-wanted.ts';
import type { Figure, FigureId, Item, PieceAsk } from '../../stages/sheet.ts';
import type { View } from '../view.ts';
import { itemSettled, type Step } from '../walk.ts';
import { amountWithin } from './amount.ts';
import { type Decided, no } from './refusal.ts';

const figuresOf = (view: View): ReadonlyMap<FigureId, Figure> =>
  new Map(view.sheets.flatMap(s => s.figures.map(f => [f.id, f] as const)));

/** The exact values of the figures a step is done with. */
export const basisFor = (view: View, step: Step): Record<string, number> => {
  const figures = figuresOf(view);
  const basis: Record<string, number> = {};
  for (const id of step.uses) {
    const value = figures.get(id)?.value;
    if (value?.is === 'exact') basis[id] = value.v;
  }
  return basis;
};

/** The step of that key, or the step that has an item of that key. */
export const findStep = (view: View, key: string): { step: Step; item: boolean } | null => {
  const step = view.steps.find(s => s.key === key);
  if (step !== undefined) return { step, item: false };
  const parent = view.steps.find(s => (s.items ?? []).some(i => i.key === key));
  return parent === undefined ? null : { step: parent, item: true };
};

/** Why nothing can be done in a step yet: what it waits for, a gate, or a caution not read. */
const barred = (view: View, step: Step): Decided<null> => {
  if (step.state === 'waiting') return no('waits', { step: step.key, for: step.waitsFor[0] ?? '' });
  if (step.shut.length > 0) return no('gate-shut', { gate: step.shut[0] ?? '' });
  const finding = view.findings.find(f => f.blocks?.includes(step.key) === true);
  if (step.state === 'stop' && finding !== undefined) return no('finding-first', { finding: finding.key });
  const caution = (step.cautions ?? []).find(c => !view.build.cautions.has(c));
  if (caution !== undefined) return no('caution-first', { caution });
  return { ok: true, value: null };
};

export const tickEntry = (view: View, key: string): Decided<Doing> => {
  const found = findStep(view, key);
  if (found === null) return no('no-such-step', { step: key });
  const { step, item } = found;
  const bar = barred(view, step);
  if (!bar.ok) return bar;
  if (item) {
    const thing = (step.items ?? []).find(i => i.key === key) as Item;
    if (itemSettled(view.build, thing)) return no('already-done', { step: key });
    // Ticking a piece says: cut, and as long as asked.
    if (thing.piece !== undefined) return { ok: true, value: cutAsAsked(thing.piece) };
    return { ok: true, value: { kind: 'step-ticked', step: key, basis: basisFor(view, step) } };
  }
  if (step.state === 'done') return no('already-done', { step: key });
  if (step.marks !== undefined) return marksEntry(view, step);
  if (step.state !== 'stale') {
    if (step.survey !== undefined) return no('needs-survey', { step: key });
    if (step.piece !== undefined) return no('needs-length', { step: key });
    const ask = (step.asks ?? []).find(
      a => a.optional !== true && !view.build.readings.has(readingKey(key, a.ask)),
    );
    if (ask !== undefined) return no('needs-reading', { step: key, ask: ask.ask });
    if ((step.items ?? []).length > step.itemsDone) return no('items-first', { step: key });
  }
  return { ok: true, value: { kind: 'step-ticked', step: key, basis: basisFor(view, step) } };
};

const cutAsAsked = (piece: PieceAsk): Doing => ({
  kind: 'piece-cut',
  need: piece.need,
  section: piece.section,
  asked_mm: piece.long_mm,
  length_mm: piece.long_mm,
  typed: 'as asked',
  ends_rad: [...piece.ends_rad],
});

/** Marking a third freezes where its slits stand and how far each closes. */
const marksEntry = (view: View, step: Step): Decided<Doing> => {
  const plan = view.ramp.plans.get(step.marks?.rail ?? '');
  const slits = (plan?.slits ?? []).filter(s => s.third === step.marks?.third && s.marked === null);
  const first = slits[0];
  if (plan === undefined || first === undefined) return no('already-done', { step: step.key });
  return {
    ok: true,
    value: {
      kind: 'slits-marked',
      rail: plan.rail,
      third: first.third,
      first: first.number,
      marks_mm: slits.map(s => s.at_mm),
      close_rad: first.close_rad,
      gap_mm: first.gap_mm,
      kerf_mm: plan.kerf_mm,
    },
  };
};

export const skipEntry = (view: View, key: string, why: string): Decided<Doing> => {
  const found = findStep(view, key);
  if (found === null) return no('no-such-step', { step: key });
  if (why.trim() === '') return no('needs-why');
  if ((found.step.gates ?? []).some(g => g.shut && g.never === true))
    return no('gate-shut', { gate: found.step.shut[0] ?? '' });
  return { ok: true, value: { kind: 'step-skipped', step: key, why: why.trim() } };
};

export const overrideEntry = (view: View, key: string, gate: string, why: string): Decided<Doing> => {
  const found = findStep(view, key);
  if (found === null) return no('no-such-step', { step: key });
  const shut = (found.step.gates ?? []).find(g => g.id === gate);
  if (shut === undefined || !shut.shut) return no('gate-open', { gate });
  if (shut.never === true) return no('gate-never', { gate });
  if (why.trim() === '') return no('needs-why');
  return { ok: true, value: { kind: 'gate-overridden', step: key, gate, why: why.trim() } };
};

export const readEntry = (view: View, key: string, askName: string, raw: unknown): Decided<Doing> => {
  const found = findStep(view, key);
  if (found === null) return no('no-such-step', { step: key });
  const { step } = found;
  const ask = (step.asks ?? []).find(a => a.ask === askName);
  if (ask === undefined) {
    return no('no-such-ask', { step: key, asks: (step.asks ?? []).map(a => a.ask).join(', ') || 'none' });
  }
  // A gate that this very reading would open must not keep it out.
  const opens = (step.gates ?? []).every(g => !g.shut || g.measure === key);
  if (step.state === 'waiting' || (step.shut.length > 0 && !opens)) {
    const bar = barred(view, step);
    if (!bar.ok) return bar;
  }
  const got = amountWithin(raw, ask.as, view.build.system, ask.possible, askName);
  if (!got.ok) return got;
  const before = view.build.readings.get(readingKey(key, askName));
  return {
    ok: true,
    value: {
      kind: 'reading-logged',
      step: key,
      ask: askName,
      value: got.value.value,
      typed: got.value.typed,
      basis: basisFor(view, step),
      ...(before === undefined ? {} : { replaces: [before.entry] }),
    },
  };
};

/** A board or a strip of the deck: no step of its own asks for it, and none has to wait for it. */
const deckPiece = (view: View, need: string): PieceAsk | undefined => {
  for (const { section, pieces } of deckWanted(view.ramp))
    for (const p of pieces)
      if (p.need === need) return { need, section: section.name, long_mm: p.long_mm, ends_rad: [0, 0] };
  return undefined;
};

export const pieceEntry = (view: View, need: string, raw: unknown): Decided<Doing> => {
  const step = view.steps.find(
    s => s.piece?.need === need || (s.items ?? []).some(i => i.piece?.need === need),
  );
  const piece = step?.piece ?? step?.items?.find(i => i.piece?.need === need)?.piece ?? deckPiece(view, need);
  if (piece === undefined) return no('no-such-piece', { need });
  if (step !== undefined && (step.state === 'waiting' || step.shut.length > 0)) {
    const bar = barred(view, step);
    if (!bar.ok) return bar;
  }
  const got = amountWithin(raw, 'length', view.build.system, [1, 20_000], need);
  if (!got.ok) return got;
  return {
    ok: true,
    value: {
      kind: 'piece-cut',
      need,
      section: piece.section,
      asked_mm: piece.long_mm,
      length_mm: got.value.value,
      typed: got.value.typed,
      ends_rad: [...piece.ends_rad],
    },
  };
};
