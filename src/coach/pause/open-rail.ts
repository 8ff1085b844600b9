import { readStations } from '../../build/facts.ts';
import type { Build, Survey } from '../../build/fold.ts';
import { countingSurvey } from '../../build/surveys.ts';
import type { Ramp } from '../../ramp/ramp.ts';
import { halfRead } from './half-read.ts';
import { begunItems, DAYS, look, type Open, offsetAgain, value } from './open.ts';

const ROUNDS = ['sides-first', 'sides-rest', 'tops-odd', 'tops-even'] as const;

/** Slits welded since a survey: their pull has moved the rail, and its readings say nothing of a pause any more. */
const weldedSince = (b: Build, survey: Survey): boolean =>
  ROUNDS.map(round => `weld/${round}@${survey.rail}`).some(step =>
    begunItems(b, step).some(name => (b.ticks.get(`${step}#${name}`)?.at ?? '') > survey.at),
  );

/** A rail in the middle of its slit welds: nothing it could be held against, but its tacks can be looked at. */
const halfWelded = (rail: string, survey: Survey): Open =>
  look({
    stage: 'weld',
    name: 'half',
    subject: rail,
    rail,
    same: survey.id,
    days: DAYS.measured,
    holds: 'rail',
    fills: { rail },
    minutes: [5, 15],
  });

/** Entry, middle and lip of a rail, as it was read before the pause. */
const offsets = (b: Build, rail: string, ramp: Ramp): readonly Open[] => {
  const survey = countingSurvey(b, rail);
  // Once it stands between props it cannot be laid on its line.
  if (survey === null || b.ticks.has('assemble/props') || b.ticks.has('assemble/weld')) return [];
  if (b.ticks.has(`brace/hold-base@${rail}`) && survey.phase !== 'unclamped') return [];
  if (weldedSince(b, survey)) return [halfWelded(rail, survey)];
  const { stations_mm, offsets_mm } = readStations(survey);
  const read = survey.readings.flatMap((r, i) => (r === null ? [] : [i + 1]));
  const last = stations_mm.length - 1;
  if (last < 2) return [];
  const places = { entry: 0, middle: Math.round(last / 2), lip: last };
  // A rolled rail has no tacks that could creep.
  const tacked = survey.phase === 'tacked' && (ramp.plans.get(rail)?.slits.length ?? 0) > 0;
  const stage = tacked ? 'tack' : ['tacked', 'half-welded', 'cold'].includes(survey.phase) ? 'weld' : 'brace';
  return [
    {
      stage,
      name: 'offsets',
      words: 'pause-offsets',
      subject: rail,
      rail,
      same: survey.id,
      days: DAYS.measured,
      asks: Object.entries(places).map(([ask, at]) => offsetAgain(ask, survey, offsets_mm[at] ?? 0)),
      items: [],
      holds: 'rail',
      line: survey.to,
      survey,
      fills: {
        rail,
        line: survey.to,
        edge: survey.edge.replace('rail ', ''),
        first: read[places.entry] ?? 1,
        mid: read[places.middle] ?? 1,
        last: read[places.lip] ?? 1,
      },
      minutes: [5, 10],
    },
  ];
};

/** The bend of a rail that is closed and tacked up to a third, and not surveyed yet. */
const bend = (b: Build, rail: string): readonly Open[] => {
  if (b.surveys.some(s => s.rail === rail && s.kind === 'curve' && s.closed)) return [];
  const third = [3, 2, 1].find(t => value(b, `tack/read-third@${rail}:${t}`, 'bent') !== null);
  if (third === undefined) return [];
  const was = value(b, `tack/read-third@${rail}:${third}`, 'bent') ?? 0;
  const slack = Math.PI / 180;
  return [
    {
      stage: 'tack',
      name: 'bend',
      words: 'pause-bend',
      subject: `${rail}:${third}`,
      rail,
      same: String(third),
      days: DAYS.measured,
      asks: [
        {
          ask: 'bent',
          as: 'angle',
          was,
          expected: [Math.max(0, was - slack), was + slack],
          possible: [0, 2 * was + 0.2],
        },
      ],
      items: [],
      holds: 'rail',
      fills: { rail, third },
      minutes: [5, 10],
    },
  ];
};

