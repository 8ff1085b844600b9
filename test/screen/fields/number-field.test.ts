import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rowText, rowWidth } from '../../../src/drawing/cells.ts';
import { fieldRows } from '../../../src/screen/fields/field-rows.ts';
import type { FieldSpec } from '../../../src/screen/fields/field-spec.ts';
import {
  type FieldDone,
  type NumberField,
  openField,
  press,
  understood,
} from '../../../src/screen/fields/number-field.ts';
import { splitKeys } from '../../../src/screen/terminal/split-keys.ts';

const SIDES = {
  plus: {
    name: 'TOWARD THE CENTRE',
    seen: 'You see the line beyond the face, {v} of it.',
    when: 'you see the line',
  },
  minus: { name: 'AWAY', seen: 'The rail hides the line by {v}.', when: 'the rail hides the line' },
} as const;

const OFFSET: FieldSpec = {
  quantity: 'length',
  system: 'metric',
  sign: SIDES,
  asks: 'BOTTOM face to its line',
};
const RADIUS: FieldSpec = {
  quantity: 'length',
  system: 'metric',
  asks: 'radius of the DECK TOP',
  possible: [1, 100_000],
};
const REACH: FieldSpec = { quantity: 'length', system: 'us', asks: 'entry to lip' };
const WARMTH: FieldSpec = { quantity: 'temperature', system: 'metric', sign: 'plain' };

/** Types what a terminal sends into a field; gives the field after it and what came of the last key. */
const typing = (
  sent: string,
  spec: FieldSpec,
  before: NumberField = openField(),
): { field: NumberField; done: FieldDone } => {
  let result: { field: NumberField; done: FieldDone } = { field: before, done: { is: 'typing' } };
  for (const key of splitKeys(sent).keys) result = press(result.field, key, spec);
  return result;
};

const kept = (sent: string, spec: FieldSpec): FieldDone => typing(`${sent}\r`, spec).done;
const said = (sent: string, spec: FieldSpec): string | null => typing(sent, spec).field.said;

describe('keeping a number', () => {
  test('nothing is kept before Enter', () => {
    expect(typing('15.5', OFFSET).done).toEqual({ is: 'typing' });
    expect(kept('15.5', OFFSET)).toEqual({ is: 'keep', value: 15.5, typed: '15.5', replaces: false });
  });

  test('comma and point are one', () => {
    expect(kept('15,5', OFFSET)).toMatchObject({ is: 'keep', value: 15.5 });
  });

  test('units of the other system may be typed', () => {
    expect(kept('63 1/2 in', RADIUS)).toMatchObject({ is: 'keep', value: 1612.9 });
    expect(kept("8'", REACH)).toMatchObject({ is: 'keep', value: 2438.4 });
    expect(kept(`5'-3 1/2"`, REACH)).toMatchObject({ is: 'keep', value: 1612.9 });
  });

  test('"1,200" has two readings and is refused with both', () => {
    expect(kept('1,200', RADIUS)).toEqual({ is: 'typing' });
    expect(said('1,200\r', RADIUS)).toMatch(/1200 or 1\.2/);
  });

  test('empty and Enter is nothing, and says what to type for nought', () => {
    expect(kept('', OFFSET)).toEqual({ is: 'typing' });
    expect(said('\r', { ...OFFSET, whenEmpty: 'type 0 if it lies on the line' })).toBe(
      'type 0 if it lies on the line',
    );
  });
});

