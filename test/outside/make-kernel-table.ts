import { readFileSync, writeFileSync } from 'node:fs';
import { KERNEL_CASES, kernelTable, withTable } from './kernel-table.ts';

/** Writes the table of kernels in DEVELOPERS.md anew. Run from the project's root: npm run kernels. */
const page = withTable(readFileSync('DEVELOPERS.md', 'utf8'), await kernelTable(KERNEL_CASES));
if (page === undefined) throw new Error('DEVELOPERS.md has no marks between which the table would stand');
writeFileSync('DEVELOPERS.md', page);
