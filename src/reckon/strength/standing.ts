import { good, type Outcome, refuse } from '../../quantity/outcome.ts';

/** Safety wanted of a frame that stands on its own, against sliding and tipping [practice]. */
export const STANDING_SAFETY = 1.5;

/** The rider at one place of the deck, on its middle line. */
export type RiderPlace = Readonly<{
  /** From the entry edge, and above the ground. */
  x_mm: number;
  y_mm: number;
  slope_rad: number;
  /** Square to the deck. */
  normal_N: number;
}>;

export type StandingInput = Readonly<{
  places: readonly RiderPlace[];
  /** Share of the normal force that pushes along the deck, forward, and across it. */
  along_share: number;
  side_share: number;
  /** Of the ramp with its deck. */
  weight_N: number;
  /** Its centre of mass from the entry edge. */
  centre_x_mm: number;
  /** The feet nearest the entry, and the last ones behind or under the lip, from the entry edge. */
  front_x_mm: number;
  rear_x_mm: number;
  /** Between the outer feet of left and right. */
  track_mm: number;
  /** Of the deck, outside to outside: a wheel may stand on its very edge. */
  deck_mm: number;
  friction: number;
}>;

/** The worst of one way to lose its place. */
export type StandingCase = Readonly<{
  /** What resists over what pushes; 1.5 wanted. Null where nothing pushes. */
  safety: number | null;
  /** Place of the rider, by its number. */
  place: number;
}>;

export type Standing = Readonly<{
  slide: StandingCase;
  sideways: StandingCase;
  tipForward: StandingCase;
  tipSideways: StandingCase;
  /** What anchors must hold so that each is 1.5: along, across, up at the entry edge, up along one side. N. */
  held: Readonly<{ slide_N: number; sideways_N: number; lift_N: number; sideLift_N: number }>;
  /** It would stay without anchors by these numbers. Anchors are wanted all the same. */
  staysAlone: boolean;
}>;

type Case = Readonly<{ pushes: number; resists: number; short: number }>;

/** Pushes and what resists them; the shortfall is divided by the lever it is made good at. */
const caseOf = (pushes: number, resists: number, lever = 1): Case => ({
  pushes,
  resists,
  short: Math.max(0, STANDING_SAFETY * pushes - resists) / lever,
});

const safetyOf = ({ pushes, resists }: Case): number =>
  pushes > 0 ? resists / pushes : Number.POSITIVE_INFINITY;

/**
 * Whether a ramp stays where it stands with the rider at any place of its deck: sliding forward and sideways, tipping forward about its
 * last feet, tipping over its side. Static, on the safe side of a push of a tenth of a second.
 * Sliding, μ(W + V)/H ≥ 1.5; tipping, [W(xr − xg) + V(xr − x)]/(H y) ≥ 1.5, V counting against it beyond the feet [statics].
 * Refuses an empty list, and numbers that no ramp has.
 */
export const standing = (input: StandingInput): Outcome<Standing> => {
  const fault = inputFault(input);
  if (fault !== undefined) return fault;
  const { weight_N, centre_x_mm, front_x_mm, rear_x_mm, track_mm, deck_mm, friction } = input;
  const overhang = (deck_mm - track_mm) / 2;
  const cases = input.places.map(({ x_mm, y_mm, slope_rad, normal_N }) => {
    const [sin, cos] = [Math.sin(slope_rad), Math.cos(slope_rad)];
    const along = input.along_share * normal_N;
    const across = input.side_share * normal_N;
    const forward = normal_N * sin + along * cos;
    const down = normal_N * cos - along * sin;
    const grip = friction * Math.max(0, weight_N + down);
    const behind = down * (rear_x_mm - x_mm);
    const aside = down * overhang;
    return {
      slide: caseOf(forward, grip),
      sideways: caseOf(across, grip),
      tipForward: caseOf(
        forward * y_mm + Math.max(0, -behind),
        weight_N * (rear_x_mm - centre_x_mm) + Math.max(0, behind),
        rear_x_mm - front_x_mm,
      ),
      tipSideways: caseOf(
        across * y_mm + Math.max(0, aside),
        (weight_N * track_mm) / 2 + Math.max(0, -aside),
        track_mm,
      ),
    };
  });
  const worst = (name: keyof (typeof cases)[number]): StandingCase => {
    const place = cases.reduce(
      (least, one, k) => (safetyOf(one[name]) < safetyOf(cases[least]![name]) ? k : least),
      0,
    );
    const safety = safetyOf(cases[place]![name]);
    return { safety: Number.isFinite(safety) ? safety : null, place };
  };
  const short = (name: keyof (typeof cases)[number]) => Math.max(...cases.map(one => one[name].short));
  const held = {
    slide_N: short('slide'),
    sideways_N: short('sideways'),
    lift_N: short('tipForward'),
    sideLift_N: short('tipSideways'),
  };
  return good({
    slide: worst('slide'),
    sideways: worst('sideways'),
    tipForward: worst('tipForward'),
    tipSideways: worst('tipSideways'),
    held,
    staysAlone: Object.values(held).every(force => force === 0),
  });
};

const inputFault = (input: StandingInput): ReturnType<typeof refuse> | undefined => {
  if (input.places.length === 0)
    return refuse('missing-field', 'places', 'The rider is nowhere.', 'one place or more');
  const ranges: readonly (readonly [field: string, value: number, least: number, most: number])[] = [
    ...input.places.flatMap(({ x_mm, y_mm, slope_rad, normal_N }, k) => [
      [`places.${k}.x_mm`, x_mm, -10_000, 100_000] as const,
      [`places.${k}.y_mm`, y_mm, 0, 20_000] as const,
      [`places.${k}.slope_rad`, slope_rad, -Math.PI / 2, Math.PI / 2] as const,
      [`places.${k}.normal_N`, normal_N, 0, 1e6] as const,
    ]),
    ['along_share', input.along_share, 0, 1],
    ['side_share', input.side_share, 0, 1],
    ['weight_N', input.weight_N, 1, 1e6],
    ['centre_x_mm', input.centre_x_mm, 0, 100_000],
    ['front_x_mm', input.front_x_mm, -10_000, 100_000],
    ['rear_x_mm', input.rear_x_mm, input.front_x_mm + 100, 100_000],
    ['track_mm', input.track_mm, 50, 20_000],
    ['deck_mm', input.deck_mm, 50, 20_000],
    ['friction', input.friction, 0, 5],
  ];
  const wrong = ranges.find(([, value, least, most]) => !(value >= least && value <= most));
  return (
    wrong && refuse('out-of-range', wrong[0], `${wrong[1]} will not do here.`, `${wrong[2]} to ${wrong[3]}`)
  );
};
