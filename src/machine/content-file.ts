import { readFileSync } from 'node:fs';
import type { Content } from '../words/schema.ts';

let kept: Content | null = null;

/** The compiled words, read once: beside the bundle, or in dist/ when run from the source tree. */
export const readContent = (): Content => {
  if (kept !== null) return kept;
  for (const place of ['./content.json', '../dist/content.json', '../../dist/content.json']) {
    try {
      kept = JSON.parse(readFileSync(new URL(place, import.meta.url), 'utf8')) as Content;
      return kept;
    } catch (error) {
      if ((error as { code?: string }).code !== 'ENOENT') throw error;
    }
  }
  throw new Error('content.json is missing: run npm run build');
};
