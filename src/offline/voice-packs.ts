import { readVoiceIndex } from '../../audio/mouth/voice-index.ts';
import { VOICE_CACHE } from './shell.ts';

export type VoiceKept =
  | { readonly ok: true; readonly fetched: number }
  /** One sentence that says what is wrong and what still works. */
  | { readonly ok: false; readonly sentence: string };

/** Bytes on the tablet, of all there are. */
export type VoiceProgress = (gotBytes: number, wantedBytes: number) => void;

const STILL_WORKS = 'The buttons still work, and so does whatever of the voice is here.';

/**
 * Brings every pack of the recorded voice onto the tablet, checked byte for byte, and drops packs of older voices. What
 * is here already is not fetched again, so a fetch that broke off goes on where it stopped. Never rejects.
 * @param folderUrl address of the voice folder, ending in a slash
 */
export async function keepVoicePacks(
  folderUrl: URL,
  onProgress: VoiceProgress = () => {},
): Promise<VoiceKept> {
  try {
    const response = await fetch(new URL('index.json', folderUrl));
    if (!response.ok) return { ok: false, sentence: `The voice is not where it should be. ${STILL_WORKS}` };
    const packs = Object.values(readVoiceIndex(await response.json()).packs);
    const cache = await caches.open(VOICE_CACHE);
    const wanted = new Map(packs.map((pack) => [new URL(pack.file, folderUrl).href, pack]));
    const wantedBytes = packs.reduce((sum, { bytes }) => sum + bytes, 0);
    let gotBytes = 0;
    let fetched = 0;
    for (const [url, { file, bytes }] of wanted) {
      if (!(await cache.match(url))) {
        const pack = await fetch(url);
        const body = await pack.clone().arrayBuffer();
        if (!pack.ok || !(await isWhole(body, file, bytes))) {
          return { ok: false, sentence: `The voice file ${file} did not arrive whole. ${STILL_WORKS}` };
        }
        await cache.put(url, pack);
        fetched += 1;
      }
      gotBytes += bytes;
      onProgress(gotBytes, wantedBytes);
    }
    for (const { url } of await cache.keys()) if (!wanted.has(url)) await cache.delete(url);
    return { ok: true, fetched };
  } catch (error) {
    const isFull = error instanceof DOMException && error.name === 'QuotaExceededError';
    return {
      ok: false,
      sentence: `${isFull ? 'The tablet is full, so the voice does not fit on it.' : 'The voice could not be fetched: there is no network.'} ${STILL_WORKS}`,
    };
  }
}

/** A pack's name ends in the first digits of the SHA-256 of what is in it. */
async function isWhole(body: ArrayBuffer, file: string, bytes: number): Promise<boolean> {
  if (body.byteLength !== bytes) return false;
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', body));
  const hex = Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
  const named = /-([0-9a-f]+)\.clips$/.exec(file)?.[1];
  return named !== undefined && hex.startsWith(named);
}
