import { readFileSync, writeFileSync } from 'node:fs';
import { tour, withTour } from './tour.ts';

process.env.TZ = 'UTC';

/** Writes README's screens anew. Run from the project's root: npm run tour. */
writeFileSync('README.md', withTour(readFileSync('README.md', 'utf8'), await tour()));
