/** Digits kept where a number is said in a sentence; enough for 0.01 mm on a kilometre. */
const DIGITS = 8;

/**
 * A number as a sentence says it: eight digits, no trailing zeros, no exponent for anything a bench meets.
 * `way` rounds a limit to its safe side, so that doing what the sentence advises is accepted.
 */
export const saidNumber = (value: number, way: 'nearest' | 'down' | 'up' = 'nearest'): string => {
  const nearest = Number(value.toPrecision(DIGITS));
  const missed = (way === 'down' && nearest > value) || (way === 'up' && nearest < value);
  const step = 10 ** (Math.floor(Math.log10(Math.abs(nearest) || 1)) - DIGITS + 1);
  const safe = missed ? Number((nearest + (way === 'up' ? step : -step)).toPrecision(DIGITS)) : nearest;
  return Math.abs(safe) >= 1e-6 || safe === 0 ? fixedText(safe) : String(safe);
};

const fixedText = (value: number): string => {
  if (Math.abs(value) >= 1e15) return String(value);
  const places = Math.max(0, DIGITS - 1 - Math.floor(Math.log10(Math.abs(value) || 1)));
  const text = value.toFixed(Math.min(places, 14));
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
};
