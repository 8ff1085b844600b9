import type { RailAnswer } from '../heavy/rail-answer.ts';
import { angle, length, listed, signed } from '../remedies/remedy.ts';
import { leverOf } from '../remedies/slit-limits.ts';
import type { Fills, Finding } from '../sheet.ts';
import { causeName, odds } from './chances.ts';
import type { RailReading } from './reading.ts';

/** What a diagnosis says: the key of its words under `findings`, their fills, the number in tall digits. */
export type CauseWords = Readonly<{ words: string; fills: Fills; tall: NonNullable<Finding['tall']> }>;

type Variant = '' | '-which' | '-or';

/** Number of the station nearest to a place along the line. */
const stationAt = (r: RailReading, at_mm: number): number => {
  const k = r.stations_mm.reduce(
    (best, s, j) => (Math.abs(s - at_mm) < Math.abs((r.stations_mm[best] ?? 0) - at_mm) ? j : best),
    0,
  );
  return r.numbers[k] ?? k + 1;
};

/** What would settle the doubt that is left: an angle gauge on flats when only the slit is open, stations when the cause is. */
const doubt = (r: RailReading, a: RailAnswer): { variant: Variant; fills: Fills } => {
  const rival = a.rivals[0];
  if (rival === undefined) return { variant: '', fills: {} };
  const [of, all] = odds(rival.sure);
  if (rival.cause === a.cause) {
    const which = a.notes.find(n => n.is === 'which-slit')?.slits ?? [];
    const other = rival.odd_slits.find(o => a.odd_slits.every(mine => mine.slit !== o.slit))?.slit;
    if (which.length === 0 || other === undefined) return { variant: '', fills: {} };
    const flats = [...new Set(which.flatMap(slit => [slit - 1, slit]))].sort((x, y) => x - y);
    return { variant: '-which', fills: { other, flats: listed(flats) } };
  }
  const at = a.notes.flatMap(n => (n.is === 'measure' ? n.at_mm.map(mm => stationAt(r, mm)) : []));
  if (at.length === 0) return { variant: '', fills: {} };
  return {
    variant: '-or',
    fills: {
      rival: causeName(rival.cause),
      'rival-of': of,
      'rival-in': all,
      stations: listed([...new Set(at)]),
    },
  };
};

/** Words for a reading, a jump, a bump, or bends that no one cause explains. */
const unclear = (r: RailReading, a: RailAnswer): CauseWords => {
  const worst = { v: a.worst_mm, as: 'length' } as const;
  for (const note of a.notes) {
    switch (note.is) {
      case 'read-again':
        return {
          words: 'rail-outlier',
          fills: {
            odd: r.numbers[note.station - 1] ?? note.station,
            read: signed(note.read_mm),
            neighbours: signed(note.neighbours_mm),
            believed: length(a.believed_mm),
          },
          tall: { v: note.read_mm, as: 'length', sign: true },
        };
      case 'jump':
        return {
          words: 'rail-jump',
          fills: { odd: r.numbers[note.station - 1] ?? note.station, by: signed(note.by_mm) },
          tall: { v: note.by_mm, as: 'length', sign: true },
        };
      case 'swing':
        return {
          words: 'rail-jump',
          fills: { odd: r.numbers[note.station - 1] ?? note.station, by: signed(note.step_mm) },
          tall: { v: note.step_mm, as: 'length', sign: true },
        };
      case 'bump':
        return {
          words: 'rail-bump',
          fills: { odd: stationAt(r, note.at_mm), by: signed(note.by_mm) },
          tall: { v: note.by_mm, as: 'length', sign: true },
        };
      case 'uneven': {
        const [first, middle, last] = note.thirds_rad.map(v => ({ v, as: 'angle', sign: true }) as const);
        return {
          words: 'rail-uneven',
          fills: { first: first ?? 0, middle: middle ?? 0, last: last ?? 0 },
          tall: worst,
        };
      }
      default:
    }
  }
  const rival = a.rivals[0];
  const at = a.notes.flatMap(n => (n.is === 'measure' ? n.at_mm.map(mm => stationAt(r, mm)) : []));
  if (rival === undefined || at.length === 0) return { words: 'rail-unclear', fills: {}, tall: worst };
  const [of, all] = odds(rival.sure);
  return {
    words: 'rail-unclear-or',
    fills: {
      rival: causeName(rival.cause),
      'rival-of': of,
      'rival-in': all,
      stations: listed([...new Set(at)]),
    },
    tall: worst,
  };
};

