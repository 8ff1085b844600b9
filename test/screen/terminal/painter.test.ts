import { EventEmitter } from 'node:events';
import xterm from '@xterm/headless';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { framePainter } from '../../../src/screen/terminal/painter.ts';

/** A painter and the terminal it paints on. */
const easel = (columns = 20, rows = 5) => {
  const terminal = new xterm.Terminal({ cols: columns, rows, allowProposedApi: true });
  const writes: string[] = [];
  const stream = Object.assign(new EventEmitter(), {
    columns,
    rows,
    write: (text: string) => writes.push(text),
  });
  const painter = framePainter(stream);
  const shown = async (): Promise<string[]> => {
    const sent = writes.splice(0).join('');
    await new Promise<void>(resolve => terminal.write(sent, resolve));
    const { active } = terminal.buffer;
    return Array.from(
      { length: terminal.rows },
      (_, row) => active.getLine(active.baseY + row)?.translateToString(true) ?? '',
    );
  };
  return { painter, stream, terminal, writes, shown };
};

describe('painting frames', () => {
  test('a frame stands from the top row, on a screen that held something else', async () => {
    const { painter, terminal, shown } = easel();
    await new Promise<void>(resolve => terminal.write('old\r\nrows\r\nhere', resolve));
    painter.write('one\ntwo');
    expect(await shown()).toEqual(['one', 'two', '', '', '']);
  });

  test('only the rows that changed are written', async () => {
    const { painter, writes, shown } = easel();
    painter.write('one\ntwo\nthree');
    await shown();
    painter.write('one\nTWO\nthree');
    expect(writes.join('')).not.toContain('one');
    expect(await shown()).toEqual(['one', 'TWO', 'three', '', '']);
  });

  test('the same frame again writes nothing', async () => {
    const { painter, writes, shown } = easel();
    painter.write('one');
    await shown();
    painter.write('one');
    painter.write('');
    expect(writes).toEqual([]);
  });

  test('a row as wide as the screen keeps its last sign, and nothing scrolls', async () => {
    const { painter, shown } = easel(5, 3);
    painter.write('12345\n12345\n12345\n12345');
    expect(await shown()).toEqual(['12345', '12345', '12345']);
  });

  test('after a new width everything is written again', async () => {
    const { painter, stream, terminal, shown } = easel();
    painter.write('one\ntwo');
    await shown();
    stream.columns = 30;
    terminal.resize(30, 5);
    painter.write('one\ntwo');
    expect(await shown()).toEqual(['one', 'two', '', '', '']);
  });

  test('asked to, it paints the last frame on a screen somebody else wrote on', async () => {
    const { painter, terminal, shown } = easel();
    painter.write('one\ntwo');
    await shown();
    await new Promise<void>(resolve => terminal.write('\u001B[2Jshell> fg', resolve));
    painter.repaint();
    expect(await shown()).toEqual(['one', 'two', '', '', '']);
  });

  test('whatever frames came before, the screen shows the last one', async () => {
    const line = fc.string({ unit: fc.constantFrom('a', 'b', ' ', '✓', '█'), maxLength: 8 });
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(line, { minLength: 1, maxLength: 6 }), { minLength: 1, maxLength: 5 }),
        async frames => {
          const { painter, shown } = easel(8, 5);
          for (const frame of frames) painter.write(frame.join('\n'));
          const wanted = frames.filter(frame => frame.join('\n') !== '').at(-1) ?? [];
          const padded = Array.from({ length: 5 }, (_, row) => (wanted[row] ?? '').trimEnd());
          expect((await shown()).map(row => row.trimEnd())).toEqual(padded);
        },
      ),
      { numRuns: 60 },
    );
  });
});

test("rows that are ready stand in the place of the frame's own, and only those that changed are written", () => {
  let ready = ['one', 'two'];
  const written: string[] = [];
  const painter = framePainter(
    { write: text => written.push(text), columns: 80, rows: 24, on: () => {}, off: () => {} },
    () => ready,
  );
  painter.write(' \n \nprompt');
  expect(written.join('')).toMatch(/one.*two.*prompt/s);
  ready = ['one', 'three'];
  painter.write(' \n \nprompt');
  expect(written[1]).toContain('three');
  expect(written[1]).not.toMatch(/one|prompt/);
});
