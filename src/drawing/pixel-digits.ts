/** One figure sign as five rows of pixels, `#` for ink. All digits are three wide; marks are as wide as they need. */
export type Pixels = readonly [string, string, string, string, string];

const GLYPHS: Readonly<Record<string, Pixels>> = {
  '0': ['###', '# #', '# #', '# #', '###'],
  '1': [' # ', '## ', ' # ', ' # ', '###'],
  '2': ['###', '  #', '###', '#  ', '###'],
  '3': ['###', '  #', '###', '  #', '###'],
  '4': ['# #', '# #', '###', '  #', '  #'],
  '5': ['###', '#  ', '###', '  #', '###'],
  '6': ['###', '#  ', '###', '# #', '###'],
  '7': ['###', '  #', '  #', '  #', '  #'],
  '8': ['###', '# #', '###', '# #', '###'],
  '9': ['###', '# #', '###', '  #', '###'],
  '.': [' ', ' ', ' ', ' ', '#'],
  '+': ['   ', ' # ', '###', ' # ', '   '],
  '-': ['   ', '   ', '###', '   ', '   '],
  "'": ['#', '#', ' ', ' ', ' '],
  '"': ['# #', '# #', '   ', '   ', '   '],
  '/': ['  #', '  #', ' # ', '#  ', '#  '],
  ' ': ['  ', '  ', '  ', '  ', '  '],
};

/** The pixels of a figure sign, or null for a sign that has no tall form. */
export const pixelsOf = (sign: string): Pixels | null => GLYPHS[sign] ?? null;

/**
 * A figure as it is set tall: the real minus is drawn as the hyphen, and the hyphen that joins feet to inches in plain
 * text (8'-0") is left open, for at this height it would read as a minus.
 */
export const setTall = (text: string): string => text.replace(/[−–]/g, '-').replace(/'-(?=\d)/g, "' ");
