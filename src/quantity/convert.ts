import { type Unit, type UnitCode, unitOf } from './units.ts';

/**
 * top ÷ bottom of one unit in another unit of the same kind. All factors meet in one division of whole numbers, so
 * that round numbers stay round: 1.005 m, as 1005/1000, is 1005 mm and not 1004.9999…. Asking across kinds is a bug.
 */
export const convertFraction = (top: number, bottom: number, from: UnitCode, to: UnitCode): number => {
  if (from === to) return top / bottom;
  const a: Unit = unitOf(from);
  const b: Unit = unitOf(to);
  if (a.kind !== b.kind) throw new Error(`${from} is no unit of ${b.kind}`);
  const shifted = top + (a.shift ?? 0) * bottom;
  return (shifted * (a.times * b.per)) / (bottom * (a.per * b.times)) - (b.shift ?? 0);
};

/** A number of one unit in another unit of the same kind. */
export const convert = (value: number, from: UnitCode, to: UnitCode): number =>
  convertFraction(value, 1, from, to);

/** How much of `to` one step of `from` is, without any shift of a thermometer's zero: 1 °F is 0.556 °C of difference. */
export const convertStep = (step: number, from: UnitCode, to: UnitCode): number => {
  const a: Unit = unitOf(from);
  const b: Unit = unitOf(to);
  return (step * (a.times * b.per)) / (a.per * b.times);
};
