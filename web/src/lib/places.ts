// places.ts: addresses of the page and what they mean.

export type Stage =
  | 'booking_in' | 'finding' | 'plan' | 'teardown' | 'inspection' | 'kit' | 'press' | 'timing' | 'stack' | 'torque'
  | 'test_run' | 'release';
export const stages: readonly Stage[] = [
  'booking_in', 'finding', 'plan', 'teardown', 'inspection', 'kit', 'press', 'timing', 'stack', 'torque', 'test_run', 'release',
];

/** Where on the bench the eye is. What is not named, the server decides. */
export interface Spot {
  readonly stage?: Stage | undefined;
  readonly station?: number | undefined;
  readonly from?: 'a' | 'b' | undefined;
  readonly step?: number | undefined;
}

export type Place =
  | { readonly page: 'start' }
  | { readonly page: 'board' }
  | { readonly page: 'wall' }
  | { readonly page: 'bench'; readonly job: string; readonly spot: Spot }
  | { readonly page: 'machine'; readonly id: string }
  | { readonly page: 'machines' }
  | { readonly page: 'shafts' }
  | { readonly page: 'shaft'; readonly id: string; readonly copy: boolean }
  /** `ways`: as they were asked for, JSON; without them the server chooses. The errors as typed; without them as assumed. */
  | { readonly page: 'study'; readonly id: string; readonly ways?: string | undefined; readonly error_share?: string | undefined; readonly error_azimuth?: string | undefined }
  | { readonly page: 'gauges' }
  | { readonly page: 'stock' }
  | { readonly page: 'figures' }
  | { readonly page: 'people' }
  | { readonly page: 'tablets' }
  | { readonly page: 'book'; readonly machine?: string | undefined }
  | { readonly page: 'lost' };

const whole = (text: string | undefined): number | undefined => (text !== undefined && /^\d{1,6}$/.test(text) ? Number(text) : undefined);
const idLike = (text: string | undefined): text is string => text !== undefined && /^[\w.-]{1,64}$/.test(text);

export function readPlace(path: string, query = ''): Place {
  const [first = '', second, third, ...more] = path.split('/').filter((part) => part !== '');
  const asked = readQuery(query);
  if (more.length) return { page: 'lost' };
  if (second === undefined) {
    switch (first) {
      case '': return { page: 'start' };
      case 'board': case 'wall': case 'machines': case 'shafts': case 'people': case 'gauges': case 'stock': case 'figures': case 'tablets':
        return { page: first };
      case 'book': {
        const machine = asked.get('machine');
        return { page: 'book', machine: idLike(machine) ? machine : undefined };
      }
      default: return { page: 'lost' };
    }
  }
  if (!idLike(second)) return { page: 'lost' };
  if (first === 'job' && third === undefined) return { page: 'bench', job: second, spot: readSpot(asked) };
  if (first === 'machine' && third === undefined) return { page: 'machine', id: second };
  if (first === 'study' && third === undefined) return { page: 'study', id: second, ways: asked.get('ways'), error_share: asked.get('error_share'), error_azimuth: asked.get('error_azimuth') };
  if (first === 'shaft' && (third === undefined || third === 'copy')) return { page: 'shaft', id: second, copy: third === 'copy' };
  return { page: 'lost' };
}

/** What stands behind the question mark. Half an escape is left as it is. */
function readQuery(query: string): ReadonlyMap<string, string> {
  const decoded = (text: string): string => {
    try {
      return decodeURIComponent(text.replaceAll('+', ' '));
    } catch {
      return text;
    }
  };
  return new Map(query.replace(/^\?/, '').split('&').filter((part) => part !== '').map((part) => {
    const [name = '', ...value] = part.split('=');
    return [decoded(name), decoded(value.join('='))];
  }));
}

function readSpot(asked: ReadonlyMap<string, string>): Spot {
  const stage = stages.find((known) => known === asked.get('stage'));
  const from = asked.get('from');
  return {
    stage,
    station: whole(asked.get('station')),
    from: from === 'a' || from === 'b' ? from : undefined,
    step: whole(asked.get('step')),
  };
}

export function addressOf(place: Place): string {
  switch (place.page) {
    case 'start': case 'lost': return '/';
    case 'bench': return `/job/${place.job}${queryOf(place.spot)}`;
    case 'machine': return `/machine/${place.id}`;
    case 'shaft': return `/shaft/${place.id}${place.copy ? '/copy' : ''}`;
    case 'study': return `/study/${place.id}${queryOf({ ways: place.ways, error_share: place.error_share, error_azimuth: place.error_azimuth })}`;
    case 'book': return `/book${place.machine === undefined ? '' : `?machine=${place.machine}`}`;
    default: return `/${place.page}`;
  }
}

/** '?stage=timing&station=8', or '' where nothing is named. */
export function queryOf(named: object): string {
  const parts = Object.entries(named)
    .filter(([, value]) => value !== undefined && value !== null)
    .map(([name, value]) => `${encodeURIComponent(name)}=${encodeURIComponent(String(value))}`);
  return parts.length === 0 ? '' : `?${parts.join('&')}`;
}

/** Where a tap leads, as the server names it. */
export interface Leads extends Spot {
  readonly page?: 'board' | 'machine' | 'shaft' | 'people' | 'job' | undefined;
  readonly id?: string | undefined;
}

/** The place a tap leads to from here. Another stage begins at its own step; what is not named stays. */
export function follow(here: Place, go: Leads): Place {
  switch (go.page) {
    case 'board': case 'people': return { page: go.page };
    case 'machine': return go.id === undefined ? { page: 'machines' } : { page: 'machine', id: go.id };
    case 'shaft': return go.id === undefined ? { page: 'shafts' } : { page: 'shaft', id: go.id, copy: false };
    case 'job':
      if (go.id !== undefined && !(here.page === 'bench' && here.job === go.id)) {
        return { page: 'bench', job: go.id, spot: spotOf(go) };
      }
  }
  if (here.page !== 'bench') return here;
  const other = go.stage !== undefined && go.stage !== here.spot.stage;
  return {
    page: 'bench',
    job: here.job,
    spot: {
      stage: go.stage ?? here.spot.stage,
      station: go.station ?? (other ? undefined : here.spot.station),
      from: go.from ?? here.spot.from,
      step: go.step ?? (other ? undefined : here.spot.step),
    },
  };
}
const spotOf = (go: Leads): Spot => ({ stage: go.stage, station: go.station, from: go.from, step: go.step });
