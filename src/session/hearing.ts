import { builtModel } from '../../audio/command-model/built.ts';
import { createListener, type Listener } from '../../audio/ears/listener.ts';

/** The ears, loaded only when somebody wants to speak: the recogniser outweighs the rest of the app many times. */
export { describeFailure } from '../../audio/ears/failures.ts';
export { canGoOn, graphToken, recogniserList } from '../../grammar/compile.ts';

/** The ears with the speech model that this build of the app carries. */
export function openEars(): Listener {
  const { fileName, bytes, sha256 } = builtModel;
  return createListener({
    archive: { url: new URL(`model/${fileName}`, document.baseURI).href, bytes, sha256 },
  });
}
