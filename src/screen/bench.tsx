import { Box, Text, Transform, useFocusManager } from 'ink';
import { Component, type ReactNode, useEffect, useState, useSyncExternalStore } from 'react';
import { rowText } from '../drawing/cells.ts';
import type { Row } from '../drawing/row.ts';
import { TextField } from './fields/text-field.tsx';
import { smallPage } from './pages/small-page.ts';
import type { Desk } from './places/desk.ts';
import { ansi, type Colour } from './styles.ts';
import { useTerminalSize } from './terminal/size.tsx';
import { useKeys } from './terminal/use-keys.ts';

/** Below this a page would lose its foot or its words: the small page says how large to make the window. */
export const SMALLEST = { columns: 80, rows: 24 } as const;

/** Redraws when the desk says so. */
export type Redraw = Readonly<{ subscribe: (changed: () => void) => () => void; count: () => number }>;

/**
 * The rows of a page, each as one text with its colours in it. Rows are cut to the page already, so Ink need not measure and
 * wrap every span of them: it lays out empty rows, and each is written as it leaves. A screen reader gets the words themselves.
 */
const PageRows = ({ rows, colour }: { rows: readonly Row[]; colour: Colour }) => {
  if (process.env.INK_SCREEN_READER === 'true') return <Text>{rows.map(rowText).join('\n')}</Text>;
  const blank = Array.from({ length: rows.length }, () => ' ').join('\n');
  return (
    <Transform transform={(line, index) => (rows[index] === undefined ? line : ansi(rows[index], colour))}>
      <Text>{blank}</Text>
    </Transform>
  );
};

/** The whole bench: asks the desk for its rows and hands it every key. */
const Page = ({
  desk,
  colour,
  ascii,
  redraw,
}: {
  desk: Desk;
  colour: Colour;
  ascii: boolean;
  redraw: Redraw;
}) => {
  const size = useTerminalSize();
  const [, setKeys] = useState(0);
  const { disableFocus } = useFocusManager();
  useSyncExternalStore(redraw.subscribe, redraw.count);
  useEffect(() => disableFocus(), [disableFocus]);
  desk.look = { ...size, ascii };
  const tooSmall = size.columns < SMALLEST.columns || size.rows < SMALLEST.rows;
  useKeys(keys => {
    // Nobody sees what a key would do: only leaving and suspending act.
    if (tooSmall) {
      for (const key of keys) {
        if (key.char === 'q' || key.name === 'ctrl-c') desk.quit(key.name === 'ctrl-c' ? 130 : 0);
        else if (key.name === 'ctrl-z') desk.around.suspend();
      }
    } else desk.keys(keys);
    setKeys(n => n + 1);
  });
  const text = desk.text;
  const rows = tooSmall ? smallPage(desk, size) : desk.rows();
  const shown = text === null ? rows : rows.slice(0, -1);
  return (
    <Box flexDirection="column" width={size.columns} height={Math.max(1, size.rows - 1)} overflow="hidden">
      <PageRows rows={shown} colour={colour} />
      {text === null ? null : (
        <Box height={1}>
          <TextField title={text.title} line={text.line} columns={size.columns} />
        </Box>
      )}
    </Box>
  );
};

/** A page that cannot be drawn must not take the evening with it: what was entered is on disk, and the other pages still open. */
class Guard extends Component<{ desk: Desk; children: ReactNode }, { error: unknown }> {
  override state: { error: unknown } = { error: null };
  static getDerivedStateFromError(error: unknown) {
    return { error };
  }
  override componentDidCatch(error: unknown): void {
    this.props.desk.failed(error);
  }
  override render(): ReactNode {
    return this.state.error === null ? (
      this.props.children
    ) : (
      <Text>This page cannot be drawn. Everything entered is on disk.</Text>
    );
  }
}

export const Bench = (props: { desk: Desk; colour: Colour; ascii: boolean; redraw: Redraw }) => (
  <Guard desk={props.desk}>
    <Page {...props} />
  </Guard>
);
