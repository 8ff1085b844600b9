import * as z from 'zod/mini';

/**
 * What a build is made of: one entry an act. A number that a person typed is kept twice, in mm/rad/kg/… and as typed.
 * Anything a person acts on (slit marks, a remedy's plan, the figures behind a tick) is frozen in its entry.
 */
const finite = z.number();
const text = z.string().check(z.maxLength(2000));
const key = z.string().check(z.minLength(1), z.maxLength(200));
const basis = z.record(key, finite);

const tube = z.strictObject({ depth_mm: finite, width_mm: finite, wall_mm: finite });
const shape = z.strictObject({
  height: z.optional(finite),
  run: z.optional(finite),
  radius: z.optional(finite),
  exit: z.optional(finite),
  arc: z.optional(finite),
});

/** One schema a design field; one field an entry, so that two copies that changed two fields both survive. */
export const DESIGN_VALUES = {
  use: z.enum(['bike', 'scooter', 'skate', 'inline skates']),
  shape,
  straight: finite,
  width: finite,
  tube,
  post: tube,
  route: z.enum(['slit', 'rolled']),
  cutter: z.strictObject({ kind: z.enum(['thin disc', 'band saw', 'hacksaw', 'chop saw']), kerf_mm: finite }),
  grinder: finite,
  rider: finite,
  door: z.strictObject({ width_mm: finite, height_mm: finite }),
  deck: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('sheet'), layer_mm: finite, layers: z.int() }),
    z.strictObject({ kind: z.literal('boards'), thickness_mm: finite, board_mm: finite }),
  ]),
  first: z.boolean(),
  sequence: z.enum(['in step', 'one after the other']),
  tolerance: z.enum(['novice', 'careful shop']),
  clamps: z.int(),
  standard: z.enum(['AISC', 'EN']),
  spacing: finite,
  diagonals: finite,
  rails: z.int(),
  ground: z.enum(['concrete', 'gravel', 'sand', 'clay', 'dry lawn', 'wet lawn', 'soft or filled ground']),
} as const;

export const SURVEY_PHASES = ['tacked', 'half-welded', 'cold', 'braced', 'unclamped'] as const;
/** `curve`: offsets square to the line. `sideways`: bow from a string along the side, + toward the middle of the ramp. */
export const SURVEY_KINDS = ['curve', 'sideways'] as const;
export const FACES = ['rail bottom face', 'rail top face'] as const;
/** The line the blocks stand on before welding, or the line the finished rail is to lie on. */
export const SURVEY_LINES = ['tack line', 'finished line'] as const;

const DOINGS = {
  'build-begun': { name: text, system: z.enum(['metric', 'us']), invented: z.optional(z.boolean()) },
  'design-set': {
    field: z.enum(Object.keys(DESIGN_VALUES) as [keyof typeof DESIGN_VALUES]),
    value: z.unknown(),
  },
  'design-agreed': {},
  'step-ticked': { step: key, basis },
  'step-skipped': { step: key, why: text },
  /** A gate that is shut and was passed all the same, with the reason. */
  'gate-overridden': { step: key, gate: key, why: text },
  /** A figure read at the bench: which step asked, which of its readings. */
  'reading-logged': { step: key, ask: key, value: finite, typed: text, basis },
  'slits-marked': {
    rail: key,
    third: z.int(),
    /** Number of the first slit of this third, from 1. */
    first: z.int(),
    marks_mm: z.array(finite),
    close_rad: finite,
    gap_mm: finite,
    kerf_mm: finite,
  },
  'slit-noted': {
    rail: key,
    slit: z.int(),
    note: z.enum(['nicked', 'shallow', 'moved', 'missed']),
    at_mm: z.optional(finite),
  },
  'piece-cut': {
    need: key,
    section: key,
    asked_mm: finite,
    length_mm: finite,
    typed: text,
    ends_rad: z.tuple([finite, finite]),
  },
  'piece-fated': { piece: key, fate: z.enum(['fitted', 'welded', 'spoiled']), need: z.optional(key) },
  'survey-opened': {
    kind_of: z.enum(SURVEY_KINDS),
    rail: key,
    phase: z.enum(SURVEY_PHASES),
    edge: z.enum(FACES),
    to: z.enum(SURVEY_LINES),
    stations_mm: z.array(finite),
    read_to_mm: finite,
  },
  'offsets-read': {
    survey: key,
    readings: z.array(z.strictObject({ station: z.int(), offset_mm: finite, typed: text })),
  },
  'survey-closed': { survey: key },
  'remedy-chosen': {
    finding: key,
    remedy: key,
    plan: z.record(key, z.unknown()),
    predicted_mm: z.optional(finite),
    /** What the finding said when it was decided, mm: a finding that grew since is open again. */
    worst_mm: z.optional(finite),
  },
  'caution-known': { caution: key },
  remarked: { text, step: z.optional(key) },
  stopped: { step: z.optional(key) },
  /** Shop numbers a build works with from here on (kerf, weld pull, minutes, prices), copied when it began. */
  'shop-copied': { values: z.record(key, finite) },
  'entry-struck': { target: key },
} as const;

export type DoingKind = keyof typeof DOINGS;

const stamp = {
  id: key,
  n: z.int(),
  v: z.literal(1),
  at: z.string(),
  replaces: z.optional(z.array(key)),
};

const member = <K extends DoingKind>(kind: K) =>
  z.strictObject({ ...stamp, kind: z.literal(kind), ...DOINGS[kind] });

/** The schema of each kind of entry, version 1. */
export const ENTRY_SCHEMAS = {
  'build-begun': member('build-begun'),
  'design-set': member('design-set'),
  'design-agreed': member('design-agreed'),
  'step-ticked': member('step-ticked'),
  'step-skipped': member('step-skipped'),
  'gate-overridden': member('gate-overridden'),
  'reading-logged': member('reading-logged'),
  'slits-marked': member('slits-marked'),
  'slit-noted': member('slit-noted'),
  'piece-cut': member('piece-cut'),
  'piece-fated': member('piece-fated'),
  'survey-opened': member('survey-opened'),
  'offsets-read': member('offsets-read'),
  'survey-closed': member('survey-closed'),
  'remedy-chosen': member('remedy-chosen'),
  'caution-known': member('caution-known'),
  remarked: member('remarked'),
  stopped: member('stopped'),
  'shop-copied': member('shop-copied'),
  'entry-struck': member('entry-struck'),
} as const;

export type Entry = { [K in DoingKind]: Readonly<z.infer<(typeof ENTRY_SCHEMAS)[K]>> }[DoingKind];
export type EntryOf<K extends DoingKind> = Extract<Entry, { kind: K }>;
/** An entry before it is stamped with id, count and time. */
export type Doing = { [K in DoingKind]: Omit<EntryOf<K>, 'id' | 'n' | 'v' | 'at'> }[DoingKind];

/** The entry a stored line holds, or null when it is of no shape this version knows. */
export const asEntry = (stored: { kind: string }): Entry | null => {
  const schema = (
    ENTRY_SCHEMAS as Record<string, { safeParse(x: unknown): { success: boolean; data?: unknown } }>
  )[stored.kind];
  if (schema === undefined) return null;
  const parsed = schema.safeParse(stored);
  if (!parsed.success) return null;
  const entry = parsed.data as Entry;
  if (entry.kind === 'design-set' && !DESIGN_VALUES[entry.field].safeParse(entry.value).success) return null;
  return entry;
};
