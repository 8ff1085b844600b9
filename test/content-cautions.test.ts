import { describe, expect, test } from 'vitest';
import { wrap } from '../src/drawing/cells.ts';
import { WORDS } from './stages/word-gaps.ts';

type Step = Readonly<{ where: string; deed: string; caution: string; brief: string }>;

const steps: readonly Step[] = Object.entries(WORDS.steps).flatMap(([stage, all]) =>
  Object.entries(all).map(([name, words]) => ({
    where: `${stage}/${name}`,
    deed: [words.title, words.do].join(' '),
    caution: words.caution ?? '',
    brief: words.brief ?? '',
  })),
);

/** Steps in which a saw or a disc is only read about, and nothing turns. */
const ONLY_READ = /^plan\/|^cut\/saw(?:-fits)?$|^prep\/disc/;

/** Words beside a label on a page of 80 columns. */
const BESIDE_LABEL = 68;

describe('cautions', () => {
  test('fit two rows, their short forms one', () => {
    expect(steps.length).toBeGreaterThan(200);
    const long = steps.filter(
      s => wrap(s.caution, BESIDE_LABEL).length > 2 || wrap(s.brief, BESIDE_LABEL).length > 1,
    );
    expect(long.map(s => s.where)).toEqual([]);
  });

  // What the deed does to hands, eyes and lungs, and what the caution must then have.
  test.each([
    [
      'an eye at a saw, a disc or a drill',
      /\b(?:Saw|Grind|Drill|Flap disc|Strip disc|disc's edge)\b/i,
      /glasses|shield|eyes/i,
    ],
    ['a chlorinated cleaner is named as what it becomes', /brake cleaner|chlorinat/i, /poison gas/i],
  ])('%s', (_what, deed, protects) => {
    const bare = steps.filter(
      s =>
        !ONLY_READ.test(s.where) &&
        s.caution !== '' &&
        deed.test(`${s.deed} ${s.caution}`) &&
        !protects.test(`${s.caution}`),
    );
    expect(bare.map(s => `${s.where}: ${s.deed} | ${s.caution}`)).toEqual([]);
  });
});
