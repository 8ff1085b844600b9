import type { Doing, Entry } from '../../build/entries.ts';
import { plainText } from '../../build/plain-text.ts';
import type { Intent } from '../intents.ts';
import { type View, viewOf } from '../view.ts';
import { amountWithin } from './amount.ts';
import { answerEntry } from './answer.ts';
import { type Decided, no } from './refusal.ts';
import { overrideEntry, pieceEntry, readEntry, skipEntry, tickEntry } from './steps.ts';
import { closeEntry, offsetsEntry, openEntry } from './surveys.ts';

/** One act: one entry, or a refusal that says why and what would do. Never several entries. Pure. */
export const decide = (view: View, intent: Intent): Decided<Doing> => {
  switch (intent.do) {
    case 'answer':
      return decideAnswer(view, intent.field, intent.value);
    case 'agree':
      return view.build.agreed ? no('already-agreed') : agreeable(view);
    case 'tick':
      return tickEntry(view, intent.step);
    case 'skip':
      return skipEntry(view, intent.step, plainText(intent.why));
    case 'override':
      return overrideEntry(view, intent.step, intent.gate, plainText(intent.why));
    case 'read':
      return readEntry(view, intent.step, intent.ask, intent.value);
    case 'open-survey':
      return openEntry(view, intent);
    case 'offsets':
      return offsetsEntry(view, intent);
    case 'close-survey':
      return closeEntry(view, intent.survey);
    case 'cut-piece':
      return pieceEntry(view, intent.need, intent.length);
    case 'piece-fate':
      return fateEntry(view, intent);
    case 'note-slit':
      return slitEntry(view, intent);
    case 'choose':
      return chooseEntry(view, intent.finding, intent.remedy, plainText(intent.typed ?? '').trim());
    case 'caution':
      if (view.build.cautions.has(intent.caution)) return no('already-done', { step: intent.caution });
      // What nobody was shown nobody has read: only a caution of a step on some page.
      return !view.steps.some(s => s.cautions?.includes(intent.caution))
        ? no('no-such-caution', { got: plainText(intent.caution) })
        : { ok: true, value: { kind: 'caution-known', caution: intent.caution } };
    case 'remark': {
      const text = plainText(intent.text).trim();
      if (text === '') return no('empty-note');
      return {
        ok: true,
        value: { kind: 'remarked', text, ...(intent.step === undefined ? {} : { step: intent.step }) },
      };
    }
    case 'stop':
      return {
        ok: true,
        value: { kind: 'stopped', ...(intent.step === undefined ? {} : { step: intent.step }) },
      };
    case 'strike':
      return strikeEntry(view, intent.entry);
    case 'put-back':
      return putBackEntry(view, intent.entry);
  }
};

const agreeable = (view: View): Decided<Doing> => {
  if (view.fault !== null)
    return no(
      'not-read',
      { message: view.fault.message, accepted: view.fault.accepted },
      { fault: view.fault },
    );
  const problem = view.ramp.problems.find(p => p.severity === 'refuse');
  return problem === undefined
    ? { ok: true, value: { kind: 'design-agreed' } }
    : no('design-refused', problem.fills, { problem: problem.code });
};

/** The entry a doing becomes in a preview: placed after everything, never written. */
export const previewEntry = (view: View, doing: Doing): Entry =>
  ({
    ...doing,
    id: 'preview',
    v: 1,
    n: view.build.all.reduce((n, e) => Math.max(n, e.n), 0) + 1,
    at: new Date(view.situation.now).toISOString(),
  }) as Entry;

/** What an act would make of the build: the real thing without the append. */
export const preview = (view: View, intent: Intent): Decided<View> => {
  const decided = decide(view, intent);
  return decided.ok ? { ok: true, value: previewOf(view, decided.value) } : decided;
};

const previewOf = (view: View, doing: Doing): View =>
  viewOf([...view.build.all, previewEntry(view, doing)], view.situation.now, view.situation.answers);

