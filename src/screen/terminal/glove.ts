/**
 * A glove leaning on a key counts once: the same writing key again within this time of its last press is ignored
 * (design of this program). Each ignored press counts as the last one, so a key held down stays one press.
 */
export const GLOVE_MS = 400;

/** When each writing key was last pressed, in ms of any steady clock. */
export type Glove = Readonly<Record<string, number>>;

/** No key pressed yet. */
export const NO_GLOVE: Glove = {};

/**
 * Whether a press of a writing key counts, and what to remember for the next one. Keys that write nothing are not to be
 * asked about: moving down twice is moving twice.
 * @param key what names the key, the same for every press of it.
 * @param at_ms the time of the press; keys of one chunk have one time, so two of the same are one.
 */
export const pressed = (glove: Glove, key: string, at_ms: number): { counts: boolean; glove: Glove } => {
  const last = glove[key];
  // A clock set back must not lock the key: only a press after the last one can be leaning.
  const counts = last === undefined || at_ms - last >= GLOVE_MS || at_ms < last;
  return { counts, glove: { ...glove, [key]: at_ms } };
};
