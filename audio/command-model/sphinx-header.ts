/**
 * The "s3" container of CMU Sphinx parameter files: a text header that ends in `endhdr`, a byte-order word, data.
 * Source of the format: `bio_readhdr` in sphinxbase/src/libsphinxbase/util/bio.c (CMU Sphinx, BSD licence).
 */
import { ByteCursor } from './byte-cursor.ts';

const byteOrderMagic = 0x11223344;
const lineFeed = 10;

/** A cursor that stands behind the header and the byte-order word of an s3 file. */
export function openSphinxFile(bytes: Uint8Array, fileName: string): ByteCursor {
  const cursor = new ByteCursor(bytes, fileName);
  if (cursor.textUntil(lineFeed) !== 's3') throw new Error(`${fileName} is not a Sphinx s3 file.`);
  while (cursor.textUntil(lineFeed).trim() !== 'endhdr');
  if (cursor.uint32() !== byteOrderMagic)
    throw new Error(`${fileName} is not little-endian, which is all we read.`);
  return cursor;
}
