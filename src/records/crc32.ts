/** The polynomial of ISO 3309 and ITU-T V.42, bits reversed. */
const POLYNOMIAL = 0xedb88320;

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let remainder = byte;
  for (let bit = 0; bit < 8; bit++) {
    remainder = remainder & 1 ? POLYNOMIAL ^ (remainder >>> 1) : remainder >>> 1;
  }
  return remainder;
});

/**
 * The checksum of ISO 3309 (CRC-32) over bytes that come in pieces.
 * @param before what it gave for the bytes before these; 0 at the start
 * @returns 0 to 4294967295
 */
export function crc32(bytes: Uint8Array, before = 0): number {
  let remainder = ~before;
  for (const byte of bytes) remainder = (TABLE[(remainder ^ byte) & 0xff] ?? 0) ^ (remainder >>> 8);
  return ~remainder >>> 0;
}

/** A checksum as it stands in a file: eight hexadecimal digits. */
export function crc32Text(checksum: number): string {
  return checksum.toString(16).padStart(8, '0');
}
