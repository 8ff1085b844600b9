import { render } from 'ink-testing-library';
import { useState } from 'react';
import { describe, expect, test, vi } from 'vitest';
import { TextField } from '../../../src/screen/fields/text-field.tsx';
import { typedLine } from '../../../src/screen/fields/typed-line.ts';

describe('one line of text', () => {
  test('a line end typed after it is Enter', () => {
    expect(typedLine('horse 2 wobbles\r', '')).toEqual({ text: 'horse 2 wobbles', enter: true });
    expect(typedLine('abc', 'ab')).toEqual({ text: 'abc', enter: false });
  });

  test('a paste keeps its words and loses its marks, line ends and control characters', () => {
    expect(typedLine('[200~two\r\nlines\u0007\r[201~', '')).toEqual({ text: 'two lines ', enter: false });
  });

  test('marks that were typed before stay text', () => {
    expect(typedLine('see [200~ x', 'see [200~ ')).toEqual({ text: 'see [200~ x', enter: false });
  });
});

type Calls = { submitted: string[]; closed: number; suspended: number };

const Page = ({ calls }: { calls: Calls }) => {
  const [text, setText] = useState('');
  return (
    <TextField
      value={text}
      onChange={setText}
      onSubmit={line => calls.submitted.push(line)}
      onClose={() => {
        calls.closed += 1;
      }}
      onSuspend={() => {
        calls.suspended += 1;
      }}
    />
  );
};

/** A field in Ink, with what it called. */
const shown = async () => {
  const calls: Calls = { submitted: [], closed: 0, suspended: 0 };
  const ink = render(<Page calls={calls} />);
  // A probe is sent until it shows: what is written before Ink listens is lost.
  await vi.waitFor(() => {
    if (!ink.lastFrame()?.includes('~')) ink.stdin.write('~');
    expect(ink.lastFrame()).toContain('~');
  });
  const type = async (sent: string, frame: string): Promise<void> => {
    ink.stdin.write(sent);
    await vi.waitFor(() => expect(ink.lastFrame()?.trimEnd().replace(/^~+/, '')).toBe(frame));
  };
  return { ...ink, calls, type };
};

describe('a text field', () => {
  test('takes words and gives them at Enter', async () => {
    const { type, stdin, calls } = await shown();
    await type('battery flat', 'battery flat');
    stdin.write('\r');
    await vi.waitFor(() =>
      expect(calls.submitted.map(line => line.replace(/^~+/, ''))).toEqual(['battery flat']),
    );
  });

  test('words and Enter in one chunk are both taken', async () => {
    const { stdin, calls } = await shown();
    stdin.write('horse 2 wobbles\r');
    await vi.waitFor(() =>
      expect(calls.submitted.map(line => line.replace(/^~+/, ''))).toEqual(['horse 2 wobbles']),
    );
  });

  test('Ctrl-Z suspends and types no z, Ctrl-C closes', async () => {
    const { type, stdin, calls, lastFrame } = await shown();
    stdin.write('\u001A');
    await vi.waitFor(() => expect(calls.suspended).toBe(1));
    stdin.write('\u0003');
    await vi.waitFor(() => expect(calls.closed).toBe(1));
    await type('a', 'a');
    expect(lastFrame()).not.toMatch(/[zc]/);
  });

  test('Escape closes', async () => {
    const { stdin, calls } = await shown();
    stdin.write('\u001B');
    await vi.waitFor(() => expect(calls.closed).toBe(1));
  });
});