const SLIT = { over: 'rail-slit-over', under: 'rail-slit-under' } as const;

const slitWords = (r: RailReading, a: RailAnswer, variant: Variant): CauseWords => {
  const [first, second] = a.odd_slits;
  const turn = first?.turn_rad ?? 0;
  const tall = { v: Math.abs(turn), as: 'angle' } as const;
  const fills = {
    slit: first?.slit ?? 0,
    turn: angle(Math.abs(turn)),
    kerf: { v: Math.abs(turn) * leverOf(r.tube), as: 'slit' } as const,
  };
  if (a.cause === 'two slits') {
    const both = {
      ...fills,
      turn: { v: turn, as: 'angle', sign: true } as const,
      second: second?.slit ?? 0,
      'second-turn': { v: second?.turn_rad ?? 0, as: 'angle', sign: true } as const,
    };
    return { words: `rail-two-slits${variant}`, fills: both, tall: { v: turn, as: 'angle', sign: true } };
  }
  if (a.missed !== null) return { words: `rail-slit-missed${variant}`, fills, tall };
  const all = a.cause === 'one slit' ? '' : '-and-all';
  return { words: `${turn >= 0 ? SLIT.over : SLIT.under}${all}${variant}`, fills, tall };
};

/** How far each weld pulled, as a cold rail tells it, against what was counted on. */
const pullFills = (r: RailReading, a: RailAnswer): Fills => ({
  counted: { v: r.plan.pull.rad, as: 'angle', step: 0.01 },
  shown: { v: Math.max(0, r.plan.pull.rad + a.even_rad), as: 'angle', step: 0.01 },
});

/**
 * The words of a rail's diagnosis. Null when it says that nothing is wrong.
 * @param limit_mm how far a rail may be off: within it when laid well, only its lie is said
 */
export const causeWords = (r: RailReading, a: RailAnswer, limit_mm: number): CauseWords | null => {
  const total = a.even_rad * r.plan.slits.length;
  const [of, all] = odds(a.sure);
  const { variant, fills: doubted } = doubt(r, a);
  const common = {
    of,
    in: all,
    even: { v: a.even_rad, as: 'angle', sign: true, step: 0.01 } as const,
    total: { v: total, as: 'angle', sign: true } as const,
    ...pullFills(r, a),
    ...doubted,
  };
  const withCommon = (w: CauseWords): CauseWords => ({ ...w, fills: { ...common, ...w.fills } });
  const smooth = a.cause === 'over-curl' || a.cause === 'under-curl' || a.cause === 'laid askew';
  if (smooth && a.worst_mm <= limit_mm && r.worst_mm > limit_mm)
    return withCommon({ words: 'rail-lies-off', fills: {}, tall: { v: r.worst_mm, as: 'length' } });
  switch (a.cause) {
    case 'on the line':
    case 'wrong edge':
      return null;
    case 'unclear':
      return withCommon(unclear(r, a));
    case 'laid askew':
      return withCommon({
        words: `rail-askew${variant === '-or' ? '-or' : ''}`,
        fills: {},
        tall: { v: r.worst_mm, as: 'length' },
      });
    case 'over-curl':
    case 'under-curl': {
      const cold = r.survey.phase === 'cold' ? 'cold-' : '';
      return withCommon({
        words: `rail-${cold}${a.cause}${variant === '-or' ? '-or' : ''}`,
        fills: {},
        tall: { v: Math.abs(total), as: 'angle' },
      });
    }
    default:
      return withCommon(slitWords(r, a, variant));
  }
};