/** Slits that are sawn and deburred and stand open: rust and grit fill a kerf that is to close. */
const kerf = (b: Build, rail: string): readonly Open[] =>
  [1, 2, 3].flatMap((t): readonly Open[] => {
    const was = value(b, `cut/deburr-third@${rail}:${t}`, 'kerf');
    if (was === null || value(b, `tack/read-third@${rail}:${t}`, 'bent') !== null) return [];
    if (begunItems(b, `tack/close-third@${rail}:${t}`).length > 0) return [];
    return [
      {
        stage: 'tack',
        name: 'kerf',
        words: 'pause-kerf',
        subject: `${rail}:${t}`,
        rail,
        same: String(t),
        days: DAYS.measured,
        asks: [
          {
            ask: 'kerf',
            as: 'thickness',
            was,
            expected: [Math.max(0.05, was - 0.1), was + 0.1],
            possible: [0.05, 6],
          },
        ],
        items: [],
        holds: 'rail',
        fills: { rail, third: t },
        minutes: [10, 20],
      },
    ];
  });

/** A rail held by clamps: none may have slipped. */
const clamps = (b: Build, rail: string): readonly Open[] => {
  if (!b.ticks.has(`brace/hold-base@${rail}`) || b.ticks.has('assemble/weld')) return [];
  if (begunItems(b, `brace/clamps@${rail}`).length > 0) return [];
  if (b.surveys.some(s => s.rail === rail && s.phase === 'unclamped' && s.closed && !s.retired)) return [];
  return [
    {
      stage: 'brace',
      name: 'clamps',
      words: 'pause-clamps',
      subject: rail,
      rail,
      same: '',
      days: DAYS.measured,
      asks: [{ ask: 'slipped', as: 'length', was: 0, expected: [0, 1], possible: [0, 100] }],
      items: [],
      holds: 'rail',
      fills: { rail },
      minutes: [5, 10],
    },
  ];
};

/** Uprights that hang on their tacks. */
const joints = (b: Build, rail: string): readonly Open[] => {
  const welded = begunItems(b, `brace/weld-joints@${rail}`);
  const tacked = begunItems(b, `brace/fit-uprights@${rail}`).filter(name => !welded.includes(name));
  if (tacked.length === 0 || b.ticks.has(`brace/weld-uprights@${rail}`)) return [];
  return [
    {
      stage: 'brace',
      name: 'joints',
      words: 'pause-joints',
      subject: rail,
      rail,
      same: '',
      days: DAYS.measured,
      asks: [],
      items: tacked,
      holds: 'rail',
      fills: { rail, count: tacked.length },
      minutes: [2 * tacked.length, 4 * tacked.length],
    },
  ];
};

/** Slit edges stand bare until the last slit of the rail is welded. */
export const bright = (b: Build, rail: string): readonly Open[] => {
  if (!b.marks.some(m => m.rail === rail)) return [];
  const cold = b.surveys.some(
    s => s.rail === rail && s.closed && !s.retired && !['tacked', 'half-welded'].includes(s.phase),
  );
  return cold
    ? []
    : [
        look({
          stage: 'weld',
          name: 'bright',
          subject: rail,
          rail,
          days: DAYS.bare,
          holds: 'arc',
          fills: { rail },
          minutes: [10, 20],
        }),
      ];
};

/** What of a rail is to be measured again: its curve, what was read of it, or its bend, its kerfs, clamps and tacked joints. */
export const openRail = (b: Build, rail: string, ramp: Ramp): readonly Open[] => {
  const half = halfRead(b, rail);
  // Three stations of a survey begun since tell more than the survey or the bend before it.
  const told = half.some(o => o.survey?.kind === 'curve' && o.asks.length === 3);
  return [
    ...(told ? [] : offsets(b, rail, ramp)),
    ...half,
    ...clamps(b, rail),
    ...(told ? [] : bend(b, rail)),
    ...kerf(b, rail),
    ...joints(b, rail),
  ];
};
