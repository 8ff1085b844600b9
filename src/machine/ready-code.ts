import fs from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import process from 'node:process';
import vm from 'node:vm';
import { crc32 } from 'node:zlib';
import { makeFolder } from './make-folder.ts';

/** A part of the program that was loaded, and a way to keep its compiled form for the next start. */
export type ReadyCode<T> = Readonly<{ part: T; keep: () => void }>;

/** In front of the compiled form: its CRC-32, for the engine itself would run a damaged one. */
const SUM_BYTES = 4;

/** One file for each engine and each text: the engine compares no more of a text than its length. */
const keptName = (file: string, text: Buffer): string =>
  `${path.parse(file).name}-${process.version}-${process.arch}-${crc32(text).toString(16)}.code`;

const readKept = (kept: string): Buffer | undefined => {
  try {
    const bytes = fs.readFileSync(kept);
    const code = bytes.subarray(SUM_BYTES);
    return bytes.length > SUM_BYTES && bytes.readUInt32LE(0) === crc32(code) ? code : undefined;
  } catch {
    return undefined;
  }
};

/** Writes beside and moves into place; what other versions of the program left behind goes. */
const writeKept = (kept: string, code: Buffer): void => {
  const folder = path.dirname(kept);
  const part = path.basename(kept).replace(/-.*/s, '-');
  const sum = Buffer.alloc(SUM_BYTES);
  sum.writeUInt32LE(crc32(code));
  const beside = `${kept}.${process.pid}`;
  try {
    makeFolder(folder);
    fs.writeFileSync(beside, Buffer.concat([sum, code]));
    fs.renameSync(beside, kept);
    for (const name of fs.readdirSync(folder)) {
      const old = path.join(folder, name);
      if (name.startsWith(part) && name.includes('.code') && old !== kept) fs.rmSync(old, { force: true });
    }
  } catch {
    // A start that takes a tenth of a second longer is all that is lost.
    try {
      fs.rmSync(beside, { force: true });
    } catch {
      // There is no such folder.
    }
  }
};

/**
 * Loads a bundled part of the program (CommonJS) together with what the engine made of it at an earlier start, which saves
 * about half of the start. Throws when the bundle is not there.
 * @param file the bundle
 * @param folder where compiled forms are kept; may not exist yet
 */
export const readyCode = <T>(file: string, folder: string): ReadyCode<T> => {
  const text = fs.readFileSync(file);
  const kept = path.join(folder, keptName(file, text));
  const cachedData = readKept(kept);
  const script = new vm.Script(
    // One byte a sign (the bundle is written so): half the memory.
    `(function(exports,require,module,__filename,__dirname){${text.toString('latin1')}\n})`,
    {
      filename: file,
      importModuleDynamically: vm.constants.USE_MAIN_CONTEXT_DEFAULT_LOADER,
      ...(cachedData === undefined ? {} : { cachedData }),
    },
  );
  const known = cachedData !== undefined && script.cachedDataRejected !== true;
  const module = { exports: {} };
  script.runInThisContext()(module.exports, createRequire(file), module, file, path.dirname(file));
  return {
    part: module.exports as T,
    keep: () => {
      if (!known) writeKept(kept, script.createCachedData());
    },
  };
};
