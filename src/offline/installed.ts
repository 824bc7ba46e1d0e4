import { type ReadonlySignal, signal } from '@preact/signals';
import { TAKE_OVER } from './shell.ts';

/** Whether this tablet can start the app with no network, and whether a newer one waits. */
export type Installed =
  | { readonly kind: 'installing' }
  | { readonly kind: 'ready' }
  /** A newer build is here in full. `use` changes to it at once and loads the page anew. */
  | { readonly kind: 'newer'; readonly use: () => void }
  /** One sentence that says why it will not start without a network. */
  | { readonly kind: 'cannot'; readonly sentence: string };

/** How often a tablet that stays on looks for a newer build, milliseconds. */
const LOOK_EVERY_MS = 6 * 60 * 60 * 1000;

/** Puts the app on the tablet. Never rejects: what goes wrong is in the signal. */
export function install(): ReadonlySignal<Installed> {
  const installed = signal<Installed>({ kind: 'installing' });
  const { serviceWorker } = navigator;
  if (!serviceWorker) {
    installed.value = {
      kind: 'cannot',
      sentence:
        'This page cannot be kept on the tablet, so it needs the network to start. It has to be opened by an address that begins with https.',
    };
    return installed;
  }
  void serviceWorker
    .register('./service-worker.js')
    .then((registration) => {
      follow(registration, installed);
      setInterval(() => void registration.update().catch(() => {}), LOOK_EVERY_MS);
      return serviceWorker.ready;
    })
    .then(() => {
      if (installed.value.kind === 'installing') installed.value = { kind: 'ready' };
    })
    .catch((error: unknown) => {
      installed.value = {
        kind: 'cannot',
        sentence: `The app could not be put on the tablet, so it needs the network to start. ${error instanceof Error ? error.message : ''}`,
      };
    });
  return installed;
}

function follow(registration: ServiceWorkerRegistration, installed: { value: Installed }): void {
  const offer = (worker: ServiceWorker) => {
    // The very first build has nobody to take over from.
    if (!navigator.serviceWorker.controller) return;
    installed.value = {
      kind: 'newer',
      use() {
        navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
        worker.postMessage(TAKE_OVER);
      },
    };
  };
  if (registration.waiting) offer(registration.waiting);
  registration.addEventListener('updatefound', () => {
    const coming = registration.installing;
    coming?.addEventListener('statechange', () => {
      if (coming.state === 'installed') offer(coming);
    });
  });
}
