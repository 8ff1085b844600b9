/** The two spectacles through which a person reads and writes. Never stored with a number, never a rule. */
export type System = 'metric' | 'us';

/**
 * What a number is. Inside, each is a plain number in one unit:
 * length, slit, size, thickness mm · angle rad · speed m/s · mass kg · force N · moment N·mm · stress MPa · temperature °C ·
 * time s · area m² · volume, gas l · distance, reach m · count and ratio 1 · percent % · current A · tension V (volts) ·
 * flow l/min · feed m/min · travel mm/s.
 *
 * `length` is read and rounded as a tape has it (0.5 mm, 1/16 in), `slit` as a slit mark has it (0.1 mm, 1/32 in),
 * `gas` as a bottle's label has it (l, cubic feet), other `volume` in l and gal,
 * `thickness` as a caliper has it (0.01 mm, 0.001 in), a room, a lead and other `distance` in m and ft, and a `reach`, what is
 * beside the ramp and is measured with its tape (a flight, a fall, a landing), in m and in inches.
 */
export type Quantity =
  | 'length'
  | 'slit'
  | 'thickness'
  | 'angle'
  | 'speed'
  | 'mass'
  | 'force'
  | 'moment'
  | 'stress'
  | 'temperature'
  | 'time'
  | 'area'
  | 'volume'
  | 'gas'
  | 'distance'
  | 'reach'
  | 'count'
  | 'ratio'
  | 'percent'
  | 'current'
  | 'tension'
  | 'flow'
  | 'feed'
  | 'travel';
