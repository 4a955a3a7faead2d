// router.svelte.ts: the place the page is at, kept in step with the address.
import { addressOf, readPlace, type Place } from '../lib/places';

class Router {
  place = $state<Place>(readPlace(location.pathname, location.search));

  constructor() {
    addEventListener('popstate', () => (this.place = readPlace(location.pathname, location.search)));
  }
  go(place: Place, how: 'push' | 'replace' = 'push'): void {
    const address = addressOf(place);
    if (address !== location.pathname + location.search) {
      if (how === 'push') history.pushState(null, '', address);
      else history.replaceState(null, '', address);
    }
    const turned = place.page !== this.place.page;
    this.place = place;
    if (turned) scrollTo(0, 0);
  }
}

export const router = new Router();

/** For links: a plain tap goes by the router, everything else (new tab, middle button) as the browser does it. */
export function byRouter(event: MouseEvent): void {
  const link = (event.target as Element | null)?.closest('a');
  if (!link || event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey) return;
  if (link.target !== '' || link.origin !== location.origin || link.pathname.startsWith('/api/')) return;
  event.preventDefault();
  router.go(readPlace(link.pathname, link.search));
}
