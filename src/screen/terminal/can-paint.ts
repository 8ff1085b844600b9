import type { Colour } from '../styles.ts';

/** What the decisions about the terminal are made from. */
export type Surroundings = Readonly<{
  env: Readonly<Record<string, string | undefined>>;
  stdinIsTerminal: boolean;
  stdoutIsTerminal: boolean;
  windows?: boolean;
}>;

/** Whether the bench may take over the screen, and if not, why, in words for the person. */
export type Painting = Readonly<{ paint: true } | { paint: false; because: string }>;

const isSet = (value: string | undefined): boolean => value !== undefined && value !== '';

/** CI as the Ink library itself tells it: there it would draw nothing until the end. */
const inCi = (env: Surroundings['env']): boolean =>
  [env.CI, env.CONTINUOUS_INTEGRATION].some(
    value => value !== undefined && value !== '0' && value !== 'false',
  );

/** Whether pages can be drawn and keys read here, or a page can only be printed. */
export const canPaint = ({ env, stdinIsTerminal, stdoutIsTerminal }: Surroundings): Painting => {
  if (!stdoutIsTerminal) return { paint: false, because: 'what is written does not go to a terminal' };
  if (!stdinIsTerminal) return { paint: false, because: 'keys do not come from a terminal' };
  if (env.TERM === 'dumb') return { paint: false, because: 'this terminal cannot place text (TERM=dumb)' };
  if (inCi(env)) return { paint: false, because: 'CI is set, so nobody is taken to be at the keys' };
  return { paint: true };
};

/**
 * Whether only 7-bit signs may be used: asked for, or the locale is not UTF-8, or the console of the Linux kernel, whose
 * letters have no braille. Windows has no locale variables; its own newer terminal names itself.
 */
export const asciiOnly = ({ env, windows = false }: Surroundings, asked: boolean): boolean => {
  if (asked) return true;
  if (env.TERM === 'linux' || env.TERM === 'dumb') return true;
  const locale = [env.LC_ALL, env.LC_CTYPE, env.LANG].find(isSet);
  if (locale !== undefined) return !/utf-?8/i.test(locale);
  return !(windows && isSet(env.WT_SESSION));
};

/** How many colours to use. NO_COLOR set to anything wins over all else; FORCE_COLOR stands for a terminal where there is none. */
export const colourFor = ({ env, stdoutIsTerminal }: Surroundings): Colour => {
  if (isSet(env.NO_COLOR)) return 'none';
  const forced = env.FORCE_COLOR;
  if (forced === '0' || forced === 'false') return 'none';
  const wide = isSet(env.COLORTERM) || /256|direct/.test(env.TERM ?? '') || forced === '2' || forced === '3';
  if (isSet(forced)) return wide ? '256' : '16';
  if (!stdoutIsTerminal || env.TERM === 'dumb') return 'none';
  return wide ? '256' : '16';
};
