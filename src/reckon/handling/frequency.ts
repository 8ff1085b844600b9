/** Which column a duration of lifting takes: up to 1, 2 and 8 hours a day. */
type Column = 'hour' | 'two hours' | 'day';

type Row = Readonly<{ per_min: number } & Record<Column, number | readonly [low: number, high: number]>>;

/**
 * Frequency multiplier, DHHS (NIOSH) 94-110, Table 5, in a public transcription (rev. 9/2021) [found]. Where two stand,
 * the first is for hands below 75 cm at the start of the lift, the second from there up.
 */
const TABLE: readonly Row[] = [
  { per_min: 0.2, hour: 1, 'two hours': 0.95, day: 0.85 },
  { per_min: 0.5, hour: 0.97, 'two hours': 0.92, day: 0.81 },
  { per_min: 1, hour: 0.94, 'two hours': 0.88, day: 0.75 },
  { per_min: 2, hour: 0.91, 'two hours': 0.84, day: 0.65 },
  { per_min: 3, hour: 0.88, 'two hours': 0.79, day: 0.55 },
  { per_min: 4, hour: 0.84, 'two hours': 0.72, day: 0.45 },
  { per_min: 5, hour: 0.8, 'two hours': 0.6, day: 0.35 },
  { per_min: 6, hour: 0.75, 'two hours': 0.5, day: 0.27 },
  { per_min: 7, hour: 0.7, 'two hours': 0.42, day: 0.22 },
  { per_min: 8, hour: 0.6, 'two hours': 0.35, day: 0.18 },
  { per_min: 9, hour: 0.52, 'two hours': 0.3, day: [0, 0.15] },
  { per_min: 10, hour: 0.45, 'two hours': 0.26, day: [0, 0.13] },
  { per_min: 11, hour: 0.41, 'two hours': [0, 0.23], day: 0 },
  { per_min: 12, hour: 0.37, 'two hours': [0, 0.21], day: 0 },
  { per_min: 13, hour: [0, 0.34], 'two hours': 0, day: 0 },
  { per_min: 14, hour: [0, 0.31], 'two hours': 0, day: 0 },
  { per_min: 15, hour: [0, 0.28], 'two hours': 0, day: 0 },
];

/** Hands from here up take the second figure of a pair, mm. */
const HIGH_HANDS_mm = 750;

/**
 * The frequency multiplier, 0 to 1; straight between the table's rows, as its own text has it.
 * @param per_min lifts a minute; rarer than one in five minutes counts as that, more than 15 as none allowed
 * @param hours of lifting in a day, at most 8
 * @param hands_mm height of the hands at the start of the lift
 */
export const frequencyMultiplier = (per_min: number, hours: number, hands_mm: number): number => {
  const column: Column = hours <= 1 ? 'hour' : hours <= 2 ? 'two hours' : 'day';
  const figure = (row: Row): number => {
    const one = row[column];
    return typeof one === 'number' ? one : one[hands_mm < HIGH_HANDS_mm ? 0 : 1];
  };
  const next = TABLE.findIndex(row => row.per_min >= per_min);
  const [below, above] = [TABLE[Math.max(0, next - 1)], TABLE[next]];
  if (above === undefined || below === undefined) return 0;
  if (next === 0) return figure(above);
  const share = (per_min - below.per_min) / (above.per_min - below.per_min);
  return figure(below) + (figure(above) - figure(below)) * share;
};
