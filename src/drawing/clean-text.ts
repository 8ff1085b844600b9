/**
 * Text with nothing in it that a terminal would obey: control characters (C0, DEL, C1) and the bidirectional overrides
 * become one space each. A build's name or a note is typed or merged from elsewhere; it must not move the cursor.
 */
export const cleanText = (text: string): string =>
  text.replace(/[\u0000-\u001F\u007F-\u009F\u2028-\u202E\u2066-\u2069]/g, ' ');
