import { pauseParts } from '../../src/build/read-again.ts';
import { openSurvey } from '../../src/build/surveys.ts';
import type { Intent } from '../../src/coach/intents.ts';
import type { View } from '../../src/coach/view.ts';
import { isDecided, itemSettled, type Step } from '../../src/coach/walk.ts';
import { innerUnit } from '../../src/quantity/usual.ts';
import type { Ask, Finding } from '../../src/stages/sheet.ts';

/** A steady person at the bench: what they read, and what they choose. Inner units; null means the usual. */
export type Hand = Readonly<{
  read?: (view: View, step: Step, ask: Ask) => number | null;
  /** Offset at a station of a survey, mm. */
  offset?: (view: View, step: Step, station_mm: number, index: number) => number;
  /** The remedy chosen for a finding. */
  choose?: (view: View, finding: Finding) => string;
  /** Real length of a piece asked at a length, mm. */
  piece?: (need: string, asked_mm: number) => number;
}>;

const middle = ([low, high]: readonly [number, number]): number => (low + high) / 2;

/** Inner units whose code is not how a person writes them. */
const SPELLED: Readonly<Record<string, string>> = {
  m_s: 'm/s',
  C: '°C',
  Nmm: 'N mm',
  mm_s: 'mm/s',
  m_min: 'm/min',
  l_min: 'l/min',
};

/** A number as a script gives it: with its inner unit, so that no build's habit changes it. */
const said = (value: number, ask: Pick<Ask, 'as'>): string => {
  if (ask.as === 'count') return String(Math.round(value));
  const number = String(Math.round(value * 1e6) / 1e6);
  if (ask.as === 'ratio' || ask.as === 'percent') return number;
  return `${number} ${SPELLED[innerUnit(ask.as)] ?? innerUnit(ask.as)}`;
};

const reading = (view: View, step: Step, ask: Ask, hand: Hand): string => {
  const given = hand.read?.(view, step, ask) ?? null;
  if (given !== null) return said(given, ask);
  if (ask.expected !== undefined) return said(middle(ask.expected), ask);
  if (ask.possible !== undefined) return said(middle(ask.possible), ask);
  return said(1, ask);
};

/** The finding that keeps a step shut, or that its answers brought about, if one does. */
const blocking = (view: View, step: Step): Finding | undefined =>
  view.findings.find(
    f =>
      (f.blocks?.includes(step.key) === true || f.raisedBy?.includes(step.key) === true) &&
      !isDecided(view.build, f),
  );

/** What this hand does next; null when nothing is left to do. */
export const nextIntent = (view: View, hand: Hand): Intent | null => {
  const open = openSurvey(view.build);
  // A survey laid aside over a long pause: what was read of it is looked at first.
  if (open !== null && pauseParts(view.next?.key ?? '') === null) {
    const at = open.readings.indexOf(null);
    if (at < 0) return { do: 'close-survey' };
    const step = view.steps.find(
      s => s.survey?.rail === open.rail && s.survey.phase === open.phase && s.survey.kind === open.kind,
    );
    const values = open.stations_mm.map((s, i) =>
      said(step === undefined ? 0 : (hand.offset?.(view, step, s, i) ?? 0), { as: 'length' }),
    );
    return { do: 'offsets', values };
  }
  const step = view.next;
  if (step === null) return null;
  const caution = (step.cautions ?? []).find(c => !view.build.cautions.has(c));
  if (caution !== undefined) return { do: 'caution', caution };
  if (step.state === 'stop') {
    const finding = blocking(view, step);
    if (finding !== undefined) {
      return {
        do: 'choose',
        finding: finding.key,
        remedy: hand.choose?.(view, finding) ?? finding.offers[0]?.remedy ?? 'leave',
      };
    }
    const gate = (step.gates ?? []).find(g => step.shut.includes(g.id));
    if (gate !== undefined && gate.measure !== undefined) {
      const measured = view.steps.find(s => s.key === gate.measure);
      const known = measured?.asks?.filter(a => hand.read?.(view, measured, a) != null) ?? [];
      // A gate that opens once all is read anew wants what nobody gave a number for as well.
      const every = measured?.asks?.filter(a => a.optional !== true) ?? [];
      const asks = gate.soon === true ? every : known.length > 0 ? known : (measured?.asks ?? []);
      // The one read longest ago first: a gate that wants several fresh numbers opens with the last of them.
      const readAt = (a: Ask): string => view.build.readings.get(`${gate.measure}#${a.ask}`)?.at ?? '';
      const ask = [...asks].sort((a, b) => readAt(a).localeCompare(readAt(b)))[0];
      if (measured !== undefined && ask !== undefined) {
        return { do: 'read', step: measured.key, ask: ask.ask, value: reading(view, measured, ask, hand) };
      }
    }
    if (gate !== undefined)
      return { do: 'override', step: step.key, gate: gate.id, why: 'looked at, and it holds here' };
  }
  if (step.state === 'stale') return { do: 'tick', step: step.key };
  if (step.survey !== undefined) return { do: 'open-survey', step: step.key };
  const item = (step.items ?? []).find(i => !itemSettled(view.build, i));
  if (item !== undefined) {
    if (item.piece === undefined) return { do: 'tick', step: item.key };
    const asked = item.piece.long_mm;
    return {
      do: 'cut-piece',
      need: item.piece.need,
      length: said(hand.piece?.(item.piece.need, asked) ?? Math.round(asked * 2) / 2, { as: 'length' }),
    };
  }
  const ask = (step.asks ?? []).find(
    a => a.optional !== true && !view.build.readings.has(`${step.key}#${a.ask}`),
  );
  if (ask !== undefined)
    return { do: 'read', step: step.key, ask: ask.ask, value: reading(view, step, ask, hand) };
  if (step.piece !== undefined) {
    const asked = step.piece.long_mm;
    return {
      do: 'cut-piece',
      need: step.piece.need,
      length: said(hand.piece?.(step.piece.need, asked) ?? Math.round(asked * 2) / 2, { as: 'length' }),
    };
  }
  return { do: 'tick', step: step.key };
};
