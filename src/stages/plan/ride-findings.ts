import type { Verdict } from '../../reckon/strength/limits.ts';
import type { Fill, Fills, Finding, Offer } from '../sheet.ts';
import type { Ask, Situation } from '../situation.ts';
import { MENDED_WITH } from './mended-with.ts';
import { mendsAsked, type SaidBuild, saidBuild, type WorstFrame } from './mends-asked.ts';
import type { Ride } from './ride-facts.ts';
import { verdictsOf } from './ride-facts.ts';
import { tenthUp } from './ride-try.ts';
import type { Strength } from './strength-asks.ts';
import { deckUse, plateUse } from './strength-deck.ts';
import { saidOfStrength } from './strength-said.ts';

/** Before steel is bought; what waits for a ride that is refused. */
const WAITS = ['plan/buy', 'plan/order'] as const;
/** A danger that was accepted at one size is accepted no more when it has grown by this, per cent of the limit. */
const GROWN = 5;

const fillOf = (unit: Verdict['unit'], v: number): Fill => {
  switch (unit) {
    case 'rad':
      return { v, as: 'angle' };
    case 'm':
      return { v, as: 'distance' };
    case 'm/s':
      return { v, as: 'speed' };
    case 'mm':
      return { v, as: 'length' };
    case 'share':
      return { v: 100 * v, as: 'percent' };
    case 'times the weight':
      return { v, as: 'ratio', step: 0.1 };
    case 'count':
    case 'yes or no':
      return { v, as: 'count' };
  }
};

/** How far past its limit, per cent of the limit; the greater the worse. A limit that is a floor is turned about. */
const sizeOf = ({ value, limit }: Verdict): number =>
  limit === 0
    ? 100 * value
    : value >= limit
      ? (100 * value) / limit
      : (100 * limit) / Math.max(value, limit / 100);

const about = (s: Situation, base: string) =>
  s.build.chosen.filter(c => c.finding === base || c.finding.startsWith(`${base}:`));

/**
 * The name a finding has now. Choosing a change does not make it: until the number itself is changed the finding stands, under a name
 * that nothing was chosen for. Leaving it unridden keeps what waits for it waiting.
 */
const keyOf = (s: Situation, base: string): string => {
  const promised = about(s, base).filter(c => !/^(accept-|leave-(?!unridden))/.test(c.remedy)).length;
  return promised === 0 ? base : `${base}:${promised}`;
};

/** Whether a danger was accepted by name, at its size or a greater one. */
const isAccepted = (s: Situation, base: string, size: number): boolean => {
  const last = about(s, base).at(-1);
  return last?.remedy.startsWith('accept-') === true && size <= (last.worst_mm ?? 0) + GROWN;
};

const plain = (remedy: string, minutes = 0, fills: Fills = {}): Offer => ({
  remedy,
  minutes,
  fills,
  plan: {},
});

/**
 * The danger of each limit that may be taken on, as whoever takes it on has to write it: words of the deed that offers it.
 */
export const DANGERS: Readonly<Record<string, string>> = {
  'gap-first': 'fall short into the gap',
  short: 'fall into the far edge',
  'steep-novice': 'thrown on my back',
  'load-novice': 'pressed to the ground',
  'flat-from-high': 'break bones',
  'fall-stop': 'break bones',
  'window-narrow': 'fall short or fly past',
  'tight-and-fast': 'turn over backwards',
  'speed-cap': 'load is not known',
  'over-used': 'break under me',
  'deck-over-used': 'break through',
};

const takingOn = (code: string, fills: Fills): Offer => ({
  ...plain(`accept-${code}`, 0, fills),
  typed: DANGERS[code] ?? 'i may be hurt',
});

/** What is chosen is told in the journal with the numbers it had. */
const frozen = (offer: Offer): Offer =>
  offer.fills === undefined || Object.keys(offer.fills).length === 0
    ? offer
    : { ...offer, plan: { ...offer.plan, fills: offer.fills } };

