/** The processes a garage has: solid wire under gas, self-shielded cored wire, covered rods. */
export type Process = 'gmaw' | 'fcaw-s' | 'smaw';

export const PROCESSES: readonly Process[] = ['gmaw', 'fcaw-s', 'smaw'];
