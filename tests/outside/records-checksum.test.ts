import { crc32 as zlibCrc32 } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crc32 } from '../../src/records/crc32.ts';

describe('the checksum of a records file', () => {
  it('gives the check value of CRC-32 (ISO 3309, ITU-T V.42) for the digits one to nine', () => {
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
  });

  it('agrees with zlib on any bytes, in one piece or in two', () => {
    fc.assert(
      fc.property(fc.uint8Array(), fc.uint8Array(), (head, tail) => {
        const whole = zlibCrc32(Buffer.concat([head, tail]));
        expect(crc32(tail, crc32(head))).toBe(whole);
      }),
    );
  });
});
