import { FrontEnd, type SoundBlock } from './front-end.ts';

/**
 * Runs the front end beside the page: taking out noise never stops, and the page has screens to draw. First it is told the
 * device's rate, then it is given slices, and it answers with the blocks that they complete.
 */

export type ToFrontEnd =
  | { readonly type: 'open'; readonly deviceRateHz: number }
  /** `cameAtMs` is when the slice came, on the page's clock: it goes back with what the slice completes. */
  | { readonly type: 'slice'; readonly samples: Float32Array; readonly cameAtMs: number };

export interface FromFrontEnd {
  readonly blocks: readonly SoundBlock[];
  readonly cameAtMs: number;
}

let frontEnd: FrontEnd | undefined;

addEventListener('message', ({ data }: MessageEvent<ToFrontEnd>) => {
  switch (data.type) {
    case 'open':
      frontEnd = new FrontEnd(data.deviceRateHz);
      break;
    case 'slice': {
      const blocks = frontEnd?.push(data.samples) ?? [];
      if (blocks.length > 0) postMessage({ blocks, cameAtMs: data.cameAtMs } satisfies FromFrontEnd);
      break;
    }
  }
});
