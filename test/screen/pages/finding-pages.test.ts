import { expect, test } from 'vitest';
import { viewOf } from '../../../src/coach/view.ts';
import { rowText } from '../../../src/drawing/cells.ts';
import type { PageContext } from '../../../src/screen/pages/context.ts';
import { offerRow } from '../../../src/screen/pages/finding-pages.ts';
import { begun } from '../../stages/doings.ts';
import { entriesOf, NOW } from '../../stages/situation-for.ts';
import { WORDS } from '../../stages/word-gaps.ts';

const c: PageContext = {
  view: viewOf(entriesOf([begun()]), NOW),
  voice: { content: WORDS, system: 'metric' },
  look: { columns: 80, rows: 24, ascii: false },
  disk: { is: 'on disk', at: null },
  message: null,
};
const LIMIT = { v: 4, as: 'length' } as const;
const told = (v: number): string =>
  rowText(
    offerRow(
      c,
      { remedy: 'leave', minutes: 0, after: { v, as: 'length', within: v <= 4 }, plan: {} },
      false,
      LIMIT,
    ),
  );

test('what is over its limit by less than a rule shows does not read like the limit', () => {
  expect(told(4.2)).toContain('4.2 over');
  expect(told(3.9)).toContain('4 within');
  expect(told(6.2)).toContain('6 over');
});
