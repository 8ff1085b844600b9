import type { VersionStep } from './upcast.ts';

/**
 * Every step that ever landed, one file a step beside this one, named after it: `slits-marked.1-to-2.ts`.
 * Every kind still stands at version 1, so there is none yet.
 */
export const VERSION_STEPS: readonly VersionStep[] = [];
