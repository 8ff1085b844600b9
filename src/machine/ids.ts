import { randomUUID } from 'node:crypto';

/** A new id that no other copy of a build, on whatever machine, will ever give (UUID version 4). */
export const newId = (): string => randomUUID();
