import type { Fills, Finding, Offer } from '../sheet.ts';
import type { Ask, Situation } from '../situation.ts';

/** Before steel is bought; what waits for a ride that is refused. */
const WAITS = ['plan/buy', 'plan/order'] as const;
/** A danger that was accepted at one size is accepted no more when it has grown by this, per cent of the limit. */
const GROWN = 5;

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

/** The step whose answer brings a broken limit about, where one does: the others are of the design. */
const RAISED_BY: Readonly<Record<string, string>> = {
  stalls: 'plan/ride',
  'load-novice': 'plan/ride',
  'speed-cap': 'plan/ride',
  'tight-and-fast': 'plan/ride',
  'gap-first': 'plan/landing',
  short: 'plan/landing',
  'flat-from-high': 'plan/landing',
  'fall-stop': 'plan/landing',
  'window-narrow': 'plan/landing',
  'anchors-few': 'plan/ground',
  'anchors-entry': 'plan/ground',
};

/** Once the speed was timed on the ramp it is that reading which speaks: no answer given in plan is to be given again. */
const raisedFrom = (s: Situation, code: string): string | undefined => {
  const step = RAISED_BY[code];
  const timed = [...s.build.readings.keys()].some(key => key.startsWith('finish/speeds#'));
  return timed && step !== 'plan/ground' ? undefined : step;
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

/** A limit that is broken, in words, with what mends it. */
export type Stands = Readonly<{
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

/** The finding of a broken limit: a stop, a watch, or a danger that was taken on and is said on every page. */
export const findingOf = (s: Situation, f: Stands): Finding => {
  const base = `ride-${f.code}`;
  const raisedBy = raisedFrom(s, f.code);
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
    ...(raisedBy === undefined ? {} : { raisedBy: [raisedBy] }),
    ...(f.ask === null ? {} : { pending: true as const }),
  };
};
