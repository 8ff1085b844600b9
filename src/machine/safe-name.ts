import { plainText } from '../build/plain-text.ts';

/** Letters that fall apart into no base letter and a mark, written as their languages write them without. */
const FOLDED: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  ł: 'l',
  þ: 'th',
  ı: 'i',
  ħ: 'h',
  ŋ: 'n',
};

/** Names Windows keeps for devices, whatever stands after a dot; and the one our own folder keeps for the shop. */
const RESERVED = /^(con|prn|aux|nul|com[0-9]|lpt[0-9]|conin|conout|clock|shop)$/;

/** Longest name, UTF-8 bytes: with what is put behind it, it stays under the 255 of any file system. */
const LONGEST = 80;

/**
 * The name of a file for a build's name, without folder and without ending: small letters, digits and single hyphens.
 * Marks on Latin letters are dropped; letters of other scripts stay. Never empty, never a path, never hidden, never a device.
 * @param name as a person typed it
 */
export const safeName = (name: string): string => {
  const letters = [...plainText(name).toLowerCase().normalize('NFKD')]
    .map(letter => FOLDED[letter] ?? letter)
    .join('')
    // Only where the letter before is Latin: elsewhere a mark may be the vowel.
    .replace(/(\p{Script=Latin})\p{M}+/gu, '$1')
    .normalize('NFC')
    .toLowerCase()
    .replace(/['’]/g, '')
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-');
  const stem = trim(shorten(trim(letters)));
  if (stem === '') return 'build';
  return RESERVED.test(stem) ? `${stem}-build` : stem;
};

const trim = (text: string): string => text.replace(/^[-\p{M}]+|-+$/gu, '');

/** As many whole letters as fit. */
const shorten = (text: string): string => {
  let bytes = 0;
  let kept = '';
  for (const letter of text) {
    bytes += Buffer.byteLength(letter);
    if (bytes > LONGEST) break;
    kept += letter;
  }
  return kept;
};
