import * as z from 'zod/mini';
import { INTENTS } from '../coach/intents.ts';
import { DESIGN_FIELDS } from '../ramp/design.ts';

const amount = z.union([z.string(), z.number()]);
const part = (names: readonly string[]) => z.record(z.enum(names as [string]), amount);

/** The JSON Schema of what `start --in` takes. Numbers may be texts with units; a bare number counts in the units of the build. */
export const answersSchema = (): object => {
  const tube = part(['depth_mm', 'width_mm', 'wall_mm']);
  const known: Record<string, z.core.$ZodType> = {
    use: z.enum(['bike', 'scooter', 'skate', 'inline skates']),
    shape: z.partialRecord(z.enum(['height', 'run', 'radius', 'exit', 'arc']), amount),
    straight: amount,
    width: amount,
    tube,
    post: tube,
    route: z.enum(['slit', 'rolled']),
    cutter: z.object({ kind: z.enum(['thin disc', 'band saw', 'hacksaw', 'chop saw']), kerf_mm: amount }),
    grinder: amount,
    rider: amount,
    door: part(['width_mm', 'height_mm']),
    deck: z.union([
      z.object({ kind: z.literal('sheet'), layer_mm: amount, layers: z.int() }),
      z.object({ kind: z.literal('boards'), thickness_mm: amount, board_mm: amount }),
    ]),
    first: z.boolean(),
    sequence: z.enum(['in step', 'one after the other']),
    tolerance: z.enum(['novice', 'careful shop']),
    clamps: amount,
    standard: z.enum(['AISC', 'EN']),
  };
  const fields = Object.fromEntries(DESIGN_FIELDS.map(f => [f, z.optional(known[f] ?? z.unknown())]));
  return z.toJSONSchema(z.strictObject({ units: z.optional(z.enum(['metric', 'us'])), ...fields } as never));
};

/** The JSON Schema of one line of `log --in`. */
export const intentSchema = (): object => z.toJSONSchema(z.union(Object.values(INTENTS) as never));
