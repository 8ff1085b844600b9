import { describe, expect, test } from 'vitest';
import { viewOf } from '../../../src/coach/view.ts';
import { rowText } from '../../../src/drawing/cells.ts';
import type { PageContext } from '../../../src/screen/pages/context.ts';
import { hurtPage } from '../../../src/screen/pages/look-pages.ts';
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

describe('what to do when somebody is hurt', () => {
  test('the list sends to the emergency number first and says that it is from memory', () => {
    const rows = hurtPage(c, 0, false, []).map(rowText);
    expect(rows.length).toBeLessThanOrEqual(24);
    expect(rows.findIndex(r => /call 112, 911 or 999/.test(r))).toBe(2);
    expect(rows.join('\n')).toMatch(/from memory/);
  });

  test('every page of it is whole at 80 columns and 24 rows, with whom to call', () => {
    for (const [i, hurt] of Object.values(WORDS.hurt).entries()) {
      const rows = hurtPage(c, i, true, []).map(rowText);
      expect(rows.length).toBeLessThanOrEqual(24);
      const text = rows.map(r => r.trim()).join(' ');
      for (const line of [...hurt.now, hurt.call]) expect(text).toContain(line);
    }
  });
});
