/** A page with nothing but the ears, for the browser tests to drive. */
import { describeFailure, type EarsFailure } from '../../../audio/ears/failures.ts';
import type { FromFrontEnd } from '../../../audio/ears/front-end-worker.ts';
import { createListener, type EarsEvent, type Listener } from '../../../audio/ears/listener.ts';
import { FRONT_END, openMicrophone } from '../../../audio/ears/microphone.ts';
import { forgetModel, type ModelArchive, storeModel } from '../../../audio/ears/model-file.ts';
import { loadRecogniser } from '../../../audio/ears/recogniser.ts';
import { bundledModel } from '../../../audio/ears/speech-model.ts';

/** The model as the page serves it. */
const model = bundledModel('./model/');

/** Every recogniser's worker and every front end's that the page ever started, so that a test can make one fail. */
const workers: Worker[] = [];
const frontEnds: Worker[] = [];

/** When slices of sound came to the page, and when what they completed was back from the front end. */
const soundBack: { readonly cameAtMs: number; readonly backAtMs: number }[] = [];

/** How many recognisers the workers were told to make and to remove. */
const recognisers = { create: 0, remove: 0 };

window.Worker = class extends Worker {
  constructor(...from: ConstructorParameters<typeof Worker>) {
    super(...from);
    const isFrontEnd = from[1]?.name === FRONT_END;
    (isFrontEnd ? frontEnds : workers).push(this);
    if (!isFrontEnd) return;
    // The first to listen, so before the ears take it.
    this.addEventListener('message', ({ data: { cameAtMs } }: MessageEvent<FromFrontEnd>) => {
      soundBack.push({ cameAtMs, backAtMs: performance.now() });
    });
  }

  override postMessage(
    message: { readonly action?: string },
    options?: StructuredSerializeOptions | Transferable[],
  ): void {
    if (message.action === 'create' || message.action === 'remove') recognisers[message.action] += 1;
    super.postMessage(message, options as StructuredSerializeOptions);
  }
};

const events: (EarsEvent & { readonly atMs: number })[] = [];

function makeListener(changes: Partial<ModelArchive> = {}): Listener {
  const listener = createListener({ models: [{ ...model, archive: { ...model.archive, ...changes } }] });
  listener.subscribe((event) => events.push({ ...event, atMs: performance.now() }));
  return listener;
}

const earsPage = {
  model,
  events,
  workers,
  frontEnds,
  soundBack,
  recognisers,
  makeListener,
  openMicrophone,
  storeModel,
  forgetModel,
  loadRecogniser,
  describe: (failure: EarsFailure) => describeFailure(failure),
};

export type EarsPage = typeof earsPage;

Object.assign(window, { earsPage });
