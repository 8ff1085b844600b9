import { expect, test, vi } from 'vitest';
import { run } from '../../../src/commands/reckon.ts';

vi.mock('../../../src/commands/reckon/topics.ts', () => ({
  TOPICS: {
    broken: async () => ({
      topic: {
        name: 'broken',
        summary: 'a topic with a bug',
        fields: {},
        example: 'broken',
        run: () => ({ ok: true, value: { lines: [{ arc_mm: 1 }, { arc_mm: Number.NaN }] } }),
      },
    }),
  },
}));

test('a number that is none is a bug that names its place, and nothing of it is printed', async () => {
  let printed = '';
  const print = (text: string) => {
    printed += text;
  };
  const io = { out: print, err: print, readStdin: async () => '', readFile: async () => '' };
  await expect(run(['broken', '--json'], io)).rejects.toThrow('broken.lines.1.arc_mm came out as NaN');
  expect(printed).toBe('');
});