describe('the sign', () => {
  test('bare is toward the centre; - flips from anywhere and back', () => {
    expect(kept('15.5-', OFFSET)).toMatchObject({ value: -15.5 });
    expect(kept('-15.5', OFFSET)).toMatchObject({ value: -15.5 });
    expect(kept('1-5.5-', OFFSET)).toMatchObject({ value: 15.5 });
    expect(kept('-15.5+', OFFSET)).toMatchObject({ value: 15.5 });
  });

  test('nought has no sign', () => {
    const done = kept('-0', OFFSET);
    expect(done.is === 'keep' && Object.is(done.value, 0)).toBe(true);
  });

  test('a sign alone is no number yet, and taking the number away takes the sign away', () => {
    expect(kept('-', OFFSET)).toEqual({ is: 'typing' });
    expect(typing('-5\u007F', OFFSET).field.text).toBe('');
  });

  test('a number without a side takes no sign, but joins feet and inches with a hyphen', () => {
    expect(said('-', RADIUS)).toBe('-: this number has no side. Backspace takes it off');
    // -700 never passes for 700.
    expect(kept('-700\r', RADIUS)).toEqual({ is: 'typing' });
    expect(typing("5'-3", REACH).field.text).toBe("5'-3");
  });

  test('a temperature may be below nought', () => {
    expect(kept('5-', WARMTH)).toMatchObject({ value: -5 });
  });
});

describe('surprising and impossible numbers', () => {
  const spec: FieldSpec = {
    ...OFFSET,
    expected: [14, 17],
    possible: [-200, 200],
    instead: 'the mm between face and line',
  };

  test('outside what was expected a second Enter keeps it, after saying by how much', () => {
    const asked = typing('40\r', spec);
    expect(asked.done).toEqual({ is: 'typing' });
    expect(asked.field.said).toBe('23 mm more than expected (14 to 17). Enter again keeps it.');
    expect(typing('\r', spec, asked.field).done).toMatchObject({ is: 'keep', value: 40 });
  });

  test('a change between the two Enters asks again', () => {
    expect(typing('40\r1\r', spec).done).toEqual({ is: 'typing' });
  });

  test('an impossible number is refused however often Enter is pressed, and told what would do', () => {
    expect(typing('500\r\r\r', spec).done).toEqual({ is: 'typing' });
    expect(said('500\r', spec)).toBe('more than 200 mm cannot be. Would do: the mm between face and line');
  });
});

describe('keys in a field', () => {
  test('letters of a unit are taken after a digit; of the others only a few act', () => {
    expect(said('z', OFFSET)).toMatch(/^z: a number is typed in digits/);
    expect(typing('mz', OFFSET).field.text).toBe('');
    expect(typing('12mm', OFFSET).field.text).toBe('12mm');
  });

  test('w tells why at any moment and leaves what is typed as it is', () => {
    expect(typing('w', OFFSET).done).toEqual({ is: 'act', act: 'why' });
    expect(typing('12w', OFFSET)).toMatchObject({
      field: { text: '12', open: true },
      done: { is: 'act', act: 'why' },
    });
  });

  test('q leaves an empty field at once, and a number that is not kept only at the second q', () => {
    expect(typing('q', OFFSET).done).toEqual({ is: 'act', act: 'leave' });
    const once = typing('12q', OFFSET);
    expect(once.done).toEqual({ is: 'typing' });
    expect(once.field).toMatchObject({
      text: '12',
      said: expect.stringMatching(/^q: what is typed is not kept/),
    });
    expect(typing('q', OFFSET, once.field).done).toEqual({ is: 'act', act: 'leave' });
    expect(typing('3q', OFFSET, once.field).done).toEqual({ is: 'typing' });
  });

  test('I am hurt, and the keys, from an empty field; after a digit they are letters of units', () => {
    expect(typing('i', OFFSET).done).toEqual({ is: 'act', act: 'hurt' });
    expect(typing('h', OFFSET).done).toEqual({ is: 'act', act: 'help' });
    expect(typing('12in', OFFSET).field.text).toBe('12in');
  });

  test('Backspace and Delete alike take the last sign off', () => {
    expect(typing('155\u007F', OFFSET).field.text).toBe('15');
    expect(typing('155\u001B[3~', OFFSET).field.text).toBe('15');
  });

  test('Escape closes and keeps the text, which is taken up again', () => {
    const closed = typing('15.5\u001B', OFFSET);
    expect(closed.done).toEqual({ is: 'close' });
    expect(closed.field).toMatchObject({ open: false, text: '15.5' });
    expect(openField({ text: closed.field.text })).toMatchObject({ open: true, text: '15.5' });
  });

  test('up takes the last kept number again, and keeping it replaces the old entry', () => {
    const field = openField({ kept: '12.5' });
    expect(typing('\u001B[A\u007F6\r', OFFSET, field).done).toEqual({
      is: 'keep',
      value: 12.6,
      typed: '12.6',
      replaces: true,
    });
    expect(said('\u001B[A', OFFSET)).toMatch(/nothing was kept/);
  });

  test('Tab takes the other way where one is offered', () => {
    expect(typing('\t', { ...OFFSET, otherWay: 'cannot read here' }).done).toEqual({ is: 'other-way' });
    expect(said('\t', OFFSET)).toMatch(/no other way/);
  });

  test('a key stuck down fills nothing without end', () => {
    expect(typing('1'.repeat(500), OFFSET).field.text.length).toBeLessThanOrEqual(40);
  });
});

