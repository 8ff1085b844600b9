import { describe, expect, test } from 'vitest';
import { viewOf } from '../../../src/coach/view.ts';
import { rowText } from '../../../src/drawing/cells.ts';
import { stagePage } from '../../../src/screen/pages/stage-page.ts';
import { begun } from '../../stages/doings.ts';
import { entriesOf, NOW } from '../../stages/situation-for.ts';
import { WORDS } from '../../stages/word-gaps.ts';

describe('the drawing of a stage page', () => {
  const view = viewOf(entriesOf([begun()]), NOW);
  const shown = (step: string): string =>
    stagePage(
      {
        view,
        voice: { content: WORDS, system: 'metric' },
        look: { columns: 80, rows: 24, ascii: false },
        disk: { is: 'on disk', at: null },
        message: null,
      },
      { stage: 'weld', step, item: 0 },
      [],
    )
      .map(rowText)
      .join('\n');

  test.each(['A', 'B'])('is of the rail that the step is about: %s', rail => {
    expect(shown(`weld/cool@${rail}`)).toContain(`rail ${rail}, back wall down`);
  });
});
