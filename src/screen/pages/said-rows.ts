import { row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import type { PageContext } from './context.ts';

/** A note in as many rows as it takes, its mark before the first. */
export const saidRows = (c: PageContext, text: string, mark = '  '): Row[] =>
  wrap(text, c.look.columns - 5).map((l, i) => row(' ', ['quiet', i === 0 ? mark : '  '], l));
