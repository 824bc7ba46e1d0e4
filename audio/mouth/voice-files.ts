import { INDEX_FILE, readVoiceIndex, type VoiceIndex } from './voice-index.ts';

export interface VoiceFiles {
  readonly index: VoiceIndex;
  readonly readPack: (file: string) => Promise<ArrayBuffer>;
}

/**
 * Opens the recorded voice that lies beside the app.
 * @param folderUrl address of the voice folder, ending in a slash
 * @throws Error where the index cannot be fetched or read; packs are fetched when first needed
 */
export async function openVoiceFiles(folderUrl: URL): Promise<VoiceFiles> {
  const index = readVoiceIndex(await (await fetched(new URL(INDEX_FILE, folderUrl))).json());
  return { index, readPack: async (file) => (await fetched(new URL(file, folderUrl))).arrayBuffer() };
}

async function fetched(url: URL): Promise<Response> {
  const name = url.pathname.split('/').at(-1) ?? '';
  const response = await fetch(url).catch(() => undefined);
  if (response === undefined)
    throw new Error(`The voice file ${name} is not on this tablet and there is no network.`);
  if (!response.ok)
    throw new Error(`The voice file ${name} could not be loaded (status ${response.status}).`);
  return response;
}
