import type { Doing } from '../../build/entries.ts';
import type { Survey } from '../../build/fold.ts';
import { pauseParts } from '../../build/read-again.ts';
import { openSurvey } from '../../build/surveys.ts';
import type { Intent } from '../intents.ts';
import type { View } from '../view.ts';
import { amount, amountWithin } from './amount.ts';
import { type Decided, no } from './refusal.ts';

type Of<K extends Intent['do']> = Extract<Intent, { do: K }>;

/** Farther than this from its line nothing can be a rail's offset, mm. */
const FARTHEST = 1000;

export const openEntry = (view: View, i: Of<'open-survey'>): Decided<Doing> => {
  const open = openSurvey(view.build);
  if (open !== null) return no('survey-open', { rail: open.rail });
  const step = i.step === undefined ? undefined : view.steps.find(s => s.key === i.step);
  if (i.step !== undefined && step?.survey === undefined) return no('no-such-step', { step: i.step });
  if (step?.state === 'waiting') return no('waits', { step: step.key, for: step.waitsFor[0] ?? '' });
  const rail = i.rail ?? step?.survey?.rail;
  const phase = i.phase ?? step?.survey?.phase;
  if (rail === undefined || !view.ramp.plans.has(rail))
    return no('no-such-rail', { rails: view.ramp.rails.join(', ') });
  if (phase === undefined) return no('no-phase');
  const stations_mm: number[] = [...(step?.survey?.stations_mm ?? [])];
  if (i.stations !== undefined) {
    stations_mm.length = 0;
    for (const raw of i.stations) {
      const got = amountWithin(raw, 'length', view.build.system, [0, 20_000], 'stations');
      if (!got.ok) return got;
      stations_mm.push(got.value.value);
    }
  }
  if (stations_mm.length === 0) {
    const plan = view.ramp.plans.get(rail);
    const length = (plan?.finished.radius_mm ?? 0) * (plan?.turn_rad ?? 0) + (plan?.straight_mm ?? 0);
    stations_mm.push(...Array.from({ length: 13 }, (_, k) => (length * k) / 12));
  }
  if (stations_mm.some((s, k) => k > 0 && s <= (stations_mm[k - 1] ?? 0))) return no('stations-order');
  const readTo =
    i.read_to === undefined
      ? null
      : amountWithin(i.read_to, 'thickness', view.build.system, [0.05, 10], 'read_to');
  if (readTo !== null && !readTo.ok) return readTo;
  return {
    ok: true,
    value: {
      kind: 'survey-opened',
      kind_of: i.kind ?? step?.survey?.kind ?? 'curve',
      rail,
      phase,
      edge: i.edge ?? 'rail bottom face',
      to:
        i.to ??
        (step?.survey?.to === 'tack line' ? 'tack line' : phase === 'tacked' ? 'tack line' : 'finished line'),
      stations_mm,
      read_to_mm: readTo?.value.value ?? (view.build.system === 'us' ? 25.4 / 32 : 0.5),
    },
  };
};

const surveyFor = (view: View, id: string | undefined): Decided<Survey> => {
  const survey = id === undefined ? openSurvey(view.build) : view.build.surveys.find(s => s.id === id);
  return survey === undefined || survey === null ? no('no-open-survey') : { ok: true, value: survey };
};

/** A survey laid aside over a long pause goes on only after what was read of it was looked at again. */
const pauseFirst = (view: View, survey: Survey): Decided<never> | null => {
  const step = view.steps.find(
    s => s.survey?.rail === survey.rail && s.survey.phase === survey.phase && s.survey.kind === survey.kind,
  );
  const wanted = step?.state === 'waiting' ? step.waitsFor.find(k => pauseParts(k) !== null) : undefined;
  return step === undefined || wanted === undefined ? null : no('waits', { step: step.key, for: wanted });
};

export const offsetsEntry = (view: View, i: Of<'offsets'>): Decided<Doing> => {
  const survey = surveyFor(view, i.survey);
  if (!survey.ok) return survey;
  if (survey.value.closed) return no('survey-closed', { rail: survey.value.rail });
  const first = pauseFirst(view, survey.value);
  if (first !== null) return first;
  const from = i.from ?? 1;
  const count = survey.value.stations_mm.length;
  if (i.values.length === 0) return no('no-number');
  if (from < 1 || from + i.values.length - 1 > count)
    return no('too-many-stations', { count, got: i.values.length });
  const readings: { station: number; offset_mm: number; typed: string }[] = [];
  for (const [k, raw] of i.values.entries()) {
    const got = amount(raw, 'length', view.build.system, `values.${k}`);
    if (!got.ok) return got;
    if (Math.abs(got.value.value) > FARTHEST) {
      return no('impossible', {
        typed: got.value.typed,
        low: { v: -FARTHEST, as: 'length' },
        high: { v: FARTHEST, as: 'length' },
      });
    }
    readings.push({ station: from + k, offset_mm: got.value.value, typed: got.value.typed });
  }
  // A correction names the one entry it replaces; a reading beside others in an entry is corrected by reading that entry's stations again.
  const replaces =
    i.correct === true
      ? view.build.live
          .filter(
            e =>
              e.kind === 'offsets-read' &&
              e.survey === survey.value.id &&
              e.readings.every(r => r.station >= from && r.station < from + readings.length),
          )
          .map(e => e.id)
      : [];
  return {
    ok: true,
    value: {
      kind: 'offsets-read',
      survey: survey.value.id,
      readings,
      ...(replaces.length === 0 ? {} : { replaces }),
    },
  };
};

export const closeEntry = (view: View, id: string | undefined): Decided<Doing> => {
  const survey = surveyFor(view, id);
  if (!survey.ok) return survey;
  if (survey.value.closed) return no('survey-closed', { rail: survey.value.rail });
  const first = pauseFirst(view, survey.value);
  if (first !== null) return first;
  const read = survey.value.readings.filter(r => r !== null).length;
  if (read < 3) return no('too-few-stations', { read });
  return { ok: true, value: { kind: 'survey-closed', survey: survey.value.id } };
};
