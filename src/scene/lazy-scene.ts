import type { Scene } from './scene.ts';

/** A scene that is drawn up only when somebody looks at it: of the drawings of a hundred steps one is shown. */
export const lazyScene = (draw: () => Scene): Scene => {
  let drawn: Scene | null = null;
  const scene = (): Scene => {
    drawn ??= draw();
    return drawn;
  };
  return {
    get title() {
      return scene().title;
    },
    get items() {
      return scene().items;
    },
  };
};
