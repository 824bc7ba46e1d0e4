/** The polynomial of ISO 3309 and ITU-T V.42, bits reversed. */
const POLYNOMIAL = 0xedb88320;

/** Bytes taken at a step ("slicing by eight"): ten times as fast as byte by byte, and a file is a hundred megabytes. */
const BYTES_A_STEP = 8;

/** For each place in a step, what every byte there leaves behind: the table of place 0 is the one of a single byte. */
const LEAVES = new Int32Array(BYTES_A_STEP << 8);
for (let byte = 0; byte < 256; byte++) {
  let remainder = byte;
  for (let bit = 0; bit < 8; bit++) {
    remainder = remainder & 1 ? POLYNOMIAL ^ (remainder >>> 1) : remainder >>> 1;
  }
  LEAVES[byte] = remainder;
}
for (let at = 256; at < LEAVES.length; at++) {
  const nearer = left(0, at - 256);
  LEAVES[at] = left(0, nearer & 0xff) ^ (nearer >>> 8);
}

function left(place: number, byte: number): number {
  return LEAVES[(place << 8) | byte] ?? 0;
}

/**
 * The checksum of ISO 3309 (CRC-32) over bytes that come in pieces.
 * @param before what it gave for the bytes before these; 0 at the start
 * @returns 0 to 4294967295
 */
export function crc32(bytes: Uint8Array, before = 0): number {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const steps = bytes.length - (bytes.length % BYTES_A_STEP);
  let remainder = ~before;
  for (let at = 0; at < steps; at += BYTES_A_STEP) {
    const near = remainder ^ view.getInt32(at, true);
    const far = view.getInt32(at + 4, true);
    remainder =
      left(7, near & 0xff) ^
      left(6, (near >>> 8) & 0xff) ^
      left(5, (near >>> 16) & 0xff) ^
      left(4, near >>> 24) ^
      left(3, far & 0xff) ^
      left(2, (far >>> 8) & 0xff) ^
      left(1, (far >>> 16) & 0xff) ^
      left(0, far >>> 24);
  }
  for (let at = steps; at < bytes.length; at++) {
    remainder = left(0, (remainder ^ view.getUint8(at)) & 0xff) ^ (remainder >>> 8);
  }
  return ~remainder >>> 0;
}

/** A checksum as it stands in a file: eight hexadecimal digits. */
export function crc32Text(checksum: number): string {
  return checksum.toString(16).padStart(8, '0');
}
