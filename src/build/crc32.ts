/**
 * CRC-32 as zlib, PNG and Ethernet use it: reflected polynomial EDB88320, start and final value FFFFFFFF.
 * Published check value (ISO 3309, ITU-T V.42; the same in every catalogue of CRCs): "123456789" gives CBF43926.
 * Own and not `zlib.crc32`: that one came with Node 20.15 and 22.2 and is missing from 21, and this room knows no Node.
 */
const TABLE: Uint32Array = Uint32Array.from({ length: 256 }, (_, byte) => {
  let c = byte;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1;
  return c >>> 0;
});

/** The CRC-32 of some bytes, as an unsigned 32-bit number. Returns no error. */
export const crc32 = (bytes: Uint8Array): number => {
  let c = 0xffffffff;
  for (let i = 0; i < bytes.length; i++) c = (c >>> 8) ^ TABLE[(c ^ bytes[i]!) & 0xff]!;
  return (c ^ 0xffffffff) >>> 0;
};

const encoder = new TextEncoder();

/** The CRC-32 of a text's UTF-8 bytes as eight small hexadecimal digits, for example `cbf43926`. */
export const sumOf = (text: string): string => crc32(encoder.encode(text)).toString(16).padStart(8, '0');
