// views.svelte.ts: one screen's data from the server: fetched, fetched again when something changed, and, without a
// network, as it was when it was last seen on this device.
import { get, type Answer, type Ask } from '../api/client';
import { addressFor } from '../api/client';
import type { ProblemDetails } from '../api/shapes';
import type { Shelf } from './shelf';

interface KeptView {
  readonly value: unknown;
  readonly tag: string | null;
  /** When it was fetched, RFC 3339. */
  readonly at: string;
}

export class View<T> {
  value = $state.raw<T | undefined>();
  /** Fetched and not from an earlier time: undefined. Otherwise when it was last seen. */
  staleSince = $state<string | undefined>();
  refused = $state.raw<ProblemDetails | undefined>();
  /** Nothing to show: the network is away, and this was never seen on this device. */
  unseen = $state(false);
  private address = '';
  private tag: string | null = null;
  private turn = 0;

  constructor(
    private readonly shelf: () => Promise<Shelf>,
    private readonly whenFetched: () => void = () => undefined,
  ) {}

  /** Shows what is kept at once if it is another address, then asks the server. */
  async show(path: Parameters<typeof get>[0], ask: Ask): Promise<void> {
    const address = addressFor(path, ask);
    const turn = (this.turn += 1);
    const other = address !== this.address;
    if (other) {
      this.address = address;
      this.tag = null;
    }
    const reply = (await get(path, { ...ask, tag: other ? null : this.tag })) as Answer<T>;
    if (turn !== this.turn) return;
    await this.take(reply, address, turn);
  }

  private async take(reply: Answer<T>, address: string, turn: number): Promise<void> {
    if (reply.kind === 'ok') {
      this.value = reply.value;
      this.tag = reply.tag;
      this.good();
      this.whenFetched();
      const kept: KeptView = { value: reply.value, tag: reply.tag, at: new Date().toISOString() };
      await (await this.shelf()).put(address, kept).catch(() => undefined);
    } else if (reply.kind === 'same') {
      this.good();
      this.whenFetched();
    } else if (reply.kind === 'refused' && reply.status < 500) {
      this.refused = reply.details;
    } else {
      const kept = (await (await this.shelf()).get(address).catch(() => undefined)) as KeptView | undefined;
      if (turn !== this.turn) return;
      this.refused = undefined;
      this.unseen = kept === undefined;
      this.staleSince = kept?.at ?? this.staleSince ?? new Date().toISOString();
      if (kept) {
        this.value = kept.value as T;
        this.tag = kept.tag;
      }
    }
  }
  private good(): void {
    this.staleSince = undefined;
    this.refused = undefined;
    this.unseen = false;
  }
}