type Stands = Readonly<{
  code: string;
  severity: 'refuse' | 'warn';
  never: boolean;
  size: number;
  words: string;
  fills: Fills;
  mends: readonly Offer[];
  /** The question that more changes wait for. */
  ask: Ask | null;
}>;

const findingOf = (s: Situation, f: Stands): Finding => {
  const base = `ride-${f.code}`;
  if (f.severity === 'refuse' && !f.never && isAccepted(s, base, f.size)) {
    const again = s.build.chosen.filter(c => c.finding.startsWith(`accepted-${f.code}:`)).length;
    return {
      key: `accepted-${f.code}:${again}`,
      stage: 'plan',
      severity: 'watch',
      words: `accepted-${f.code}`,
      fills: f.fills,
      offers: [
        ...f.mends,
        plain('ride-ask-engineer', 240),
        plain('leave-unridden'),
        plain('leave-accepted'),
      ].map(frozen),
    };
  }
  return {
    key: keyOf(s, base),
    stage: 'plan',
    severity: f.severity === 'refuse' ? 'stop' : 'watch',
    words: f.words,
    fills: f.fills,
    worst_mm: f.size,
    offers: [
      // Where no single change mends it, sizes are tried together.
      ...(f.mends.length === 0 && f.ask === null ? [plain('design-by-hand', 10)] : f.mends),
      plain('ride-ask-engineer', 240),
      ...(f.severity === 'warn'
        ? [plain('leave-ride')]
        : [plain('leave-unridden'), ...(f.never ? [] : [takingOn(f.code, f.fills)])]),
    ].map(frozen),
    ...(f.severity === 'refuse' ? { blocks: WAITS } : {}),
    ...(f.ask === null ? {} : { pending: true as const }),
  };
};

/** Changes that mend something, or the question they wait for. */
type Mends = Readonly<{ offers: readonly Offer[]; ask: Ask | null }>;
type Mender = (code: string, frame?: WorstFrame) => Mends;

/** Changes are tried where nobody waits at a key for them: each on a ramp of its own. */
const menderOf = (s: Situation): Mender => {
  let build: SaidBuild | null = null;
  return (code, frame) => {
    build ??= saidBuild(s);
    const told = mendsAsked(s, build, code, frame);
    return told.is === 'known' ? { offers: told.value, ask: null } : { offers: [], ask: told.ask };
  };
};

const deckFills = (s: Situation): Fills => {
  const use = deckUse(s);
  return use === null
    ? {}
    : {
        span: { v: use.span_mm, as: 'length' },
        largest: { v: Math.floor(use.largest_mm), as: 'length', step: 1 },
      };
};

/** Words of a deck of boards, and of one of sheets, differ. */
const wordsOf = (s: Situation, code: string): string =>
  code === 'deck-over-used' ? `ride-deck-${s.ramp.design.deck.kind}` : `ride-${code}`;

/** The rider does not come over the lip, or not over the gap: no limit of the list, and the first thing to know. */
const speedFindings = (s: Situation, ride: Ride, mender: Mender): readonly Stands[] => {
  const { landing, flight, stalls, least_m_s, window } = ride;
  const common = { severity: 'refuse' as const, never: false, size: 100, ask: null };
  const faster = (v: number): Offer => ({
    remedy: 'ride-faster',
    fills: { speed: { v, as: 'speed' } },
    minutes: 3,
    plan: { readings: [{ step: 'plan/ride', ask: 'entry-speed', value: v }] },
  });
  if (stalls)
    return [
      {
        ...common,
        code: 'stalls',
        // Nobody takes on the danger of a lip that is not reached: it is a number to change.
        never: true,
        words: 'ride-stalls',
        fills: { least: { v: least_m_s, as: 'speed' } },
        mends: [faster(tenthUp(1.2 * least_m_s, s.build.system))],
      },
    ];
  if (landing?.kind === 'gap' && flight?.short_m !== undefined) {
    const filled = mender('gap-first');
    return [
      {
        ...common,
        ask: filled.ask,
        code: 'short',
        words: 'ride-short',
        fills: { short: { v: flight.short_m, as: 'distance' } },
        mends: [
          ...filled.offers,
          ...(window === null ? [] : [faster(tenthUp(window.entry.least_m_s, s.build.system))]),
        ],
      },
    ];
  }
  return [];
};

