// session.svelte.ts: what lives as long as the page: outbox, live events, the workshop, and that two touches at once were met.
import { get, post, putBlob } from '../api/client';
import type { Saved, Workshop } from '../api/shapes';
import { idMaker } from '../lib/ids';
import { Live, type Change, type Source } from './live';
import { Outbox, type Draft, type Parcel } from './outbox';
import { settings } from './settings.svelte';
import { memoryShelf, openShelves, type Shelf, type Shelves } from './shelf';

type Listener = (change: Change | 'reached') => void;

class Session {
  workshop = $state.raw<Workshop | undefined>();
  /** The server is not reached just now. */
  away = $state(false);
  /** This device must show a code before it is let in. */
  shutOut = $state(false);
  /** Nothing outlives the page: the browser keeps no IndexedDB. */
  forgetful = $state(false);
  strayTouches = $state(false);
  readonly newId = idMaker(() => Date.now(), () => crypto.getRandomValues(new Uint8Array(10)));

  private turn = $state(0);
  private opened: Promise<{ outbox: Outbox; shelves: Shelves }> | undefined;
  private outbox: Outbox | undefined;
  private listeners = new Set<Listener>();
  private photosHere = new Map<string, string>();

  private open(): Promise<{ outbox: Outbox; shelves: Shelves }> {
    this.opened ??= openShelves().then(async ({ shelves, lasting }) => {
      this.forgetful = !lasting;
      const outbox = new Outbox(this.ways(shelves));
      this.outbox = outbox;
      await outbox.open();
      return { outbox, shelves };
    });
    return this.opened;
  }
  private ways(shelves: Shelves) {
    return {
      shelf: shelves.outbox, blobs: shelves.blobs, putBlob, newId: this.newId,
      post: (job: string, entries: Parcel['entries']) => post('/api/jobs/{id}/entries', { entries }, { path: { id: job } }),
      now: () => new Date().toISOString(),
      device: () => settings.device,
      later: (call: () => void, ms: number) => void setTimeout(call, ms),
      changed: () => void (this.turn += 1),
      arrived: (parcel: Parcel, _saved: Saved) => this.tell({ what: 'job', id: parcel.job }),
      shutOut: () => void (this.shutOut = true),
    };
  }

  start(): void {
    void this.open();
    const source = (after: string | undefined): Source =>
      new EventSource(`/api/events${after === undefined ? '' : `?after=${after}`}`) as unknown as Source;
    new Live(source, {
      changed: (change) => this.tell(change),
      reached: () => {
        this.away = false;
        void this.open().then(({ outbox }) => outbox.wake());
        this.tell('reached');
      },
      lost: () => void (this.away = true),
    }, (call, ms) => void setTimeout(call, ms)).start();
    addEventListener('online', () => void this.open().then(({ outbox }) => outbox.wake()));
    this.listen((change) => {
      if (change === 'reached' || change.what === 'person' || change.what === 'gauge') void this.fetchWorkshop();
    });
    void this.fetchWorkshop();
  }
  async fetchWorkshop(): Promise<void> {
    const views = await this.shelf('views');
    const reply = await get('/api/workshop');
    if (reply.kind === 'ok') {
      this.workshop = reply.value;
      this.shutOut = false;
      await views.put('workshop', reply.value).catch(() => undefined);
    } else if (reply.kind === 'refused' && (reply.status === 401 || reply.status === 403)) {
      this.shutOut = true;
    } else {
      this.workshop ??= (await views.get('workshop').catch(() => undefined)) as Workshop | undefined;
    }
  }

  /** Told when something changed at the server or arrived there. Returns what ends it. */
  listen(listener: Listener): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }
  private tell(change: Change | 'reached'): void {
    for (const listener of this.listeners) listener(change);
  }

  async shelf(name: keyof Shelves): Promise<Shelf> {
    return this.open().then(({ shelves }) => shelves[name], () => memoryShelf());
  }
  async keep(draft: Draft): Promise<Parcel> {
    return (await this.open()).outbox.keep(draft);
  }
  drop(id: string): void {
    void this.open().then(({ outbox }) => outbox.drop(id));
  }
  /** Parcels of a job's question that its screen does not show yet. Reactive. */
  answers(job: string, key: string): readonly Parcel[] {
    void this.turn;
    return this.outbox?.answers(job, key) ?? [];
  }
  /** Everything not sent or refused. Reactive. */
  get parcels(): readonly Parcel[] {
    void this.turn;
    return this.outbox?.all ?? [];
  }
  get waiting(): number {
    void this.turn;
    return this.outbox?.waiting ?? 0;
  }
  /** What has arrived and is not shown: to be named before a screen is asked for, and cleared when it has come. */
  unseen(): readonly Parcel[] {
    return [...(this.outbox?.unseen ?? [])];
  }
  shown(job: string, arrived: readonly Parcel[]): void {
    if (arrived.length === 0) return;
    this.outbox?.shown(job, arrived);
    this.turn += 1;
  }

  async keepPhoto(hash: string, blob: Blob): Promise<void> {
    this.photosHere.set(hash, URL.createObjectURL(blob));
    await (await this.shelf('blobs')).put(hash, blob);
  }
  photoAddress(hash: string): string {
    return this.photosHere.get(hash) ?? `/api/blobs/${hash}`;
  }
  /** The name of a person; empty where nobody has that id. */
  nameOf(id: string | undefined): string {
    return this.workshop?.people.find((person) => person.id === id)?.name ?? '';
  }
}

export const session = new Session();
