import { PACKED, STEP } from '../rail-findings/limits.ts';
import { between, onBackWall, type RailReading, stationsOnWall } from '../rail-findings/reading.ts';
import type { Offer } from '../sheet.ts';
import { length, offer, type RailCase } from './remedy.ts';

const MINUTES = 25;
/** Sheet that packers are cut from, mm: half of it is the most a packer is off. */
const SHEET = 1;
const LEAST = 0.5;

type Packer = Readonly<{ rail: string; station: number; at_mm: number; height_mm: number }>;

/** At each station the lower rail is packed up to the other. */
export const offerPairPackers = (
  c: RailCase,
  other: RailReading,
  worst_mm: number,
  step_mm: number,
): readonly Offer[] => {
  const { r } = c;
  const onOther = stationsOnWall(other);
  const packers = r.lies_mm.flatMap((lies, j): Packer[] => {
    const at_mm = onBackWall(r.plan, r.line, r.stations_mm[j] ?? 0);
    const apart = lies - between(onOther, other.lies_mm, at_mm);
    const height_mm = Math.round(Math.abs(apart) * 2) / 2;
    const rail = apart < 0 ? r.rail : other.rail;
    return height_mm < LEAST ? [] : [{ rail, station: r.numbers[j] ?? j + 1, at_mm, height_mm }];
  });
  if (packers.length === 0) return [];
  const smooth = worst_mm <= PACKED && step_mm <= STEP + r.survey.read_to_mm;
  return [
    offer(
      c,
      'packers-pair',
      MINUTES,
      smooth ? SHEET / 2 : worst_mm,
      { other: other.rail, count: packers.length, most: length(Math.max(...packers.map(p => p.height_mm))) },
      { pair: `${r.rail}-${other.rail}`, packers },
    ),
  ];
};
