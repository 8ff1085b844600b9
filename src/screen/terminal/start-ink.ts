import process from 'node:process';
import { type Instance, type RenderOptions, render } from 'ink';
import type { ReactNode } from 'react';
import { framePainter } from './painter.ts';
import type { InkApp, Session } from './session.ts';

/**
 * Draws a React tree on the screen the session has taken. Ink lays out and hands over whole frames (`debug` is its name for
 * that); the painter writes what changed. A screen reader gets Ink's own linear output on the ordinary screen instead.
 * @param ready rows from the top that are painted as they are, in the place of what Ink laid out there.
 */
export const startInk = (
  node: ReactNode,
  session: Pick<Session, 'onRepaint'>,
  ready: () => readonly string[] = () => [],
): InkApp => {
  // Ctrl-C is a key like the others: Ink would end with code 0.
  const shared: RenderOptions = { exitOnCtrlC: false, patchConsole: false };
  if (process.env.INK_SCREEN_READER === 'true') return running(render(node, shared));

  const painter = framePainter(process.stdout, ready);
  const stop = session.onRepaint(painter.repaint);
  // Ink uses of its stream only what the painter has.
  const stdout = painter as unknown as NodeJS.WriteStream;
  return running(render(node, { ...shared, stdout, debug: true }), stop);
};

const running = (instance: Instance, stop: () => void = () => {}): InkApp => ({
  unmount: () => {
    stop();
    instance.unmount();
  },
  waitUntilExit: instance.waitUntilExit,
});
