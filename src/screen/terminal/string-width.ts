import { cellWidth } from '../../drawing/cells.ts';

/** Ink's measure of a text, by ours: the bundle puts this in the place of the library that compiles its tables at each start. */
export default (text: string): number => cellWidth(text);
