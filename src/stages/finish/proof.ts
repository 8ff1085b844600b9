import { readingKey } from '../../build/fold.ts';
import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import { spotAtSlope } from '../../ramp/curve.ts';
import type { RailName } from '../../ramp/design.ts';
import { curveOf } from '../../ramp/rail-plan.ts';
import { RIDING } from '../../reckon/strength/loads.ts';
import { TURN } from '../order.ts';
import { fastestAt, loadsOf } from '../riding.ts';
import type { Figure, Finding, Gate, Offer, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { saysCracks } from './failing.ts';
import { MATTERS } from './limits.ts';
import { weldGates } from './weld-gates.ts';

/** Set that may stay once the load is off, mm, and how long it lies, s (common practice). */
export const LARGEST_SET = 1;
const LIES_s = 300;
/** People may stand as a load only where the deck is no steeper, rad: 15° (common practice). */
const STAND = Math.PI / 12;
/** A drop over this goes to an engineer, mm (bench rule; practice). */
const DROP_LIMIT = 1000;

/** Dead load of the proof, N: a quarter over the load of riding the curve, at three times the weight where no more is said of the speed. */
export const proofForce = (s: Situation): number =>
  loadsOf(s)?.proof_N ?? RIDING.proof_share * RIDING.least_factor * s.ramp.design.rider * GRAVITY_m_s2;

/** Fastest that the proof load covers, m/s: the speed that was said, or the one at which three times the weight is reached. */
export const fastestCovered = (s: Situation): number =>
  fastestAt(s.ramp.design.arc.radius_mm / 1000, loadsOf(s)?.riding_factor ?? RIDING.least_factor);

/** The widest stretch of a rail without an upright, and its middle, along the back wall from the entry end, mm. */
export const worstSpan = (s: Situation): { rail: RailName; span_mm: number; middle_mm: number } =>
  s.ramp.rails
    .flatMap(rail => {
      const stands = s.ramp.members
        .filter(m => m.rail === rail && (m.kind === 'upright' || m.kind === 'lip upright'))
        .map(m => m.along_mm ?? 0)
        .sort((a, b) => a - b);
      return stands.slice(1).map((to, k) => {
        const from = stands[k] ?? 0;
        return { rail, span_mm: to - from, middle_mm: (from + to) / 2 };
      });
    })
    .sort((a, b) => b.span_mm - a.span_mm)[0] ?? {
    rail: s.ramp.rails[0] ?? '',
    span_mm: s.ramp.plans.get(s.ramp.rails[0] ?? '')?.toLip_mm ?? 0,
    middle_mm: (s.ramp.plans.get(s.ramp.rails[0] ?? '')?.toLip_mm ?? 0) / 2,
  };

const setRead = (s: Situation): number | null =>
  s.build.readings.get(readingKey('finish/proof', 'set'))?.value ?? null;

/** Whether a crack was found since the proof load lay: what was mended then has carried nothing yet. */
const crackedSince = (s: Situation): boolean => {
  const proof = s.build.readings.get(readingKey('finish/proof', 'set'))?.entry;
  for (let k = s.build.live.length - 1; k >= 0; k--) {
    const e = s.build.live[k];
    if (e === undefined || e.id === proof) return false;
    if (e.kind === 'remedy-chosen' && e.remedy === 'weld-crack') return true;
    if (e.kind === 'reading-logged' && e.value > 0 && saysCracks(e.step, e.ask)) return true;
  }
  return false;
};

/** Shut until the proof load has lain and left no more than the set allowed, and again once a crack was mended. */
export const proofGate = (s: Situation): Gate => {
  const set = setRead(s);
  const over = set !== null && set > LARGEST_SET;
  const again = set !== null && !over && crackedSince(s);
  return {
    id: set === null ? 'proof-not-read' : again ? 'proof-again' : 'proof-set',
    shut: set === null || over || again,
    fills: {
      set: { v: set ?? 0, as: 'length' },
      most: { v: LARGEST_SET, as: 'length' },
    },
    measure: 'finish/proof',
  };
};

/** A high lip is judged by an engineer; the reason says who looked. */
export const engineerGate = (s: Situation): Gate => ({
  id: 'high-lip',
  shut: s.ramp.lip.y_mm > DROP_LIMIT,
  fills: {
    height: { v: s.ramp.lip.y_mm, as: 'length' },
    most: { v: DROP_LIMIT, as: 'length' },
  },
});

export const proofSteps = (s: Situation): readonly StepDraft[] => {
  const { rail } = worstSpan(s);
  return [
    {
      key: 'finish/proof',
      stage: 'finish',
      words: 'proof',
      fills: {
        rail,
        lies: { v: LIES_s, as: 'time' },
        most: { v: LARGEST_SET, as: 'length' },
      },
      turn: TURN.finish + 20,
      needs: ['finish/inspect'],
      uses: ['proof-mass', 'proof-force', 'proof-spot', 'stand-to'],
      tall: ['proof-mass', 'proof-spot'],
      line: { face: 'hinge line', rail },
      asks: [{ ask: 'set', as: 'length', expected: [0, 1], possible: [0, 100] }],
      gates: weldGates(s),
      cautions: ['proof-dead-load'],
      minutes: [40, 80],
    },
  ];
};

export const proofFigures = (s: Situation): readonly Figure[] => {
  const c = curveOf(s.ramp.design);
  const span = worstSpan(s);
  const flat = spotAtSlope(c, 0, Math.min(STAND, c.exit_rad)).x;
  return [
    {
      id: 'proof-force',
      kind: 'size',
      as: 'force',
      value: { is: 'exact', v: proofForce(s) },
      matters: MATTERS.force,
    },
    {
      id: 'proof-mass',
      kind: 'size',
      as: 'mass',
      value: { is: 'exact', v: proofForce(s) / GRAVITY_m_s2 },
      matters: MATTERS.mass,
    },
    {
      id: 'proof-spot',
      kind: 'dimension',
      as: 'length',
      line: { face: 'hinge line', rail: span.rail },
      value: { is: 'exact', v: span.middle_mm },
      matters: 5,
    },
    {
      id: 'proof-span',
      kind: 'dimension',
      as: 'length',
      line: { face: 'hinge line', rail: span.rail },
      value: { is: 'exact', v: span.span_mm },
      matters: 5,
    },
    {
      id: 'stand-to',
      kind: 'dimension',
      as: 'length',
      line: { face: 'deck top' },
      value: { is: 'exact', v: flat },
      matters: 5,
    },
    {
      id: 'fastest',
      kind: 'size',
      as: 'speed',
      value: { is: 'exact', v: fastestCovered(s) },
      matters: MATTERS.speed,
    },
  ];
};

/** The frame kept a bend from its proof load: it yielded somewhere. */
export const proofFindings = (s: Situation): readonly Finding[] => {
  const set = setRead(s);
  if (set === null || set <= LARGEST_SET) return [];
  const { rail, middle_mm } = worstSpan(s);
  const fills = {
    rail,
    set: { v: set, as: 'length' },
    most: { v: LARGEST_SET, as: 'length' },
    spot: { v: middle_mm, as: 'length' },
  } as const;
  const offer = (remedy: string, minutes: number): Offer => ({
    remedy,
    fills,
    minutes,
    plan: { rail, set_mm: set },
  });
  return [
    {
      key: 'proof-set',
      stage: 'finish',
      severity: 'stop',
      words: 'proof-set',
      fills,
      tall: { v: set, as: 'length' },
      worst_mm: set,
      limit: { v: LARGEST_SET, as: 'length' },
      offers: [
        offer('proof-again', 45),
        offer('proof-more-uprights', 120),
        offer('proof-engineer', 240),
        offer('proof-not-ridden', 0),
      ],
      blocks: ['finish/speeds', 'finish/first-use'],
    },
  ];
};
