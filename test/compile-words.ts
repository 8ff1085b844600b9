import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { compileContent } from '../src/making/compile-content.ts';

/** Before any test: the words as they stand, so that a test never reads an older build's. */
export const setup = (): void => {
  const root = join(import.meta.dirname, '..');
  mkdirSync(join(root, 'dist'), { recursive: true });
  writeFileSync(join(root, 'dist', 'content.json'), compileContent(root));
};
