import { Text } from 'ink';
import { render } from 'ink-testing-library';
import { expect, test, vi } from 'vitest';
import { SizeContext, settableSize, useTerminalSize } from '../../../src/screen/terminal/size.tsx';

const Shown = () => {
  const { columns, rows } = useTerminalSize();
  return (
    <Text>
      {columns} x {rows}
    </Text>
  );
};

test('a page takes its size from the store it is given, and is drawn again when that changes', async () => {
  const store = settableSize(44, 13);
  const { lastFrame } = render(
    <SizeContext value={store}>
      <Shown />
    </SizeContext>,
  );
  expect(lastFrame()).toBe('44 x 13');
  store.set(120, 40);
  await vi.waitFor(() => expect(lastFrame()).toBe('120 x 40'));
});
