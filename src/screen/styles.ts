import { cleanText } from '../drawing/clean-text.ts';
import type { Role, Row } from '../drawing/row.ts';

/** How many colours may be used. With `none` nothing is set at all, not even bold: signs and words carry every meaning. */
export type Colour = 'none' | '16' | '256';

/** The part of the properties of Ink's Text that a role may set. The background is never painted. */
export type InkProps = Readonly<{ bold?: true; inverse?: true; dimColor?: true; color?: string }>;

type Style = Readonly<{ bold?: true; inverse?: true; dim?: true; hue?: Hue }>;
type Hue = 'blue' | 'orange';

/**
 * Blue and orange stay apart for eyes that take red and green for one colour, and both are read on black and on white
 * ground (design of this program). In 16 colours they become cyan and yellow.
 */
const HUES: Readonly<Record<Hue, { wide: number; narrow: 'cyan' | 'yellow'; code: number }>> = {
  blue: { wide: 33, narrow: 'cyan', code: 36 },
  orange: { wide: 166, narrow: 'yellow', code: 33 },
};

const STYLES: Readonly<Record<Role, Style>> = {
  plain: {},
  lead: { bold: true },
  lit: { bold: true, inverse: true },
  settled: { hue: 'blue' },
  attention: { hue: 'orange' },
  halt: { bold: true, inverse: true },
  quiet: { dim: true },
  plus: { hue: 'blue' },
  minus: { hue: 'orange' },
};

/** What a role looks like as properties of Ink's Text. */
export const inkProps = (role: Role | undefined, colour: Colour): InkProps => {
  if (colour === 'none' || role === undefined) return {};
  const { bold, inverse, dim, hue } = STYLES[role];
  return {
    ...(bold && { bold }),
    ...(inverse && { inverse }),
    ...(dim && { dimColor: dim }),
    ...(hue && { color: colour === '256' ? `ansi256(${HUES[hue].wide})` : HUES[hue].narrow }),
  };
};

const codes = (role: Role | undefined, colour: Colour): string => {
  if (colour === 'none' || role === undefined) return '';
  const { bold, inverse, dim, hue } = STYLES[role];
  const ink = hue && (colour === '256' ? `38;5;${HUES[hue].wide}` : `${HUES[hue].code}`);
  return [bold && '1', dim && '2', inverse && '7', ink].filter(Boolean).join(';');
};

/** A row as one line for plain printing, with the escape sequences of its roles, each closed before the next text. */
export const ansi = (line: Row, colour: Colour): string =>
  line
    .map(({ text, role }) => {
      const set = codes(role, colour);
      const clean = cleanText(text);
      return set === '' ? clean : `\u001B[${set}m${clean}\u001B[0m`;
    })
    .join('');
