import 'fake-indexeddb/auto';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { PackedFieldModel } from '../../../audio/field-model/packed-field-model.ts';
import { offerFieldModel } from '../../../src/offline/field-model.ts';
import { fieldModelText } from '../../../src/screens/field-model-setting.tsx';
import { readPreferences } from '../../../src/screens/preferences.ts';
import { speechModels } from '../../../src/session/speech-models.ts';

const PAGE = 'https://shop.example/app/';

const field: PackedFieldModel = {
  format: 1,
  fileName: 'field-ba7816bf.model',
  bytes: 41_000_000,
  // SHA-256 of "abc", the first example of FIPS 180-4.
  sha256: 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
  frontEnd: 'plain',
  timeScale: 1,
  taughtGaps: [],
};

afterEach(() => vi.unstubAllGlobals());

function offer() {
  return offerFieldModel(PAGE, { chosen: () => undefined, choose: () => {} });
}

describe('the offer of a field model', () => {
  it('is what the table of contents beside the app says', async () => {
    const asked: string[] = [];
    vi.stubGlobal('fetch', async (url: URL) => {
      asked.push(url.href);
      return Response.json(field);
    });
    const { look, offered } = offer();
    await look();
    expect(asked).toEqual(['https://shop.example/app/field-model/index.json']);
    expect(offered.value).toEqual(field);
  });

  it.each<[string, () => Promise<Response>]>([
    ['a server that has none', async () => new Response('', { status: 404 })],
    ['a server that answers everything with its page', async () => new Response('<!doctype html>')],
    ['a table of contents of another kind', async () => Response.json({ ...field, format: 2 })],
    [
      'no network',
      async () => {
        throw new TypeError('Failed to fetch');
      },
    ],
  ])('is none with %s', async (_, answer) => {
    vi.stubGlobal('fetch', answer);
    const { look, offered } = offer();
    await look();
    expect(offered.value).toBeUndefined();
  });
});

describe('the models to listen with', () => {
  it('are the bundled one alone until a field model is chosen, and then that before it', () => {
    const bundledOnly = speechModels(PAGE, undefined);
    expect(bundledOnly.map(({ graph }) => graph)).toEqual(['phrases']);
    const both = speechModels(PAGE, field);
    expect(both.slice(1)).toEqual(bundledOnly);
    expect(both[0]).toEqual({
      archive: {
        url: 'https://shop.example/app/field-model/field-ba7816bf.model',
        bytes: field.bytes,
        sha256: field.sha256,
      },
      graph: 'words',
      frontEnd: 'plain',
      timeScale: 1,
    });
  });
});

describe('a chosen field model', () => {
  it('comes back with the preferences, and one that cannot be read takes nothing else with it', () => {
    const gapped = {
      ...field,
      taughtGaps: [{ taught: 'left' }, { taught: 'right', instead: 'the right one' }],
    };
    expect(readPreferences(JSON.stringify({ theme: 'shed', fieldModel: gapped })).fieldModel).toEqual(gapped);
    const broken = readPreferences(JSON.stringify({ theme: 'shed', fieldModel: { format: 9 } }));
    expect(broken.theme).toBe('shed');
    expect(broken.fieldModel).toBeUndefined();
  });

  it('is named as the one in use', () => {
    expect(fieldModelText({ kind: 'resting' }, undefined)).toBe('The bundled speech model listens.');
    expect(fieldModelText({ kind: 'resting' }, field)).toBe('The field model listens.');
    expect(fieldModelText({ kind: 'coming', share: 0.417 }, undefined)).toBe(
      'Fetching the field model: 41 %.',
    );
  });
});