/** A design answer is held against the ramp it would give: one that brings a new reason not to build is refused with the number to change. */
const decideAnswer = (view: View, field: string, raw: unknown): Decided<Doing> => {
  const live = view.build.live.filter(e => e.kind === 'design-set' && e.field === field).at(-1);
  const entry = answerEntry(field, raw, view.build.system, live?.id);
  if (!entry.ok) return entry;
  if (field === 'standard' && view.build.pieces.length > 0) return no('standard-fixed', {}, { field });
  const after = previewOf(view, entry.value);
  if (after.fault !== null) {
    return no(
      'not-read',
      { message: after.fault.message, accepted: after.fault.accepted },
      { fault: after.fault, field },
    );
  }
  const had = new Set(view.ramp.problems.filter(p => p.severity === 'refuse').map(p => p.code));
  const brought = after.ramp.problems.find(p => p.severity === 'refuse' && !had.has(p.code));
  return brought === undefined
    ? entry
    : no('design-refused', brought.fills, { problem: brought.code, field });
};

const fateEntry = (view: View, i: Extract<Intent, { do: 'piece-fate' }>): Decided<Doing> => {
  const piece = view.build.pieces.find(p => p.id === i.piece);
  if (piece === undefined) return no('no-such-piece', { need: i.piece });
  return {
    ok: true,
    value: {
      kind: 'piece-fated',
      piece: piece.id,
      fate: i.fate,
      ...(i.need === undefined ? {} : { need: i.need }),
    },
  };
};

const slitEntry = (view: View, i: Extract<Intent, { do: 'note-slit' }>): Decided<Doing> => {
  const plan = view.ramp.plans.get(i.rail);
  if (plan === undefined) return no('no-such-rail', { rails: view.ramp.rails.join(', ') });
  if (!plan.slits.some(s => s.number === i.slit))
    return no('no-such-slit', { rail: i.rail, count: plan.slits.length });
  if (i.at === undefined)
    return { ok: true, value: { kind: 'slit-noted', rail: i.rail, slit: i.slit, note: i.note } };
  const at = amountWithin(i.at, 'slit', view.build.system, [0, plan.cut_mm], 'at');
  if (!at.ok) return at;
  return {
    ok: true,
    value: { kind: 'slit-noted', rail: i.rail, slit: i.slit, note: i.note, at_mm: at.value.value },
  };
};

const chooseEntry = (view: View, key: string, remedy: string, typed: string): Decided<Doing> => {
  const finding = view.findings.find(f => f.key === key);
  if (finding === undefined) return no('no-such-finding', { finding: key });
  const offer = finding.offers.find(o => o.remedy === remedy);
  if (offer === undefined)
    return no('no-such-remedy', { remedies: finding.offers.map(o => o.remedy).join(', ') });
  if (offer.typed !== undefined && !typed.toLowerCase().includes(offer.typed))
    return no('needs-danger', { danger: offer.typed });
  return {
    ok: true,
    value: {
      kind: 'remedy-chosen',
      finding: key,
      remedy,
      // The numbers of its sentence are frozen with it: the journal says what was chosen, whatever the plan says later.
      plan: {
        ...(offer.fills === undefined ? {} : { fills: offer.fills }),
        ...offer.plan,
        ...(offer.typed === undefined ? {} : { typed }),
      },
      // A remedy that settles which of two entries counts puts itself in the place of the other.
      ...(Array.isArray(offer.plan.replaces) ? { replaces: offer.plan.replaces.map(String) } : {}),
      ...(offer.after === undefined ? {} : { predicted_mm: offer.after.v }),
      ...(finding.worst_mm === undefined ? {} : { worst_mm: finding.worst_mm }),
    },
  };
};

/** The newest entry that can be taken back: not the build's beginning, and no note of having left. */
export const newestStrikeable = (view: View): Entry | null =>
  view.build.live.filter(e => e.kind !== 'build-begun' && e.kind !== 'stopped').at(-1) ?? null;

const strikeEntry = (view: View, id: string | undefined): Decided<Doing> => {
  const target = id === undefined ? newestStrikeable(view) : view.build.all.find(e => e.id === id);
  if (target === undefined) return no('no-such-entry', { entry: plainText(id ?? '') });
  if (target === null) return no('nothing-to-strike');
  if (target.kind === 'build-begun') return no('beginning-stays');
  if (view.build.struck.has(target.id)) return no('already-struck');
  return { ok: true, value: { kind: 'entry-struck', target: target.id } };
};

const putBackEntry = (view: View, id: string): Decided<Doing> => {
  const strike = view.build.all.findLast(
    e => e.kind === 'entry-struck' && e.target === id && !view.build.struck.has(e.id),
  );
  return strike === undefined
    ? no('not-struck')
    : { ok: true, value: { kind: 'entry-struck', target: strike.id } };
};
