import { isInFeet } from '../quantity/figure-parts.ts';
import type { Quantity, System } from '../quantity/quantities.ts';
import { type WriteOptions, write } from '../quantity/write.ts';
import type { Figure, Fill, Fills, Phrase } from '../stages/sheet.ts';
import type { Content } from './schema.ts';

/** What stands for a number that waits for an answer. */
export const NOT_KNOWN = 'not known yet';

/** The words, and whose spectacles they are read through. */
export type Voice = Readonly<{ content: Content; system: System }>;

/** A length in a sentence as the tall figure beside it has it: in feet and inches where a US tape counts feet. */
const said = (v: number, as: Quantity, system: System, how: WriteOptions = {}): string =>
  write(v, as, system, { ...how, ...(isInFeet(v, as, system) ? { feet: true } : {}) });

const valueText = (figure: Figure, system: System): string => {
  const v = figure.value;
  switch (v.is) {
    case 'exact':
      return said(v.v, figure.as, system);
    case 'band':
      return `${said(v.likely, figure.as, system)} (${said(v.low, figure.as, system, { unit: false })} to ${said(v.high, figure.as, system)})`;
    case 'pending':
      return v.meanwhile === undefined ? NOT_KNOWN : `about ${said(v.meanwhile, figure.as, system)}`;
    case 'unknown':
      return NOT_KNOWN;
  }
};

const fillText = (fill: Fill, system: System): string => {
  if (typeof fill === 'string') return fill;
  if (typeof fill === 'number') return String(fill);
  return said(fill.v, fill.as, system, {
    ...(fill.sign === undefined ? {} : { sign: true }),
    ...(fill.step === undefined ? {} : { step: fill.step }),
  });
};

/** `{1 m|40 in}` in a text is the first in a metric build and the second in a US one: no bench has both tapes. */
const inSystem = (text: string, system: System): string =>
  text.replace(/\{([^{}|]+)\|([^{}|]+)\}/g, (_, metric: string, us: string) =>
    system === 'us' ? us : metric,
  );

/** `{mark}` in a text becomes the fill of that name, or the figure whose id (the part before @) it names. */
export const fillMarks = (text: string, fills: Fills, figures: readonly Figure[], system: System): string =>
  inSystem(text, system).replace(/\{([a-z][a-z0-9-]*)\}/gi, (whole, mark: string) => {
    const fill = fills[mark];
    if (fill !== undefined) return fillText(fill, system);
    const figure = figures.find(f => f.id.split('@')[0] === mark);
    return figure === undefined ? whole : valueText(figure, system);
  });

/** The text at a path of content such as `findings.rails-differ.title`; the path itself where there is none, so that a gap is seen. */
export const textAt = (content: Content, path: string): string | readonly string[] | undefined => {
  let at: unknown = content;
  for (const part of path.split('.')) {
    if (typeof at !== 'object' || at === null) return undefined;
    at = (at as Record<string, unknown>)[part];
  }
  return typeof at === 'string' || Array.isArray(at) ? (at as string | string[]) : undefined;
};

export const say = (voice: Voice, phrase: Phrase, figures: readonly Figure[] = []): string => {
  const text = textAt(voice.content, phrase.words);
  const one = typeof text === 'string' ? text : text?.join(' ');
  return fillMarks(one ?? phrase.words, phrase.fills ?? {}, figures, voice.system);
};

export const sayLines = (
  voice: Voice,
  phrase: Phrase,
  figures: readonly Figure[] = [],
): readonly string[] => {
  const text = textAt(voice.content, phrase.words);
  const list = typeof text === 'string' ? [text] : (text ?? []);
  return list.map(t => fillMarks(t, phrase.fills ?? {}, figures, voice.system));
};
