/**
 * What a drawing shows, in mm, with the line each thing belongs to. x right, y up. Renderers decide cells, strokes and colours.
 */
export type ScenePoint = Readonly<{ x: number; y: number }>;

export type SceneItem =
  /** `solid` steel as it is or will be, `dotted` a line laid out, `lit` the thing the step is about. */
  | Readonly<{
      is: 'path';
      points: readonly ScenePoint[];
      stroke: 'solid' | 'dotted' | 'lit';
      side?: 'plus' | 'minus';
    }>
  | Readonly<{ is: 'label'; at: ScenePoint; text: string; anchor: 'left' | 'middle' | 'right'; lit?: true }>
  | Readonly<{ is: 'mark'; at: ScenePoint; sign: 'dot' | 'here' | 'plus' | 'minus'; lit?: true }>;

export type Scene = Readonly<{
  /** What is drawn and how, in words: "side view, to scale", "offsets x 10, curve to scale". */
  title: string;
  items: readonly SceneItem[];
}>;
