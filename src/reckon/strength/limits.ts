import { LEAST_ANCHORS } from './anchors.ts';
import type { RideFacts } from './ride-facts.ts';

/** How a limit is broken: what it is and what it may be, in the unit of the rule; 1 against 0 where it is yes or no. */
type Broken = Readonly<{ value: number; limit: number }>;

export type LimitRule = Readonly<{
  code: string;
  severity: 'refuse' | 'warn';
  /** No acknowledgement gets past it. */
  never?: true;
  unit: 'rad' | 'times the weight' | 'm' | 'm/s' | 'mm' | 'share' | 'count' | 'yes or no';
  /** All of them are judgement, and are shown as such. */
  mark: 'judgement';
  reason: string;
  broken: (facts: RideFacts) => Broken | null;
}>;

/** One limit that a ride breaks. */
export type Verdict = Readonly<
  Pick<LimitRule, 'code' | 'severity' | 'unit' | 'mark' | 'reason'> & Broken & { never?: true }
>;

const over = (value: number | undefined, limit: number): Broken | null =>
  value !== undefined && value > limit ? { value, limit } : null;
const under = (value: number | undefined, limit: number): Broken | null =>
  value !== undefined && value < limit ? { value, limit } : null;
const yes = (is: boolean | undefined): Broken | null => (is === true ? { value: 1, limit: 0 } : null);

const rule = (
  code: string,
  severity: LimitRule['severity'],
  unit: LimitRule['unit'],
  reason: string,
  broken: LimitRule['broken'],
): LimitRule => ({ code, severity, unit, mark: 'judgement', reason, broken });

const never = (one: LimitRule): LimitRule => ({ ...one, never: true });

const STEEPEST_NOVICE = (35 * Math.PI) / 180;
/** 3 km/h. */
const NARROWEST_WINDOW = 3 / 3.6;

/**
 * What is refused of a ride, and what is warned of: limits of ours with their reasons, never a standard's approval. The first of
 * them have no way round; the other refusals take a typed acknowledgement that names the danger.
 */
