/**
 * Text that came from outside (a pasted name, a note, a line of a file another program wrote) as it may be shown and kept.
 *
 * Out go: terminal escape sequences with what belongs to them, control characters (C0, DEL, C1), marks that turn the
 * direction of writing or cannot be seen, and halves of surrogate pairs. Tabs and line breaks become one space, for here
 * a text is one line. Letters are put together in their composed form (NFC). Twice is the same as once.
 */
export const plainText = (text: string): string =>
  text.replace(STRINGS, '').replace(SEQUENCES, '').replace(BREAKS, ' ').replace(UNSEEN, '').normalize('NFC');

/**
 * OSC, DCS, SOS, PM, APC (7- and 8-bit) up to BEL or ST. One that never ends loses only its opening (see UNSEEN and
 * SEQUENCES): swallowing all that follows would let one stray byte eat a note.
 */
const STRINGS = /(?:\x1b[\]PX^_]|[\x9d\x90\x98\x9e\x9f])[^\x07\x1b\x9c]*(?:\x07|\x1b\\|\x9c)/g;

/** CSI sequences, then other escapes of ISO/IEC 2022 shape: ESC, intermediates, one final. */
const SEQUENCES = /(?:\x1b\[|\x9b)[0-?]*[ -/]*[@-~]?|\x1b[ -/]*[0-~]?/g;

const BREAKS = /(?:\r\n|[\t\n\v\f\r\x85\u2028\u2029])+/g;

/**
 * C0, DEL, C1 · soft hyphen · Arabic letter mark, left/right marks, embeddings, overrides, isolates · zero-width space,
 * word joiner and invisible operators · variation selectors
 * (the same sign would take one cell in one terminal and two in the next) · byte order mark · interlinear marks · tag characters · lone surrogates. The joiners
 * U+200C and U+200D stay: some scripts cannot be written without them.
 */
const UNSEEN =
  /[\ufe00-\ufe0f]|[\x00-\x1f\x7f-\x9f\u00ad\u061c\u180e\u200b\u200e\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\u{e0000}-\u{e007f}\p{Cs}]/gu;
