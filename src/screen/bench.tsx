import { Box, Text, useFocusManager } from 'ink';
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
 * The rows of a page. Rows are cut to the page and coloured already, so Ink need not measure, wrap and take apart every span of
 * them at every key: it lays out empty rows, and the painter puts ours in their place. A screen reader gets the words themselves.
 */
const PageRows = ({ rows }: { rows: readonly Row[] }) =>
  process.env.INK_SCREEN_READER === 'true' ? (
    <Text>{rows.map(rowText).join('\n')}</Text>
  ) : (
    <Text>{Array.from({ length: rows.length }, () => ' ').join('\n')}</Text>
  );

type BenchProps = Readonly<{
  desk: Desk;
  colour: Colour;
  ascii: boolean;
  redraw: Redraw;
  /** Takes the rows that the painter puts in the place of Ink's empty ones. */
  paint: (rows: readonly string[]) => void;
}>;

/** The whole bench: asks the desk for its rows and hands it every key. */
const Page = ({ desk, colour, ascii, redraw, paint }: BenchProps) => {
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
  paint(shown.map(r => ansi(r, colour)));
  return (
    <Box flexDirection="column" width={size.columns} height={Math.max(1, size.rows - 1)} overflow="hidden">
      <PageRows rows={shown} />
      {text === null ? null : (
        <Box height={1}>
          <TextField title={text.title} line={text.line} columns={size.columns} />
        </Box>
      )}
    </Box>
  );
};

/** A page that cannot be drawn must not take the evening with it: what was entered is on disk, and the other pages still open. */
class Guard extends Component<
  Pick<BenchProps, 'desk' | 'paint'> & { children: ReactNode },
  { error: unknown }
> {
  override state: { error: unknown } = { error: null };
  static getDerivedStateFromError(error: unknown) {
    return { error };
  }
  override componentDidCatch(error: unknown): void {
    this.props.desk.failed(error);
  }
  override render(): ReactNode {
    if (this.state.error === null) return this.props.children;
    this.props.paint([]);
    return <Text>This page cannot be drawn. Everything entered is on disk.</Text>;
  }
}

export const Bench = (props: BenchProps) => (
  <Guard desk={props.desk} paint={props.paint}>
    <Page {...props} />
  </Guard>
);
