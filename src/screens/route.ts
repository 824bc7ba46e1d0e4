import { type ReadonlySignal, signal } from '@preact/signals';

/** Where in the app somebody is; kept in the address after "#", so that back, reload and a bookmark work. */
export type Route =
  | { readonly page: 'start' }
  | { readonly page: 'new' }
  | { readonly page: 'job'; readonly jobId: string }
  | { readonly page: 'records' }
  | { readonly page: 'record'; readonly jobId: string }
  | { readonly page: 'machines' }
  | { readonly page: 'settings' }
  | { readonly page: 'learnt' }
  | { readonly page: 'drill' }
  | { readonly page: 'help' }
  | { readonly page: 'welcome' };

const START: Route = { page: 'start' };

/** The route of an address fragment; anything unknown is the start. */
export function routeOf(hash: string): Route {
  const [page, id, ...rest] = hash.replace(/^#\/?/, '').split('/');
  if (rest.length > 0) return START;
  switch (page) {
    case 'job':
    case 'record':
      return id ? { page, jobId: decode(id) } : START;
    case 'new':
    case 'records':
    case 'machines':
    case 'settings':
    case 'learnt':
    case 'drill':
    case 'help':
    case 'welcome':
      return id === undefined ? { page } : START;
    default:
      return START;
  }
}

/** The fragment of a route, so that `routeOf(hashOf(route))` is the route again. */
export function hashOf(route: Route): string {
  switch (route.page) {
    case 'start':
      return '#/';
    case 'job':
    case 'record':
      return `#/${route.page}/${encodeURIComponent(route.jobId)}`;
    default:
      return `#/${route.page}`;
  }
}

/** Follows the address bar of this tab. */
export function watchRoute(): ReadonlySignal<Route> {
  const route = signal(routeOf(location.hash));
  addEventListener('hashchange', () => {
    route.value = routeOf(location.hash);
  });
  return route;
}

export function goTo(route: Route): void {
  location.hash = hashOf(route);
}

/** A fragment typed by hand may hold a stray "%"; then it stands for itself. */
function decode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
