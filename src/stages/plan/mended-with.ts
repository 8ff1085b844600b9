/** Limits that a change must keep too when it is to mend this one: they say the same, less strictly or of a neighbour. */
export const MENDED_WITH: Readonly<Record<string, readonly string[]>> = {
  'flat-from-high': ['fall-stop', 'fall-hard'],
  'load-novice': ['load-engineer', 'load-hard'],
  'anchors-few': ['anchors-entry'],
};
