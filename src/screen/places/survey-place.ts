import type { Survey } from '../../build/fold.ts';
import { openSurvey } from '../../build/surveys.ts';
import type { Step } from '../../coach/walk.ts';
import { drawScene } from '../../drawing/braille.ts';
import { padTo, row } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { write } from '../../quantity/write.ts';
import { offsetScene, type Read } from '../../stages/offset-scene.ts';
import { counted } from '../../words/counted.ts';
import { fieldRows } from '../fields/field-rows.ts';
import { openField, understood } from '../fields/number-field.ts';
import { page, ruleRow, stripRow, titleRow } from '../pages/frame.ts';
import { beforeCurvePage, beforeSidewaysPage, EDGES, stationName } from '../pages/survey-pages.ts';
import { afterSurvey } from './after-survey.ts';
import { SIDES } from './ask-field.ts';
import { commonAct } from './common.ts';
import type { Desk, Place } from './desk.ts';
import type { OpenField } from './open-field.ts';
import { askPoints, POINTS_HELP } from './survey-points.ts';
import { aroundFirst, expectedFor, repeats, SIDEWAYS } from './survey-readings.ts';

/** Offsets of a rail, station by station; opened at the first one not read. */
export const surveyPlace = (desk: Desk, step: Step): Place => {
  let edge = 0;
  let at = 0;
  /** Stations still to be read once more, for the noise floor. */
  let twice: readonly number[] = [];
  const running = (d: Desk): Survey | null => openSurvey(d.view.build);
  const sideways = step.survey?.kind === 'sideways';
  const lit = { stage: step.stage, step: step.key, item: 0 };

  const unread = (survey: Survey): number => survey.readings.indexOf(null);

  const readings = (survey: Survey, open: OpenField | null | undefined): Read[] =>
    survey.stations_mm.map((station_mm, i) => {
      const typed = i === at && open != null ? understood(open.field, open.spec) : null;
      return {
        station_mm,
        offset_mm: typed?.is === 'number' ? typed.value : (survey.readings[i]?.offset_mm ?? null),
      };
    });

  const openStation = (d: Desk, survey: Survey, station: number, correct: boolean): void => {
    at = station;
    const again = twice[0] === station;
    // Read once more without seeing what was read before: a number that is shown is a number that is read.
    const before = again ? null : survey.readings[station];
    place.field = {
      field: openField(before == null ? {} : { kept: before.typed }),
      spec: {
        quantity: 'length',
        system: d.system,
        asks: again
          ? `once more: ${survey.edge.toUpperCase()} to its ${survey.to}`
          : sideways
            ? "the rail's side to its string"
            : `${survey.edge.toUpperCase()} to its ${survey.to}`,
        sign: sideways ? SIDEWAYS : SIDES,
        expected: again ? aroundFirst(survey, station) : expectedFor(survey, station),
        possible: [-1000, 1000],
        whenEmpty: 'nothing typed. Type 0 if it lies on the line',
        otherWay: 'cannot read here',
        several: `one for each station from ${station + 1}`,
      },
      keep: (_v, typed) => {
        if (
          d.act({
            do: 'offsets',
            from: station + 1,
            values: [d.typedFor(typed, 'length')],
            correct: correct || before != null,
          })
        )
          goOn(d);
        else openStation(d, survey, station, correct);
      },
      several: values => {
        if (
          d.act({
            do: 'offsets',
            from: station + 1,
            values: values.map(v => `${Math.round(v * 1000) / 1000} mm`),
          })
        )
          goOn(d);
        else openStation(d, survey, station, correct);
      },
      otherWay: () => goTo(d, twice.length > 0 ? survey.stations_mm.length : station + 1),
      before: () => {
        twice = [];
        const now = running(d);
        if (now !== null && station > 0) openStation(d, now, station - 1, true);
        else d.say('↑: this is the first station');
      },
    };
  };

  const goTo = (d: Desk, station: number): void => {
    const survey = running(d);
    if (survey === null) return;
    if (station < survey.stations_mm.length) openStation(d, survey, station, false);
    else {
      place.field = null;
      at = survey.stations_mm.length;
    }
  };

  /** On to the next station not read; after the last, the page asks for the end of the reading. */
  const goOn = (d: Desk): void => {
    const survey = running(d);
    if (survey === null) return;
    if (twice.length > 0) {
      twice = twice[0] === at ? twice.slice(1) : twice;
      goTo(d, twice[0] ?? survey.stations_mm.length);
      return;
    }
    const next = survey.readings.findIndex((r, i) => r === null && i > at);
    goTo(d, next < 0 ? survey.stations_mm.length : next);
  };

  const rows = (d: Desk): Row[] => {
    const c = d.context();
    const survey = running(d);
    const keys = d.keyRow(place);
    if (survey === null) {
      if (sideways) return beforeSidewaysPage(c, step, keys);
      return beforeCurvePage(c, step, edge, POINTS_HELP, keys);
    }
    const plan = d.view.ramp.plans.get(survey.rail);
    const kept = survey.readings.filter(r => r !== null).length;
    const count = survey.stations_mm.length;
    const read = readings(survey, place.field);
    const worst = read.reduce((w, r) => Math.max(w, Math.abs(r.offset_mm ?? 0)), 0);
    const head = [
      titleRow(c),
      stripRow(c.view, step.stage),
      ruleRow(
        c,
        `${step.stage}: rail ${survey.rail} ${sideways ? 'sideways' : 'offsets'}, ${Math.min(at + 1, count)} of ${count}`,
        `${kept} kept, ${count - kept} to go`,
      ),
    ];
    const field = place.field;
    const top: Row[] =
      field === null || field === undefined
        ? [
            row(' ', [
              'lead',
              `▸ ${kept < count ? `${counted(count - kept, 'station')} not read.` : 'Every station is read.'} Enter ends the reading and says what it means.`,
            ]),
            row('   ', 'p goes back to a station, Esc pauses: all of them are kept.'),
            ...(canRepeat(survey)
              ? [row('   ', 'm reads a few once more: how far they agree is what a reading is worth.')]
              : [[]]),
            [],
            [],
          ]
        : [
            row(' ', ['lead', `▸ MEASURE  Station ${at + 1}: ${stationName(c, survey, at)}`]),
            ...fieldRows(field.field, field.spec, c.look),
          ];
    const around = Math.max(3, c.look.rows - 1 - head.length - top.length - 5);
    const near = read
      .map((r, i) => ({ ...r, i }))
      .slice(Math.max(0, at - 5), Math.max(0, at - 5) + 7)
      .map(
        r =>
          `${r.i === at ? '▸' : ''}${r.i + 1} ${r.offset_mm === null ? '...' : write(r.offset_mm, 'length', d.system, { sign: true, fixed: true, unit: false })}`,
      )
      .map(t => padTo(t, 11))
      .join('');
    const body: Row[] = [
      ...top,
      ...(plan === undefined || sideways
        ? []
        : drawScene(offsetScene(plan, survey.to, read, at < count ? at : null), {
            columns: c.look.columns - 2,
            rows: around,
            ascii: c.look.ascii,
          })),
    ];
    return page(c, head, body, [
      row(' ', ['quiet', 'kept   '], near),
      row(' ', `Worst so far ${write(worst, 'length', d.system)}, as read.`),
      row(' ', c.message ?? ''),
      keys,
    ]);
  };

  /** Every station is read and none of them twice. */
  const canRepeat = (survey: Survey): boolean =>
    !sideways &&
    repeats(survey).length > 0 &&
    survey.readings.every(r => r === null || r.again === undefined);

  const place: Place = {
    stage: () => step.stage,
    field: null,
    rows,
    keys: d =>
      running(d) === null
        ? [
            { act: 'open', words: 'begin reading' },
            ...(sideways ? [] : [{ act: 'measure' as const, words: 'points instead' }]),
            { act: 'next', words: 'move', shown: '↑ ↓' },
            { act: 'back' },
          ]
        : [
            { act: 'open', words: 'end the reading' },
            ...(place.field === null && canRepeat(running(d) as Survey)
              ? [{ act: 'measure' as const, words: 'a few twice' }]
              : []),
            { act: 'previous', words: 'back one', shown: 'p' },
            { act: 'back', words: 'pause' },
            { act: 'hurt' },
          ],
    act: (d, act, char) => {
      const survey = running(d);
      if (survey === null) {
        if (act === 'next' || act === 'previous') edge = act === 'next' ? 1 : 0;
        else if (act === 'open') {
          if (d.act({ do: 'open-survey', step: step.key, edge: EDGES[edge] ?? 'rail bottom face' }))
            goTo(d, 0);
        } else if (act === 'measure' && !sideways)
          askPoints(d, step, EDGES[edge] ?? 'rail bottom face', () => goTo(d, Number.POSITIVE_INFINITY));
        else return commonAct(d, act, char, lit);
        return true;
      }
      if (act === 'open') {
        if (at < survey.stations_mm.length && unread(survey) >= 0) openStation(d, survey, at, false);
        else if (d.act({ do: 'close-survey' })) afterSurvey(d, step);
        return true;
      }
      if (act === 'measure' && place.field === null && canRepeat(survey)) {
        twice = repeats(survey);
        goTo(d, twice[0] ?? survey.stations_mm.length);
        return true;
      }
      if (act === 'previous' || act === 'next') {
        twice = [];
        const to = Math.max(0, Math.min(survey.stations_mm.length - 1, at + (act === 'next' ? 1 : -1)));
        openStation(d, survey, to, survey.readings[to] !== null);
        return true;
      }
      return commonAct(d, act, char, lit);
    },
  };
  const survey = running(desk);
  if (survey !== null) {
    const first = unread(survey);
    goTo(desk, first < 0 ? survey.stations_mm.length : first);
  }
  return place;
};
