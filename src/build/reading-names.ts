/**
 * Readings whose numbers the ramp is computed from. A stage asks for them under these names; the facts are read from the same.
 */
export const READINGS = {
  /** Caliper on receipt, per rail. */
  tube: (rail: string) => `cut/measure-tube@${rail}`,
  /** Turn of the test piece after its five slits are closed, rad. */
  testKerf: { step: 'cut/test-piece', ask: 'turn', slits: 5 },
  /** Turn of the test piece after three of its slits are welded and cold, rad. */
  testPull: { step: 'weld/test-piece', ask: 'turn', slits: 3 },
  /** Narrowest kerf of a third by feeler, mm. */
  feeler: (rail: string, third: number) => `cut/deburr-third@${rail}:${third}`,
  /** Bend of a rail so far, after a third is closed and tacked, rad. */
  bent: (rail: string, third: number) => `tack/read-third@${rail}:${third}`,
} as const;
