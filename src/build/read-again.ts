/**
 * Steps that a long pause brings are keyed `stage/pause-name@subject~entry`: the entry is the last one before the gap, so the
 * same pause keeps the same steps, whatever is done after it.
 */
const PAUSE = /^([a-z]+\/pause-[a-z-]+)@([^~]*)~(.+)$/;

export const pauseKey = (step: string, subject: string, entry: string): string =>
  `${step}@${subject}~${entry}`;

/** The parts of such a key, or null where the key is of another step. */
export const pauseParts = (
  key: string,
): Readonly<{ step: string; subject: string; entry: string }> | null => {
  const [, step, subject, entry] = PAUSE.exec(key) ?? [];
  return step === undefined || subject === undefined || entry === undefined ? null : { step, subject, entry };
};

/** What is read again after a pause, by the step that read it before. */
const REPEATS: Readonly<Record<string, (subject: string) => string>> = {
  'tack/pause-bend': third => `tack/read-third@${third}`,
  'tack/pause-kerf': third => `cut/deburr-third@${third}`,
  'assemble/pause-diagonals': () => 'assemble/diagonals',
  'finish/pause-anchors': () => 'finish/anchors',
};

/** The step whose reading a step of a pause takes again: the newer number counts in its place. Null for all other steps. */
export const repeatedBy = (key: string): string | null => {
  const parts = pauseParts(key);
  return parts === null ? null : (REPEATS[parts.step]?.(parts.subject) ?? null);
};