export const RIDE_LIMIT_RULES: readonly LimitRule[] = [
  never(
    rule(
      'use-refused',
      'refuse',
      'count',
      'Other people, other loads or a public depend on it: that is work for an engineer and its own standard.',
      ({ uses }) => over(uses?.length, 0),
    ),
  ),
  never(
    rule(
      'crack',
      'refuse',
      'yes or no',
      'A crack grows with every ride, and gives way at once.',
      ({ crack }) => yes(crack),
    ),
  ),
  never(
    rule(
      'towed',
      'refuse',
      'yes or no',
      'A tow makes speeds that nothing here was reckoned for.',
      ({ towed }) => yes(towed),
    ),
  ),
  never(
    rule(
      'anchors-few',
      'refuse',
      'count',
      'A rider pushes a light ramp forward and lifts its entry edge: it slides and tips unless four anchors hold it.',
      ({ anchors }) => under(anchors, LEAST_ANCHORS),
    ),
  ),
  never(
    rule(
      'anchors-entry',
      'refuse',
      'count',
      'The entry edge lifts as the rider loads the lip: two of the anchors belong there.',
      ({ entryAnchors }) => under(entryAnchors, LEAST_ANCHORS / 2),
    ),
  ),
  never(
    rule('landing-water', 'refuse', 'yes or no', 'Who is stunned in water drowns.', ({ landing }) =>
      yes(landing === 'water'),
    ),
  ),
  never(
    rule('landing-people', 'refuse', 'yes or no', 'Who falls short lands on them.', ({ landing }) =>
      yes(landing === 'people or vehicles'),
    ),
  ),
  rule(
    'anchors-not-pulled',
    'refuse',
    'yes or no',
    'What an anchor holds in this ground is known when it has been pulled to one and a half times its need.',
    ({ pulled }) => yes(pulled === undefined ? undefined : !pulled),
  ),
  rule('landing-edge', 'refuse', 'yes or no', 'Who falls short hits the edge.', ({ landing }) =>
    yes(landing === 'hard edge'),
  ),
  rule(
    'not-inspected',
    'refuse',
    'yes or no',
    'Paint hides cracks, and a bad weld shows before it is ridden or not at all.',
    ({ inspected }) => yes(inspected === undefined ? undefined : !inspected),
  ),
  rule(
    'not-proven',
    'refuse',
    'yes or no',
    'A dead load of one and a quarter times the ride’s finds a weak weld before a rider does.',
    ({ proven }) => yes(proven === undefined ? undefined : !proven),
  ),
  rule(
    'anchors-short',
    'warn',
    'count',
    'With so few of them one would have to hold more than a stake is counted for in this ground.',
    ({ anchors, anchorsWanted }) =>
      anchors !== undefined && anchors < LEAST_ANCHORS ? null : under(anchors, anchorsWanted ?? 0),
  ),
  rule(
    'anchors-none-hold',
    'warn',
    'yes or no',
    'Not even eight stakes at each end are counted to hold this ride in this ground.',
    ({ anchorable }) => yes(anchorable === undefined ? undefined : !anchorable),
  ),
  rule(
    'over-used',
    'refuse',
    'share',
    'A part of the frame would bear more than it is allowed. Change it, or stop and ask an engineer.',
    ({ utilisation }) => over(utilisation, 1),
  ),
  rule(
    'deck-over-used',
    'refuse',
    'share',
    'A board, the sheet or the entry plate would bear more than it is allowed.',
    ({ deck_utilisation }) => over(deck_utilisation, 1),
  ),
  rule(
    'gap-first',
    'refuse',
    'yes or no',
    'A filled table forgives a jump that is too short, a gap does not: the table comes first.',
    ({ landing, first }) => yes(landing === 'gap' && first === true),
  ),
  rule(
    'steep-novice',
    'refuse',
    'rad',
    'Past 35° a lip throws a novice backwards.',
    ({ novice, exit_rad }) => (novice === true ? over(exit_rad, STEEPEST_NOVICE) : null),
  ),
  rule(
    'load-novice',
    'refuse',
    'times the weight',
    'Past three times the weight a novice’s legs fold.',
    ({ novice, load_factor }) => (novice === true ? over(load_factor, 3) : null),
  ),
  rule(
    'flat-from-high',
    'refuse',
    'm',
    'On flat ground the fall is as high as the highest point of the flight, whatever the speed.',
    ({ landing, apex_m }) => (landing === 'flat ground' ? over(apex_m, 1) : null),
  ),
  rule(
    'fall-stop',
    'refuse',
    'm',
    'A fall of 1.5 m is the most that skate elements usually have and snow-park designs take.',
    ({ fall_m }) => over(fall_m, 1.5),
  ),
  rule(
    'window-narrow',
    'refuse',
    'm/s',
    'A telephone or a cheap computer reads to 1 or 2 km/h: a window of less than 3 km/h cannot be hit.',
    ({ window_m_s }) => under(window_m_s, NARROWEST_WINDOW),
  ),
  rule(
    'tight-and-fast',
    'refuse',
    'm/s',
    'A curve of less than 2 m that goes on to the lip throws the rider into a turn at more than 6 m/s.',
    ({ radius_m, straight_m, speed_m_s }) =>
      radius_m !== undefined && radius_m < 2 && straight_m === 0 ? over(speed_m_s, 6) : null,
  ),
  rule(
    'speed-cap',
    'refuse',
    'm/s',
    'On a curve this tight the load of a stiff rider is not known: the speed is capped where three times the weight is reached.',
    ({ speed_m_s, speed_cap_m_s }) =>
      speed_cap_m_s === null || speed_cap_m_s === undefined ? null : over(speed_m_s, speed_cap_m_s),
  ),
  rule(
    'child-alone',
    'refuse',
    'yes or no',
    'A child that is hurt needs an adult and a telephone beside it.',
    ({ children, adult }) => yes(children === true && adult === false),
  ),
  rule(
    'load-hard',
    'warn',
    'times the weight',
    'More than four times the weight is more than expert riders choose.',
    ({ load_factor }) => over(load_factor, 4),
  ),
  rule(
    'load-novice-band',
    'warn',
    'times the weight',
    'Novices ride up to about twice the weight with comfort, practised riders three, experts four.',
    ({ novice, load_factor }) =>
      novice === true && load_factor !== undefined && load_factor <= 3 ? over(load_factor, 2) : null,
  ),
  rule(
    'load-engineer',
    'warn',
    'times the weight',
    'Past three times the weight an engineer looks at the frame, and a coded welder does the slits.',
    ({ load_factor }) => over(load_factor, 3),
  ),
  rule(
    'drop-engineer',
    'warn',
    'm',
    'Past a drop of 1 m an engineer looks at the frame, and a coded welder does the slits.',
    ({ drop_m }) => over(drop_m, 1),
  ),
  rule(
    'others-children',
    'warn',
    'yes or no',
    'For anyone else’s children an engineer looks at the frame, and a coded welder does the slits.',
    ({ othersChildren }) => yes(othersChildren),
  ),
  rule(
    'nearly-used',
    'warn',
    'share',
    'Past four fifths of what is allowed somebody competent should look at it.',
    ({ utilisation }) => (utilisation !== undefined && utilisation <= 1 ? over(utilisation, 0.8) : null),
  ),
  rule('fall-hard', 'warn', 'm', 'A landing as hard as a fall from 0.75 m hurts.', ({ fall_m }) =>
    fall_m !== undefined && fall_m <= 1.5 ? over(fall_m, 0.75) : null,
  ),
  rule('fall-felt', 'warn', 'm', 'A landing as hard as a fall from 0.3 m is felt.', ({ fall_m }) =>
    fall_m !== undefined && fall_m <= 0.75 ? over(fall_m, 0.3) : null,
  ),
  rule(
    'lip-curved',
    'warn',
    'm',
    'A straight last part as long as the wheelbase makes the take-off the same each time.',
    ({ straight_m, wheelbase_m }) => (wheelbase_m === undefined ? null : under(straight_m, wheelbase_m)),
  ),
  rule('narrow', 'warn', 'mm', 'Straight jumps want 1.2 m of width.', ({ width_mm }) =>
    under(width_mm, 1200),
  ),
  rule(
    'guard',
    'warn',
    'm',
    'A place to stand more than 0.75 m up wants a guard 1.1 to 1.2 m high.',
    ({ stand_m }) => over(stand_m, 0.75),
  ),
  rule('clear-behind', 'warn', 'm', 'Who overshoots needs 5 m behind the landing.', ({ clear_behind_m }) =>
    under(clear_behind_m, 5),
  ),
  rule('clear-beside', 'warn', 'm', 'Who falls off the side needs 2 m all round.', ({ clear_beside_m }) =>
    under(clear_beside_m, 2),
  ),
];

/**
 * The limits that a ride breaks, refusals without a way round first, then the others, then warnings. What is not known
 * yet is not judged: an empty list is no approval.
 */
export const rideVerdicts = (facts: RideFacts): readonly Verdict[] =>
  RIDE_LIMIT_RULES.flatMap(({ broken, ...rest }): Verdict[] => {
    const how = broken(facts);
    return how === null ? [] : [{ ...rest, ...how }];
  }).sort((a, b) => rank(a) - rank(b));

const rank = ({ severity, never: no }: Verdict): number => (severity === 'warn' ? 2 : no === true ? 0 : 1);