const plateFinding = (s: Situation): readonly Finding[] => {
  const use = plateUse(s);
  if (use === null || use.holds) return [];
  const fills: Fills = {
    largest: { v: Math.floor(use.largest_mm / 5) * 5, as: 'length' },
    thick: { v: use.thick_mm, as: 'thickness' },
  };
  return [
    {
      key: 'strength-plate',
      stage: 'plan',
      severity: 'fix',
      words: 'strength-plate',
      fills,
      offers: [
        { remedy: 'plate-closer', fills, minutes: 20, plan: { largest_mm: use.largest_mm } },
        { remedy: 'plate-backed', fills, minutes: 30, plan: { backed: true } },
        { remedy: 'leave-plate', fills, minutes: 0, plan: {} },
      ],
    },
  ];
};

/** A limit that another one which is broken says already, more strictly: its changes mend both. */
const saidBy = (v: Verdict, all: readonly Verdict[]): boolean =>
  all.some(
    one => one.code !== v.code && (MENDED_WITH[one.code] ?? []).includes(v.code) && one.severity === 'refuse',
  );

/** Limits that stand on the side frame's own reckoning. */
const OF_FRAME: ReadonlySet<string> = new Set(['over-used', 'nearly-used']);

/** Causes before what they bring about: who rides slower for his legs also bends less steel. What is not named comes after. */
const CAUSES_FIRST: readonly string[] = [
  'stalls',
  'short',
  'gap-first',
  'load-novice',
  'speed-cap',
  'tight-and-fast',
  'steep-novice',
  'flat-from-high',
  'fall-stop',
  'window-narrow',
  'anchors-few',
  'anchors-entry',
];

const byCause = (stands: readonly Stands[]): readonly Stands[] => {
  const at = ({ code }: Stands): number => {
    const place = CAUSES_FIRST.indexOf(code);
    return place < 0 ? CAUSES_FIRST.length : place;
  };
  return [...stands].sort((a, b) => at(a) - at(b));
};

/** What the ride and its frame break of the limits, first thing on the page: why, the changes that mend it, and who has to be asked. */
export const rideFindings = (
  s: Situation,
  ride: Ride,
  strength: Strength,
): Readonly<{ findings: readonly Finding[]; asked: readonly Ask[] }> => {
  const use = strength.is === 'known' ? strength.held.governing.utilisation : undefined;
  const said = saidOfStrength(s, strength);
  const mender = menderOf(s);
  const verdicts = verdictsOf(s, ride, use);
  const stands = [
    ...verdicts
      .filter(v => !saidBy(v, verdicts))
      .map((v): Stands => {
        const frame = OF_FRAME.has(v.code) && strength.is === 'known' ? strength : null;
        const mends = mender(
          v.code,
          frame === null ? undefined : { rail: frame.rail, governing: frame.held.governing },
        );
        return {
          code: v.code,
          severity: v.severity,
          never: v.never === true,
          size: sizeOf(v),
          words: v.code === 'over-used' && said !== null ? said.words : wordsOf(s, v.code),
          fills: {
            value: fillOf(v.unit, v.value),
            limit: fillOf(v.unit, v.limit),
            ...(v.code === 'deck-over-used' ? deckFills(s) : {}),
            ...(frame === null ? {} : said?.fills),
          },
          mends: mends.offers,
          ask: mends.ask,
        };
      }),
    ...speedFindings(s, ride, mender),
  ];
  return {
    findings: [...byCause(stands).map(f => findingOf(s, f)), ...plateFinding(s)],
    asked: [
      ...(strength.is === 'pending' ? strength.asks : []),
      ...stands.flatMap(f => (f.ask === null ? [] : [f.ask])),
    ],
  };
};
