/**
 * A tar archive with the same bytes wherever it is made: fixed owner, mode and time, entries in the order given.
 * Source of the format: POSIX.1-1988 "ustar", IEEE Std 1003.1 pax.
 * The recogniser's loader needs an entry for every folder, and drops the first folder of every path.
 */
export interface ArchiveFile {
  readonly path: string;
  readonly content: Uint8Array;
}

const blockSize = 512;

function header(path: string, size: number, kind: 'file' | 'folder'): Uint8Array {
  const block = new Uint8Array(blockSize);
  const put = (text: string, at: number) => block.set(new TextEncoder().encode(text), at);
  if (path.length > 100) throw new Error(`The path ${path} is too long for a plain tar entry.`);
  put(path, 0);
  put(kind === 'folder' ? '0000755\0' : '0000644\0', 100);
  put('0000000\0', 108); // owner
  put('0000000\0', 116); // group
  put(`${size.toString(8).padStart(11, '0')}\0`, 124);
  put('00000000000\0', 136); // time: the start of 1970
  put('        ', 148); // the checksum counts as spaces while it is computed
  put(kind === 'folder' ? '5' : '0', 156);
  put('ustar\x0000', 257);
  const sum = block.reduce((total, byte) => total + byte, 0);
  put(`${sum.toString(8).padStart(6, '0')}\0 `, 148);
  return block;
}

/** @param files paths with `/` between folders; folders get their entries before their first file. */
export function writeTar(files: readonly ArchiveFile[]): Uint8Array {
  const blocks: Uint8Array[] = [];
  const folders = new Set<string>();
  for (const { path, content } of files) {
    const parts = path.split('/').slice(0, -1);
    parts.forEach((_, depth) => {
      const folder = `${parts.slice(0, depth + 1).join('/')}/`;
      if (folders.has(folder)) return;
      folders.add(folder);
      blocks.push(header(folder, 0, 'folder'));
    });
    blocks.push(header(path, content.length, 'file'), content);
    blocks.push(new Uint8Array((blockSize - (content.length % blockSize)) % blockSize));
  }
  blocks.push(new Uint8Array(2 * blockSize));
  const total = blocks.reduce((sum, block) => sum + block.length, 0);
  const tar = new Uint8Array(total);
  let at = 0;
  for (const block of blocks) {
    tar.set(block, at);
    at += block.length;
  }
  return tar;
}
