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
import { findingOf, type Stands } from './taken-on.ts';

const fillOf = (unit: Verdict['unit'], v: number): Fill => {
  switch (unit) {
    case 'rad':
      return { v, as: 'angle' };
    case 'm':
      return { v, as: 'reach' };
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
        fills: { short: { v: flight.short_m, as: 'reach' } },
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
