import { readStations } from '../../build/facts.ts';
import { type Build, countingSurvey, readingKey, type Survey } from '../../build/fold.ts';
import type { Ramp } from '../../ramp/ramp.ts';
import type { Ask, LineName, Stage } from '../../stages/sheet.ts';

/** After so many days out of hand a thing is looked at again (common practice). */
const DAYS = {
  /** Tacks creep, jigs move with the damp, things get leant on. */
  measured: 8,
  /** Bare steel indoors: one to two weeks. */
  bare: 8,
  welder: 14,
  /** Bare welded frame that waits for paint. */
  frame: 14,
  /** Primer alone is no coat for weather: looked at after four weeks, prepared anew after three months. */
  primed: 28,
  primedLong: 91,
  outdoors: 28,
} as const;

/** A number read before the pause, and read again. */
export type Again = Ask & Readonly<{ was: number }>;

/** One thing that was left open, with what is to be done about it. Words under `steps.<stage>.<words>`. */
export type Open = Readonly<{
  stage: Stage;
  name: string;
  words: string;
  /** Rail, or rail and third; empty for the whole build. */
  subject: string;
  rail?: string;
  /** What makes it the same thing still: a survey's id, a third. */
  same: string;
  days: number;
  asks: readonly Again[];
  items: readonly string[];
  /** What keeps waiting: everything about the rail, or all that is lit, or the rest of the build. */
  holds: 'rail' | 'arc' | 'frame';
  line?: LineName;
  survey?: Survey;
  fills: Readonly<Record<string, string | number>>;
  minutes: readonly [number, number];
}>;

const value = (b: Build, step: string, ask: string): number | null =>
  b.readings.get(readingKey(step, ask))?.value ?? null;

const indexed = new WeakMap<Build, ReadonlyMap<string, readonly string[]>>();

/** Names of ticked items by their step; looked through once a build. */
const itemsByStep = (b: Build): ReadonlyMap<string, readonly string[]> => {
  const kept = indexed.get(b);
  if (kept !== undefined) return kept;
  const index = new Map<string, string[]>();
  for (const key of b.ticks.keys()) {
    const at = key.indexOf('#');
    if (at < 0) continue;
    const step = key.slice(0, at);
    const names = index.get(step);
    if (names === undefined) index.set(step, [key.slice(at + 1)]);
    else names.push(key.slice(at + 1));
  }
  indexed.set(b, index);
  return index;
};

const begunItems = (b: Build, step: string): readonly string[] => itemsByStep(b).get(step) ?? [];

/** How far a tape's or a gauge's reading may differ from the last before the field asks once more, mm. */
const NEAR = 3;

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
      asks: Object.entries(places).map(([ask, at]): Again => {
        const was = offsets_mm[at] ?? 0;
        return {
          ask,
          as: 'length',
          signed: true,
          was,
          expected: [was - NEAR, was + NEAR],
          possible: [-1000, 1000],
          line: survey.to,
        };
      }),
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

const diagonals = (b: Build): readonly Open[] => {
  if (b.ticks.has('assemble/weld')) return [];
  const asks = ['d1', 'd2'].flatMap((ask): readonly Again[] => {
    const was = value(b, 'assemble/diagonals', ask);
    return was === null
      ? []
      : [{ ask, as: 'length', was, expected: [was - NEAR, was + NEAR], possible: [was / 2, 2 * was] }];
  });
  if (asks.length < 2) return [];
  return [
    {
      stage: 'assemble',
      name: 'diagonals',
      words: 'pause-diagonals',
      subject: '',
      same: '',
      days: DAYS.measured,
      asks,
      items: [],
      holds: 'frame',
      fills: {},
      minutes: [5, 10],
    },
  ];
};

const anchors = (b: Build): readonly Open[] => {
  const asks = [1, 2, 3, 4].flatMap((k): readonly Again[] => {
    const was = value(b, 'finish/anchors', `pull${k}`);
    return was === null
      ? []
      : [
          {
            ask: `pull${k}`,
            as: 'force',
            was,
            expected: [0.95 * was, 1.05 * was],
            possible: [0, 20_000],
          },
        ];
  });
  if (asks.length < 4) return [];
  return [
    {
      stage: 'finish',
      name: 'anchors',
      words: 'pause-anchors',
      subject: '',
      same: '',
      days: DAYS.outdoors,
      asks,
      items: [],
      holds: 'frame',
      fills: {},
      minutes: [10, 25],
    },
  ];
};

type Look = Pick<Open, 'stage' | 'name' | 'days' | 'holds' | 'minutes'> & Partial<Open>;
const look = (open: Look): Open => ({
  words: `pause-${open.name}`,
  subject: '',
  same: '',
  asks: [],
  items: [],
  fills: {},
  ...open,
});

/** Slit edges stand bare until the last slit of the rail is welded. */
const bright = (b: Build, rail: string): readonly Open[] => {
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

/** The welding set, by what it burns; gas where it is not known. */
const welder = (b: Build): readonly Open[] => {
  const begun = b.marks.length > 0 || value(b, 'cut/test-piece', 'turn') !== null;
  if (!begun || b.ticks.has('assemble/weld')) return [];
  const kind = value(b, 'weld/machine', 'kind') ?? 1;
  const burns = kind <= 2 ? ['gas', 'wire'] : kind === 3 ? ['wire'] : ['rods'];
  return [
    look({
      stage: 'weld',
      name: 'welder',
      days: DAYS.welder,
      items: [...burns, 'lens', 'leads'],
      holds: 'arc',
      minutes: [5, 15],
    }),
  ];
};

const outdoors = (b: Build, days: number): readonly Open[] => {
  // Coats of an older build are items of one step.
  const coats = begunItems(b, 'finish/paint');
  const primed = b.ticks.has('finish/prime') || coats.includes('primer');
  const painted = b.ticks.has('finish/paint') || coats.includes('second-top');
  const decked = b.ticks.has('finish/deck') || begunItems(b, 'finish/deck').length > 0;
  if (decked) {
    return [
      look({
        stage: 'finish',
        name: 'deck',
        days: DAYS.outdoors,
        items: ['screws', 'edges', 'paint', 'welds'],
        holds: 'frame',
        minutes: [10, 25],
      }),
    ];
  }
  if (painted || !b.ticks.has('assemble/weld')) return [];
  if (!primed)
    return [look({ stage: 'finish', name: 'frame', days: DAYS.frame, holds: 'frame', minutes: [15, 40] })];
  return [
    look({
      stage: 'finish',
      name: 'primed',
      words: days >= DAYS.primedLong ? 'pause-primed-long' : 'pause-primed',
      days: DAYS.primed,
      holds: 'frame',
      minutes: days >= DAYS.primedLong ? [60, 150] : [10, 30],
    }),
  ];
};

/**
 * What stands open in a build, measured things first: a rail tacked, half welded, cold or free; a bend; slits sawn; a rail in
 * its clamps; tacked joints; a tacked frame; bare, primed and decked steel; the welding set. `days` is how long it may stand.
 * @param away days of the pause; those that may stand longer are left out
 */
export const leftOpen = (b: Build, ramp: Ramp, away: number): readonly Open[] => {
  const all = [
    ...ramp.rails.flatMap(rail => [
      ...offsets(b, rail, ramp),
      ...clamps(b, rail),
      ...bend(b, rail),
      ...kerf(b, rail),
      ...joints(b, rail),
    ]),
    ...diagonals(b),
    ...anchors(b),
    ...ramp.rails.flatMap(rail => bright(b, rail)),
    ...welder(b),
    ...outdoors(b, away),
  ];
  return all.filter(o => away >= o.days);
};
