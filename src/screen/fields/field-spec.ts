import type { Quantity, System } from '../../quantity/quantities.ts';

/** What a side of the line is called and how the eye tells it. */
export type Side = Readonly<{
  /** TOWARD THE CENTRE */
  name: string;
  /** What is seen, with `{v}` for the size: "You see the line beyond the bottom face, {v} of it." */
  seen: string;
  /** When to take this side, after "press - if": "the rail hides the line". */
  when: string;
}>;

/** What one number field asks for. */
export type FieldSpec = Readonly<{
  quantity: Quantity;
  /** The build's units: a bare number is in them. */
  system: System;
  /** What the number is, beside the figure: "radius of the DECK TOP, where wheels roll". */
  asks?: string;
  /** `plain` for a number that may be below zero (a temperature); sides for an offset, where + is toward the centre. */
  sign?: 'plain' | Readonly<{ plus: Side; minus: Side }>;
  /** Lowest and highest expected, inner units. Outside it a second Enter is asked for; nothing is refused. */
  expected?: readonly [number, number];
  /** Lowest and highest there can be, inner units. Outside it the number is refused. */
  possible?: readonly [number, number];
  /** What would do, when the number is impossible. */
  instead?: string;
  /** What an empty Enter is answered: "type 0 if it lies on the line". */
  whenEmpty?: string;
  /** What an empty Enter takes, inner unit: it stands greyed in the figure's place. For answers with a default, never for a reading. */
  emptyTakes?: number;
  /** How all that an empty Enter takes reads, where it is more than that one number: "40 x 40 x 3 mm". */
  emptyWords?: string;
  /** The numbers that may be typed at once with an x between them, this one first. */
  together?: readonly Readonly<{ name: string; possible?: readonly [number, number] }>[];
  /** The other way Tab takes: "45.0°", "cannot read here". */
  otherWay?: string;
  /** What several pasted numbers would be: "one for each station from 14". Without it one number is wanted. */
  several?: string;
}>;
