export type FileFaultCode =
  | 'missing'
  | 'exists'
  | 'not-a-file'
  | 'not-a-journal'
  | 'other-format'
  | 'too-large'
  | 'no-permission'
  | 'read-only-disk'
  | 'disk-full'
  | 'disk-fault'
  | 'changed'
  | 'read-only'
  | 'too-long';

/** What went wrong with a file: as data, with the words a person can act on. `cause` is the system's own code. */
export type FileFault = Readonly<{ code: FileFaultCode; path: string; message: string; cause?: string }>;

const WORDS: Readonly<Record<FileFaultCode, string>> = {
  missing: 'there is no such file',
  exists: 'a file of that name is there already',
  'not-a-file': 'that is not a file',
  'not-a-journal': 'that file is not a journal of Curvewright',
  'other-format':
    'that journal is of the other sort: a build where the shop belongs, or the shop where a build belongs',
  'too-large': 'the file is larger than any build',
  'no-permission': 'this account may not write or read there',
  'read-only-disk': 'the disk can only be read',
  'disk-full': 'the disk is full',
  'disk-fault': 'the disk did not take it',
  changed: 'something else wrote to the file since it was read',
  'read-only': 'the build can be looked at, not written',
  'too-long': 'that is too long for one entry',
};

const CODES: Readonly<Record<string, FileFaultCode>> = {
  ENOENT: 'missing',
  ENOTDIR: 'missing',
  EEXIST: 'exists',
  EISDIR: 'not-a-file',
  EACCES: 'no-permission',
  EPERM: 'no-permission',
  EROFS: 'read-only-disk',
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  EFBIG: 'disk-full',
};

/** A fault of our own finding. `message` in place of the usual words where more can be said. */
export const fileFault = (code: FileFaultCode, path: string, message: string = WORDS[code]): FileFault => ({
  code,
  path,
  message,
});

/** The system's error code of a thrown value, for example `ENOSPC`, or null. */
export const errorCode = (error: unknown): string | null => {
  const code = error instanceof Error && 'code' in error ? error.code : null;
  return typeof code === 'string' ? code : null;
};

/** A thrown system error as a fault. What is no system error is a bug and is thrown on. */
export const faultFrom = (error: unknown, path: string): FileFault => {
  const cause = errorCode(error);
  if (cause === null) throw error;
  const code = CODES[cause] ?? 'disk-fault';
  return { code, path, message: WORDS[code], cause };
};