describe('a paste', () => {
  const stations: FieldSpec = { ...OFFSET, several: 'one for each station from 14' };
  const paste = (text: string): string => `\u001B[200~${text}\u001B[201~`;

  test('of several numbers asks, and Enter takes them', () => {
    const pasted = typing(paste('1.5\n2,5\r\n-3\n'), stations);
    expect(pasted.done).toEqual({ is: 'typing' });
    const text = fieldRows(pasted.field, stations, { columns: 80, rows: 4, ascii: false })
      .map(rowText)
      .join('\n');
    expect(text).toContain('3 numbers: one for each station from 14?');
    expect(typing('\r', stations, pasted.field).done).toMatchObject({
      is: 'keep-several',
      values: [1.5, 2.5, -3],
    });
  });

  test('in one line, parted by spaces or tabs', () => {
    expect(typing(`${paste('1 2 -3.5')}\r`, stations).done).toMatchObject({ values: [1, 2, -3.5] });
    expect(typing(`${paste('1\t2')}\r`, stations).done).toMatchObject({ values: [1, 2] });
  });

  test('fractions of one US length are one number', () => {
    expect(typing(`${paste('15 3/4')}\r`, REACH).done).toMatchObject({ is: 'keep', value: 400.05 });
  });

  test('names the one that cannot be read', () => {
    const pasted = typing(`${paste('1\n2x\n3')}\r`, stations);
    expect(pasted.done).toEqual({ is: 'typing' });
    expect(pasted.field.said).toMatch(/^number 2 of 3: /);
  });

  test('where one number is wanted says so', () => {
    expect(typing(`${paste('1\n2')}\r`, OFFSET).field.said).toMatch(/^2 numbers were pasted, one is wanted/);
  });

  test('of one number is that number', () => {
    expect(typing(`${paste('  12.5 mm\n')}\r`, OFFSET).done).toMatchObject({ is: 'keep', value: 12.5 });
  });
});

describe('the echo', () => {
  const rows = (sent: string, spec: FieldSpec, ascii = false): string[] =>
    fieldRows(typing(sent, spec).field, spec, { columns: 80, rows: 4, ascii }).map(rowText);

  test('says tall, in words and in the other system what was understood', () => {
    expect(rows('15.5', OFFSET)).toEqual([
      '   ▄  ▄█  █▀▀   █▀▀        TOWARD THE CENTRE',
      '  ▀█▀  █  ▀▀█   ▀▀█        You see the line beyond the face, 15.5 of it.',
      '      ▀▀▀ ▀▀▀ ▀ ▀▀▀  mm    = 0.61 in = 5/8 in',
      ' typed  15.5_              press - if the rail hides the line: AWAY',
    ]);
  });

  test('names the other side when the sign is turned', () => {
    expect(rows('-15.5', OFFSET)[0]).toContain('AWAY');
    expect(rows('-15.5', OFFSET)[3]).toContain('press - if you see the line: TOWARD THE CENTRE');
    expect(rows('-', OFFSET)[0]).toContain('AWAY');
    expect(rows('0', OFFSET)[0]).toContain('ON THE LINE');
  });

  test('shows a bare number as typed, never rounded', () => {
    expect(rows('15.37', OFFSET)[0]).toBe('   ▄  ▄█  █▀▀   ▀▀█ ▀▀█      TOWARD THE CENTRE');
  });

  test('shows inches typed into a metric build in mm', () => {
    expect(rows('5/8 in', OFFSET)[2]).toContain('mm    = 5/8 in');
    expect(rows('5/8 in', OFFSET)[1]).toContain('15.9 of it');
  });

  test('says beside it what a bare number is', () => {
    expect(rows('3000', RADIUS)[3]).toBe(' typed  3000_              bare numbers are mm in this build');
    expect(rows('8', REACH)[3]).toContain('bare numbers are inches in this build');
  });

  test('is 7-bit in ASCII and never wider than the screen', () => {
    const signs = fc.string({ unit: fc.constantFrom(...'0123456789.,-/ "\'inm'), maxLength: 45 });
    fc.assert(
      fc.property(
        signs,
        fc.constantFrom(OFFSET, RADIUS, REACH, WARMTH),
        fc.boolean(),
        (sent, spec, ascii) => {
          const drawn = fieldRows(typing(sent, spec).field, spec, { columns: 80, rows: 4, ascii });
          expect(drawn).toHaveLength(4);
          for (const line of drawn) expect(rowWidth(line)).toBeLessThanOrEqual(80);
          if (ascii) expect(drawn.map(rowText).join('')).toMatch(/^[\x20-\x7E]*$/);
        },
      ),
    );
  });
});

