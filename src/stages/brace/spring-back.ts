import type { Outcome } from '../../quantity/outcome.ts';
import { faceOffset, slopeAtHeight } from '../../ramp/curve.ts';
import type { RailName, Tube } from '../../ramp/design.ts';
import { baseStartX } from '../../ramp/members.ts';
import { curveOf, type RailPlan } from '../../ramp/rail-plan.ts';
import type { RailShape } from '../../ramp/rail-shape.ts';
import type { ForcedRail, Stiff } from '../../reckon/statics/forced-rail.ts';
import { lineLength } from '../../reckon/statics/rail-line.ts';
import { tubeSection } from '../../reckon/steel/section.ts';
import type { SpringBackNow, SpringBackQuestion } from '../heavy/spring-back-answer.ts';
import type { Figure, Finding, Offer } from '../sheet.ts';
import { type Ask, answer, type Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';
import { forcedOf } from './holding.ts';
import { clampFlats } from './let-go.ts';
import { MATTERS, SMOOTH_LIMIT } from './limits.ts';
import { diagonalsOf, KEYS, uprightsOf } from './side.ts';

/** A pull of less than this springs back by nothing that a tape shows, mm. */
const NOTHING = 0.5;
/** A reckoned spring-back is good to a quarter of itself on a hand-made frame (common practice). */
const MODEL_SHARE = 0.25;
const BAYS = 12;
const STATIONS = 9;

const stiff = (tube: Tube, standard: 'AISC' | 'EN'): Stiff | null => {
  const section = tubeSection({ shape: 'rect', ...tube, rule: standard === 'AISC' ? 'AISC' : 'EN10219' });
  return section.ok ? { area_mm2: section.value.area_mm2, inertia_mm4: section.value.inertia_mm4 } : null;
};

/** Back-wall distance where the rail meets the base rail's top, mm: the part before it stands on a pad and takes no part. */
const joinAlong = (s: Situation, plan: RailPlan): number => {
  const c = curveOf(s.ramp.design);
  const slope = slopeAtHeight(c, faceOffset(c, 'rail bottom face'), s.ramp.design.tube.depth_mm);
  return ((slope - plan.start_rad) / plan.turn_rad) * plan.bend_mm;
};

/** How far each clamp pulls, as the survey has the rail, scaled to what was read at the blocks; a plain curl where the survey shows none. */
const pulls = (shape: RailShape, along: readonly number[], most_mm: number): readonly number[] => {
  const first = along[0] ?? 0;
  const span = (along.at(-1) ?? 0) - first || 1;
  const from = shape.offsetAt(first);
  const to = shape.offsetAt(first + span);
  const bowed = along.map(a => from + ((to - from) * (a - first)) / span - shape.offsetAt(a));
  const worst = Math.max(...bowed.map(Math.abs));
  if (worst >= NOTHING) return bowed.map(b => (b * most_mm) / worst);
  return along.map(a => -most_mm * 4 * ((a - first) / span) * (1 - (a - first) / span));
};

/** The question of what a rail does when its clamps come off; null where nothing forced it, or nothing says so yet. */
export const springAsk = (s: Situation, rail: RailName): Ask | null => {
  const { design: d } = s.ramp;
  const plan = s.ramp.plans.get(rail);
  const shape = s.ramp.shapes.get(rail);
  const forced = forcedOf(s, rail);
  const railSection = stiff(d.tube, d.standard);
  const post = stiff(d.post, d.standard);
  if (plan === undefined || shape === undefined || railSection === null || post === null) return null;
  if (forced === null || forced.mm < NOTHING) return null;

  const join = joinAlong(s, plan);
  const reach = plan.toLip_mm - join;
  const line = Array.from({ length: BAYS + 1 }, (_, k) => {
    const { x, y } = shape.bottomAt(join + (k * reach) / BAYS);
    return { x, y };
  });
  const long = lineLength(line);
  const onLine = (along: number): number => Math.min(long, Math.max(0, ((along - join) / reach) * long));
  const clamped = clampFlats(s, rail)
    .map(k => plan.flats_mm[k] ?? 0)
    .filter(along => along > join);
  const uprights = uprightsOf(s, rail);
  if (clamped.length < 2 || uprights.length === 0) return null;
  const amounts = pulls(shape, clamped, forced.mm);
  const start = line[0] ?? { x: baseStartX(d), y: d.tube.depth_mm };
  const end = Math.max(...uprights.map(m => m.x_mm), ...line.map(p => p.x));
  const at = uprights.map(m => onLine(m.along_mm ?? 0));
  const diagonals = diagonalsOf(s, rail).flatMap((m): ForcedRail['diagonals'] => {
    // A diagonal goes by the taller upright's flat (the lip upright has none); its foot stands beside the next one down.
    const k = uprights.findIndex(u => u.flat === m.flat);
    const lower = uprights[k + 1];
    const head_mm = at[k];
    return lower === undefined || head_mm === undefined
      ? []
      : [{ foot_mm: lower.x_mm - start.x, head_mm, section: post, counts: 1 }];
  });
  const input: SpringBackQuestion & { want: 'now' } = {
    want: 'now',
    forced: {
      line,
      rail: { ...railSection, depth_mm: d.tube.depth_mm },
      clamps: clamped.map((along, k) => ({ at_mm: onLine(along), forced_mm: amounts[k] ?? 0 })),
      base: { from: start, to: { x: end, y: start.y }, section: railSection, heldAt_mm: [] },
      toeJoined: true,
      uprights: at.map(at_mm => ({ at_mm, section: post, counts: 1 })),
      diagonals,
      stations_mm: Array.from({ length: STATIONS }, (_, k) => (k * long) / (STATIONS - 1)),
    },
    diagonal: post,
  };
  return { topic: 'spring-back', input };
};

type Spring = Readonly<{ back_mm: number; clamp_N: number }>;

/** What the rail does with every upright and diagonal in and the base rail let go too; null while nothing says how far it was pulled. */
export const springOf = (s: Situation, rail: RailName): Spring | 'pending' | null => {
  const forced = forcedOf(s, rail);
  if (forced === null) return null;
  const ask = springAsk(s, rail);
  if (ask === null) return forced.mm < NOTHING ? { back_mm: 0, clamp_N: 0 } : null;
  const known = answer<Outcome<SpringBackNow>>(s.answers, ask);
  if (known.is === 'pending') return 'pending';
  if (!known.value.ok) return null;
  const { now_mm, clamps } = known.value.value;
  return { back_mm: now_mm, clamp_N: Math.max(...clamps.map(c => Math.abs(c.force_N))) };
};

export const springFigures = (s: Situation, rail: RailName): readonly Figure[] => {
  const spring = springOf(s, rail);
  const figure = (
    id: string,
    as: 'length' | 'force',
    pick: (known: Spring) => number,
    matters: number,
  ): Figure => ({
    id: `${id}@${rail}`,
    kind: 'size',
    as,
    value:
      spring === null
        ? { is: 'unknown', needs: KEYS.forced(rail) }
        : spring === 'pending'
          ? { is: 'pending' }
          : { is: 'exact', v: pick(spring) },
    matters,
  });
  return [
    figure('springs-back', 'length', k => k.back_mm, MATTERS.movement),
    figure('clamp-holds', 'force', k => k.clamp_N, MATTERS.force),
  ];
};

/** More than the rail may be off its line will come back: said while the clamps are still on. */
export const springFindings = (s: Situation, rail: RailName): readonly Finding[] => {
  const spring = springOf(s, rail);
  const limit = SMOOTH_LIMIT[s.ramp.design.tolerance];
  const gone = s.build.surveys.some(
    v => v.rail === rail && v.phase === 'unclamped' && v.closed && !v.retired,
  );
  if (spring === null || spring === 'pending' || spring.back_mm <= limit || gone) return [];
  const back = spring.back_mm;
  const fills = { rail, back: { v: back, as: 'length' }, limit: { v: limit, as: 'length' } } as const;
  const after = (v: number): NonNullable<Offer['after']> => ({ v, as: 'length', within: v <= limit });
  // A linear frame: pulled over by the share that comes back, it comes back to the line.
  const forced = forcedOf(s, rail)?.mm ?? 0;
  const over = forced > back ? (forced * back) / (forced - back) : 0;
  const offers: readonly Offer[] = [
    {
      remedy: 'pull-past-line',
      fills: { ...fills, over: { v: over, as: 'length' } },
      after: after(Math.max(NOTHING, back * MODEL_SHARE)),
      minutes: 30,
      plan: { rail, over_mm: over },
    },
    // Nothing pulled, nothing comes back: the rail keeps the error it was pulled out of.
    { remedy: 'rest-as-it-lies', fills, after: after(forced), minutes: 60, plan: { rail, forced_mm: 0 } },
    { remedy: 'leave-spring', fills, after: after(back), minutes: 0, plan: { rail } },
  ];
  return [
    {
      key: `springs-back@${rail}`,
      stage: 'brace',
      severity: 'watch',
      words: 'springs-back',
      fills,
      tall: { v: back, as: 'length' },
      worst_mm: back,
      limit: { v: limit, as: 'length' },
      offers: sortOffers(offers),
    },
  ];
};
