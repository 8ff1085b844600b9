import type { System } from '../design.ts';
import { SHEET } from './deck-wanted.ts';
import type { StockKind, StockSection } from './stock-section.ts';

const FOOT = 304.8;

/** Bar lengths a yard sells when nothing else was said, mm: 6 m or 20 ft of tube, short cuts of flat, boards by the half metre or two feet, whole sheets (all common practice). */
const USUAL: Readonly<Record<System, Readonly<Record<Exclude<StockKind, 'plate'>, readonly number[]>>>> = {
  metric: {
    tube: [6000],
    flat: [1000, 2000, 6000],
    board: [2400, 3000, 3600, 4200, 4800],
    sheet: [SHEET.metric.long],
  },
  us: {
    tube: [20 * FOOT],
    flat: [3 * FOOT, 6 * FOOT, 20 * FOOT],
    board: [8 * FOOT, 10 * FOOT, 12 * FOOT, 16 * FOOT],
    sheet: [SHEET.us.long],
  },
};

export const usualBars = (system: System, s: StockSection): readonly number[] =>
  s.kind === 'plate' ? [s.cutTo_mm ?? 0] : USUAL[system][s.kind];

/** Kerf of the saw that cuts the bars when none was read, mm: an abrasive wheel takes 2.5 to 3, 3/32 to 1/8 in [practice]. */
export const SAW_KERF: Readonly<Record<System, number>> = { metric: 3, us: 3.175 };
/** What squaring takes of a bar's ends, mm: 12, or 1/2 in [practice]. Wood and sheet come square enough: nothing. */
export const SQUARING: Readonly<Record<System, number>> = { metric: 12, us: 12.7 };
/** Longest thing that goes into a car when nothing was said, mm: a sheet's length [practice]. */
export const CARRY: Readonly<Record<System, number>> = { metric: SHEET.metric.long, us: SHEET.us.long };