test('no text makes a field fail or understand a number that is none', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc.constantFrom(OFFSET, RADIUS, REACH, WARMTH),
      (sent, spec) => {
        const meaning = understood(typing(sent, spec).field, spec);
        if (meaning.is === 'number') expect(Number.isFinite(meaning.value)).toBe(true);
      },
    ),
  );
});

describe('an answer with a default', () => {
  const spec = { quantity: 'length', system: 'us', emptyTakes: 609.6, otherWay: 'take 24 in' } as const;

  test('an empty Enter takes it, a typed number is kept instead', () => {
    expect(typing('\r', spec).done).toEqual({ is: 'other-way' });
    expect(typing('30\r', spec).done).toMatchObject({ is: 'keep', value: 762 });
  });

  test('a number rubbed out again leaves the default, a lone sign does not', () => {
    expect(typing('3\u007F\r', spec).done).toEqual({ is: 'other-way' });
    expect(typing('-\r', spec).done).toEqual({ is: 'typing' });
  });
});

describe('sizes of a tube typed at once', () => {
  const tube = {
    quantity: 'thickness',
    system: 'metric',
    asks: 'depth',
    possible: [10, 150],
    together: [
      { name: 'depth', possible: [10, 150] },
      { name: 'width', possible: [10, 150] },
      { name: 'wall', possible: [0.5, 12] },
    ],
  } as const;

  test('all three are taken, a unit at the end stands for all', () => {
    expect(typing('40x40x2.9\r', tube).done).toMatchObject({ is: 'keep-several', values: [40, 40, 2.9] });
    const inches = typing('1.5x1.5x0.12in\r', tube).done;
    expect(
      inches.is === 'keep-several' ? inches.values.map(v => Math.round(v * 1000) / 1000) : inches,
    ).toEqual([38.1, 38.1, 3.048]);
  });

  test('each with its own mark, as a tape is read out', () => {
    const marked = typing('1 1/2" x 1 1/2" x 0.120"\r', tube).done;
    expect(
      marked.is === 'keep-several' ? marked.values.map(v => Math.round(v * 1000) / 1000) : marked,
    ).toEqual([38.1, 38.1, 3.048]);
  });

  test('two of three are refused with what would do, and so is a wall that cannot be', () => {
    expect(said('40x40\r', tube)).toBe(
      'one at a time, or all at once. Would do: the depth, or depth x width x wall',
    );
    expect(said('40x40x40\r', tube)).toMatch(/^wall: more than 12/);
  });

  test('where one number is asked, its name is said', () => {
    expect(said('40x40\r', { quantity: 'thickness', system: 'metric', asks: 'width of the tube' })).toBe(
      'one number at a time. Would do: the width of the tube',
    );
  });
});
