import type { RailName } from '../../ramp/design.ts';
import type { Fills, Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { worstLaid } from '../slit-errors.ts';
import { sortOffers } from '../sort-offers.ts';
import { SIDES_SHARE } from '../weld-order.ts';
import { halfReading } from './half-reading.ts';
import { SMOOTH_LIMIT, widestGap } from './limits.ts';
import { pullBand, slitNumbers } from './rail-pull.ts';

/** A bend of the slits that two readings cannot tell from none, rad a slit (offsets read to 0.5 mm; derived). */
const NOISE = 0.0003;
/** Pull that narrow beads, each let go cold, save of what is still to be welded, as a share (common practice). */
const NARROW_SAVES = 0.15;
/** Minutes to break a tack, set the gap by a shim and tack it again; to read a rail again (common practice). */
const AGAIN_MINUTES = 6;
const READ_MINUTES = 25;

const thickness = (v: number) => ({ v, as: 'thickness' }) as const;
const angle = (v: number) => ({ v, as: 'angle' }) as const;

const findingFor = (s: Situation, rail: RailName): Finding | null => {
  const plan = s.ramp.plans.get(rail);
  if (plan === undefined || plan.slits.length === 0) return null;
  const reading = halfReading(s, plan);
  if (reading === null) return null;
  const pull = pullBand(plan);
  const told = reading.perSlit_rad;
  const over = told > pull.high * SIDES_SHARE.high;
  const opened = told < -NOISE;
  if (!over && !opened) return null;

  const tube = { ...s.ramp.design.tube, ...s.measured.tubes.get(rail) };
  const lever = tube.depth_mm - tube.wall_mm / 2;
  const numbers = slitNumbers(plan);
  const welded = new Set(reading.welded);
  const rest = numbers.filter(n => !welded.has(n));
  const limit = SMOOTH_LIMIT[s.ramp.design.tolerance];
  const after = (errorOf: (slit: number) => number): NonNullable<Offer['after']> => {
    const v = worstLaid(plan, numbers.map(errorOf));
    return { v, as: 'length', within: v <= limit };
  };
  // What the sides alone have brought is the least a whole weld brings; a rail that opened has lost it in the welded slits only.
  const each = over ? told - pull.likely : told;
  const left = after(n => (over || welded.has(n) ? each : 0));
  const wanted = (each * numbers.length) / Math.max(1, rest.length);
  const gapNow = Math.max(0, ...plan.slits.map(slit => slit.gap_mm));
  const room = Math.max(0, (widestGap(tube.wall_mm) - gapNow) / lever);
  const open = Math.min(wanted, room);
  const fills: Fills = {
    rail,
    count: welded.size,
    left: rest.length,
    told: angle(told),
    size: angle(Math.abs(told)),
    most: angle(pull.high),
    likely: angle(pull.likely),
    gap: thickness(gapNow + lever * open),
    worst: { v: left.v, as: 'length' },
    all: angle(Math.abs(each) * (over ? numbers.length : welded.size)),
  };
  const frozen = { rail, survey: reading.survey, told_rad: told, slits: over ? rest : [...reading.welded] };
  const offers: Offer[] = over
    ? [
        ...(open > 0 && rest.length > 0
          ? [
              {
                remedy: 'half-open-gaps',
                fills,
                minutes: AGAIN_MINUTES * rest.length,
                plan: { ...frozen, gap_mm: gapNow + lever * open },
                after: after(n => (welded.has(n) ? each : each - open)),
              },
            ]
          : []),
        {
          remedy: 'half-narrow-beads',
          fills,
          minutes: 2 * numbers.length,
          plan: frozen,
          after: after(n => (welded.has(n) ? each : each - NARROW_SAVES * told)),
        },
        { remedy: 'half-read-again', fills, minutes: READ_MINUTES, plan: frozen },
        { remedy: 'leave-half', fills, minutes: 0, plan: frozen, after: left },
      ]
    : [
        {
          remedy: 'half-check-tacks',
          fills,
          minutes: AGAIN_MINUTES * Math.ceil(welded.size / 2),
          plan: frozen,
          after: after(() => 0),
        },
        { remedy: 'half-read-again', fills, minutes: READ_MINUTES, plan: frozen },
        { remedy: 'leave-half', fills, minutes: 0, plan: frozen, after: left },
      ];
  return {
    key: `half-off@${rail}:${reading.survey}`,
    stage: 'weld',
    severity: left.within ? 'watch' : 'fix',
    words: over ? 'half-over' : 'half-opened',
    fills,
    tall: { v: told, as: 'angle', sign: true },
    worst_mm: left.v,
    limit: { v: limit, as: 'length' },
    offers: sortOffers(offers),
    blocks: [`weld/sides-rest@${rail}`],
  };
};

/** Rails whose half-way survey says that the welds do other than was foreseen. */
export const halfFindings = (s: Situation): readonly Finding[] =>
  s.ramp.rails.map(rail => findingFor(s, rail)).filter(f => f !== null);

/**
 * Whether a finding of the rail's line is told better by the pull: half way, what the side welds bring of it may be anything from
 * nothing to all, so an even curl within that is no fault yet. Kinks, jumps, bows and the wrong edge stand as they are.
 */
export const toldByPull = (s: Situation, finding: Finding): boolean => {
  const survey = s.build.surveys.find(x => finding.key === `rail-off@${x.rail}#${x.id}`);
  const plan = survey === undefined ? undefined : s.ramp.plans.get(survey.rail);
  if (survey?.phase !== 'half-welded' || plan === undefined || halfReading(s, plan) === null) return false;
  return finding.pending === true || /^rail-(over|under)-curl/.test(finding.words);
};
