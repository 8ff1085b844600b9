import type { View } from '../../coach/view.ts';
import type { System } from '../../quantity/quantities.ts';
import { write } from '../../quantity/write.ts';
import type { FieldSpec } from '../fields/field-spec.ts';
import { togetherWith } from './begin-parts.ts';
import type { Part, Said } from './design-part.ts';

type NumberPart = Part & { is: 'number' };

/** The field of a number that is asked at a build's beginning. */
export type BeginField = Readonly<{
  spec: FieldSpec;
  /** The parts that an empty Enter, or Tab, answers with the usual; more than one where numbers go together. */
  parts: readonly NumberPart[];
  /** What is usual for each of them, with its inner unit. */
  usual: readonly string[];
}>;

export const beginField = (part: NumberPart, said: Said, view: View, system: System): BeginField => {
  const start = part.start(said, view);
  const together = togetherWith(part);
  const parts = together.length === 0 ? [part] : together;
  const takes = parts
    .map(p => write(p.start(said, view), p.as, system, { unit: p === parts.at(-1) }))
    .join(' x ');
  return {
    spec: {
      quantity: part.as,
      system,
      ...(part.called === undefined ? {} : { asks: `${part.called} of the ${part.question}` }),
      ...(part.possible === undefined ? {} : { possible: part.possible }),
      emptyTakes: start,
      ...(together.length === 0
        ? {}
        : {
            emptyWords: takes,
            together: together.map(p => ({
              name: p.called ?? '',
              ...(p.possible === undefined ? {} : { possible: p.possible }),
            })),
          }),
      otherWay: `take ${takes}`,
    },
    parts,
    usual: parts.map(p => `${p.start(said, view)} ${p.inner}`),
  };
};
