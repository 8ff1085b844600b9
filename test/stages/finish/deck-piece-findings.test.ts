import { describe, expect, test } from 'vitest';
import type { Doing } from '../../../src/build/entries.ts';
import { deckPieceFindings } from '../../../src/stages/finish/deck-piece-findings.ts';
import { begun, set } from '../doings.ts';
import { situationFor } from '../situation-for.ts';

const boards = set('deck', { kind: 'boards', thickness_mm: 38, board_mm: 145 });
const cut = (length_mm: number): Doing => ({
  kind: 'piece-cut',
  need: 'board@:4',
  section: 'board 145x38',
  asked_mm: 1200,
  length_mm,
  typed: String(length_mm),
  ends_rad: [0, 0],
});
const found = (...doings: Doing[]) => deckPieceFindings(situationFor([begun(), boards, ...doings]));

describe('a board of the deck, as it was cut', () => {
  test('within three millimetres it says nothing', () => {
    expect(found()).toEqual([]);
    expect(found(cut(1197.5))).toEqual([]);
  });

  test('short: cut anew, or left; long: trimmed first', () => {
    const [short] = found(cut(1150));
    expect(short).toMatchObject({ words: 'piece-short', worst_mm: 50, stage: 'finish' });
    expect(short?.offers.map(o => o.remedy)).toEqual(['piece-new', 'leave-piece']);
    const [long] = found(cut(1212));
    expect(long?.offers.map(o => o.remedy)).toEqual(['piece-trim', 'piece-new', 'leave-piece']);
  });

  test('a new one of the right length ends it', () => {
    expect(found(cut(1150), cut(1200))).toEqual([]);
  });
});
