import { PACKED, STEP } from '../rail-findings/limits.ts';
import { largest, onBackWall } from '../rail-findings/reading.ts';
import { frozenRows, frozenText, type Injecting, length, type Offering, offer, railOf } from './remedy.ts';
import { afterLetGo } from './turns.ts';

/** Cutting and screwing a row of packers (common practice). */
const MINUTES = 25;
/** Sheet that packers are cut from, mm: half of it is the most a packer is off. */
const SHEET = 1;
/** Lower than this is taken up by a screw, mm (common practice). */
const LEAST = 0.5;

type Packer = Readonly<{ station: number; at_mm: number; height_mm: number }>;

/**
 * The rail stays as it lies and the deck is packed up to its highest place. The bench's own default below 5 mm of smooth
 * error; past that, or with a step that a wheel feels, the rail stays as far off as it is.
 */
export const offerPackers: Offering = c => {
  const { r } = c;
  // A reading that is not believed is packed to by nobody.
  const doubted = (c.answer?.doubted_station ?? 0) - 1;
  const believed = r.lies_mm.filter((_, j) => j !== doubted);
  const worst = largest(believed);
  const top = Math.max(...believed);
  const heights = r.lies_mm.map(
    (o, j): Packer => ({
      station: r.numbers[j] ?? j + 1,
      at_mm: onBackWall(r.plan, r.line, r.stations_mm[j] ?? 0),
      height_mm: Math.round((top - o) * 2) / 2,
    }),
  );
  const packers = heights.filter((p, j) => j !== doubted && p.height_mm >= LEAST);
  if (packers.length === 0) return [];
  const smooth = worst <= PACKED && r.step_mm <= STEP + r.survey.read_to_mm;
  return [
    offer(
      c,
      'packers',
      MINUTES,
      smooth ? SHEET / 2 : worst,
      {
        count: packers.length,
        most: length(Math.max(...packers.map(p => p.height_mm))),
        least: length(Math.min(...packers.map(p => p.height_mm))),
      },
      { packers },
    ),
  ];
};

/** Heights are written on the rail once its side frame stands by itself; before that they would still change. */
export const packerSteps: Injecting = (s, chosen) => {
  const on = railOf(s, chosen);
  const packers = frozenRows<Packer>(chosen, 'packers', ['station', 'at_mm', 'height_mm']);
  const phase = frozenText(chosen, 'phase');
  if (on === null || packers.length === 0 || (phase !== 'braced' && phase !== 'unclamped')) return [];
  const key = `brace/packers@${chosen.entry}`;
  return [
    {
      key,
      stage: 'brace',
      words: 'packers',
      fills: { rail: on.rail, count: packers.length },
      turn: afterLetGo(on.index),
      needs: [],
      uses: [],
      line: { face: 'rail top face', rail: on.rail },
      items: packers.map(p => ({
        key: `${key}#${p.station}`,
        name: String(p.station),
        value: length(p.at_mm),
        second: length(p.height_mm),
      })),
      minutes: [15, 30],
    },
  ];
};
