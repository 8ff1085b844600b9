import { sheetOf } from '../../coach/view.ts';
import type { Step } from '../../coach/walk.ts';
import { drawScene } from '../../drawing/braille.ts';
import { row } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import type { Ask, PieceAsk } from '../../stages/sheet.ts';
import { fieldRows } from '../fields/field-rows.ts';
import type { FieldSpec } from '../fields/field-spec.ts';
import { openField } from '../fields/number-field.ts';
import { page, pageRows, ruleRow, stripRow, titleRow } from '../pages/frame.ts';
import { pieceName } from '../pages/journal-page.ts';
import type { Lit } from '../pages/stage-page.ts';
import { reasonRows, tagRow } from '../pages/step-rows.ts';
import { askLabel } from '../pages/step-words.ts';
import type { Desk } from './desk.ts';
import type { OpenField } from './open-field.ts';

/** Rows of a drawing under a field: with fewer nothing is told apart, and more tell no more. */
const LEAST_DRAWN = 4;
const MOST_DRAWN = 12;

/** How far a piece may come out beside its length before the field asks once more, mm. */
const SURPRISING_LENGTH = 3;

/** The field for one number of a step. */
export const askField = (desk: Desk, step: Step, ask: Ask, done: () => void): OpenField => {
  const before = desk.view.build.readings.get(`${step.key}#${ask.ask}`);
  const below = ask.possible === undefined ? false : ask.possible[0] < 0;
  const spec: FieldSpec = {
    quantity: ask.as,
    system: desk.system,
    asks: askLabel(desk.view, desk.voice, step, ask.ask),
    ...(ask.signed === true ? { sign: SIDES } : below ? { sign: 'plain' as const } : {}),
    ...(ask.expected === undefined ? {} : { expected: ask.expected }),
    ...(ask.possible === undefined ? {} : { possible: ask.possible }),
  };
  return {
    field: openField(before === undefined ? {} : { kept: before.typed }),
    spec,
    keep: (_value, typed) => {
      if (desk.act({ do: 'read', step: step.key, ask: ask.ask, value: desk.typedFor(typed, ask.as) })) done();
    },
  };
};

/** The two sides of a line, as the eye tells them. */
export const SIDES = {
  plus: {
    name: 'TOWARD THE CENTRE',
    seen: 'You see the line beyond the face, {v} of it.',
    when: 'the rail shows the line',
  },
  minus: {
    name: 'AWAY from the centre',
    seen: 'The rail hides the line, by {v}.',
    when: 'the rail hides the line',
  },
} as const;

/** The field for a piece's real length. */
export const pieceField = (desk: Desk, piece: PieceAsk, done: () => void): OpenField => ({
  field: openField(),
  spec: {
    quantity: 'length',
    system: desk.system,
    asks: `real length of the ${pieceName(piece.need)}, long point to long point`,
    expected: [piece.long_mm - SURPRISING_LENGTH, piece.long_mm + SURPRISING_LENGTH],
    possible: [1, 20_000],
  },
  keep: (_value, typed) => {
    if (desk.act({ do: 'cut-piece', need: piece.need, length: desk.typedFor(typed, 'length') })) done();
  },
});

/** A step's page while a number is typed: the field owns the tall rows. */
export const fieldPage = (desk: Desk, step: Step, open: OpenField, lit: Lit, keys: Row): Row[] => {
  const c = desk.context();
  const scene = step.scene ?? sheetOf(c.view, lit.stage).scene;
  const head = [titleRow(c), stripRow(c.view, lit.stage), ruleRow(c, `${lit.stage}: measuring`)];
  const foot = [row(' ', c.message ?? ''), keys];
  const top: Row[] = [tagRow(c, step), ...fieldRows(open.field, open.spec, c.look), []];
  // The words have every row there is, for here is where the hand is; the drawing gets what they leave.
  const room = pageRows(c) - head.length - foot.length - top.length;
  const reasons = reasonRows(c, step, room);
  const drawn = room - reasons.length - 1;
  const drawing =
    drawn < LEAST_DRAWN
      ? []
      : [
          ruleRow(c, scene.title),
          ...drawScene(scene, {
            columns: c.look.columns - 2,
            rows: Math.min(drawn, MOST_DRAWN),
            ascii: c.look.ascii,
          }),
        ];
  return page(c, head, [...top, ...reasons, ...drawing], foot);
};
