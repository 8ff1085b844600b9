/**
 * So far below half a step that it only mends the last bits of a float: 11 31/32 in kept as 303.9999 mm still counts
 * as half way between 11 15/16 and 12.
 */
const LAST_BITS = 1e-9;

/** How many steps make one unit, where that is a whole number (16 for 1/16, 10 for 0.1), else null. */
const perUnit = (step: number): number | null => {
  const per = Math.round(1 / step);
  return per >= 1 && Math.abs(1 / step - per) < 1e-6 ? per : null;
};

/** The size of a number to the nearest step, half way up, away from zero. */
export const nearest = (size: number, step: number): number => {
  const per = perUnit(step);
  return per === null
    ? Math.floor(size / step + 0.5 + LAST_BITS) * step
    : Math.floor(size * per + 0.5 + LAST_BITS) / per;
};

const decimalsOf = (step: number): number => {
  for (let decimals = 0; decimals < 6; decimals += 1) {
    const scaled = step * 10 ** decimals;
    if (Math.abs(scaled - Math.round(scaled)) < 1e-6) return decimals;
  }
  return 6;
};

/**
 * The size of a number as decimals, to the nearest step. A step of 0.1 or 0.01 keeps its closing zeros (816.0), for
 * they tell how fine the figure is; a step of 0.5 drops them (1613) unless `fixed`.
 */
export const decimals = (size: number, step: number, fixed = false): string => {
  const places = decimalsOf(step);
  const text = nearest(size, step).toFixed(places);
  const isTenth = Math.abs(step * 10 ** places - 1) < 1e-6;
  return places === 0 || isTenth || fixed ? text : text.replace(/\.?0+$/, '');
};

/** True for steps that a rule has: 1, 1/2, 1/4 … 1/64. */
export const isRuleStep = (step: number): boolean => {
  const per = perUnit(step);
  return per !== null && per <= 64 && Number.isInteger(Math.log2(per)) && Math.abs(step * per - 1) < 1e-9;
};

/** A size as a rule reads it, to the nearest step: `15 3/4`, `5/8`, `12`, `0`. Carries: 11 31/32 in sixteenths is `12`. */
export const ruled = (size: number, step: number): string => {
  const per = perUnit(step) ?? 1;
  const steps = Math.floor(size * per + 0.5 + LAST_BITS);
  const whole = Math.floor(steps / per);
  let top = steps - whole * per;
  let bottom = per;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  if (top === 0) return `${whole}`;
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
};

/** A size in inches as feet and inches, to the nearest step: `5'-3 1/2`, `5'-0 1/2`, `8'-0`. Carries: never `5'-12`. */
export const feetAndInches = (inches: number, step: number): string => {
  const rounded = nearest(inches, step);
  const feet = Math.floor((rounded + LAST_BITS) / 12);
  const inchesLeft = ruled(rounded - feet * 12, step);
  return `${feet}'-${/^\d+\//.test(inchesLeft) ? '0 ' : ''}${inchesLeft}`;
};
