import * as z from 'zod/mini';
import { BAR_SAWS } from '../../ramp/cutting/bar-saw.ts';
import type { StoredEntry } from '../journal-line.ts';
import { type Understood, upcast, versionTable } from '../versions/upcast.ts';

/**
 * What the shop remembers across builds: one entry an act, in the same lines as a build's journal. Numbers a person typed are
 * kept twice, in inner units and as typed. Sections go by their name as sold ("40x40x3", "flat 60x3", "board 145x38").
 */
const positive = z.number().check(z.positive());
const key = z.string().check(z.minLength(1), z.maxLength(200));
const typed = z.string().check(z.maxLength(200));
const count = z.int().check(z.positive());

export const MINUTES_OF = ['cut', 'slit', 'joint'] as const;

const DOINGS = {
  /** What the yard asks for one bar of this length. */
  'price-set': { section: key, bar_mm: positive, price: z.number().check(z.nonnegative()), typed },
  /** Lengths the yard sells of a section, all of them. */
  'bar-sizes-set': { section: key, bars_mm: z.array(positive).check(z.minLength(1), z.maxLength(12)) },
  /** An end worth keeping: from another job, or left of a build. */
  'offcut-kept': { section: key, length_mm: positive, typed, build: z.optional(key) },
  'offcut-used': { offcut: key, build: z.optional(key) },
  /** Bars bought for a build with the pieces each is for, and offcuts it takes: frozen as they stood on the sheet. */
  'bars-bought': {
    build: key,
    bars: z.array(
      z.strictObject({
        section: key,
        length_mm: positive,
        needs: z.array(key),
        /** What is chalked on it: "2b", the second part of the second bar. */
        label: z.optional(key),
        /** What squaring takes of it. */
        trim_mm: z.optional(z.number().check(z.nonnegative())),
      }),
    ),
    offcuts: z.array(key),
  },
  'saw-kerf-read': { saw: z.enum(['bars', 'slits']), kerf_mm: positive, typed },
  'minutes-logged': { what: z.enum(MINUTES_OF), count, minutes: positive },
  'machine-set': { machine: z.literal('bar saw'), saw: z.enum(BAR_SAWS) },
  'aim-set': { aim: z.enum(['price', 'bars', 'length']) },
  'carry-set': { length_mm: positive, typed },
  'entry-struck': { target: key },
} as const;

export type ShopKind = keyof typeof DOINGS;

const stamp = {
  id: key,
  n: z.int(),
  v: z.literal(1),
  at: z.string(),
  replaces: z.optional(z.array(key)),
};

const member = <K extends ShopKind>(kind: K) =>
  z.strictObject({ ...stamp, kind: z.literal(kind), ...DOINGS[kind] });

const SCHEMAS = {
  'price-set': member('price-set'),
  'bar-sizes-set': member('bar-sizes-set'),
  'offcut-kept': member('offcut-kept'),
  'offcut-used': member('offcut-used'),
  'bars-bought': member('bars-bought'),
  'saw-kerf-read': member('saw-kerf-read'),
  'minutes-logged': member('minutes-logged'),
  'machine-set': member('machine-set'),
  'aim-set': member('aim-set'),
  'carry-set': member('carry-set'),
  'entry-struck': member('entry-struck'),
} as const;

export type ShopEntry = { [K in ShopKind]: Readonly<z.infer<(typeof SCHEMAS)[K]>> }[ShopKind];
/** An entry before it is stamped with id, count and time. */
export type ShopDoing = {
  [K in ShopKind]: Omit<Extract<ShopEntry, { kind: K }>, 'id' | 'n' | 'v' | 'at'>;
}[ShopKind];

const TABLE = versionTable(Object.keys(SCHEMAS), []);

/** A stored entry of the shop as this version knows it. Never throws. */
export const understandShop = (stored: StoredEntry): Understood<ShopEntry> => {
  const understood = upcast(stored, TABLE);
  if (understood.is !== 'current') return understood;
  const parsed = SCHEMAS[stored.kind as ShopKind].safeParse(understood.entry);
  return parsed.success
    ? { is: 'current', entry: parsed.data as ShopEntry }
    : { is: 'unfit', reason: `what the entry says does not fit its kind (${stored.kind})` };
};
