// live.ts: what changes at the server, as it happens. The browser catches up by itself after a break (Last-Event-ID).

export const kinds = ['job', 'machine', 'shaft', 'stock', 'gauge', 'person', 'customer'] as const;
export type Kind = (typeof kinds)[number];
export interface Change {
  readonly what: Kind;
  readonly id: string;
}

/** What of an EventSource is used: a test gives its own. */
export interface Source {
  addEventListener(name: string, listener: (event: { data?: unknown; lastEventId?: string }) => void): void;
  close(): void;
  readonly readyState: number;
}

export interface Told {
  changed(change: Change): void;
  /** Reached again: what was missed is told, screens may be asked for anew. */
  reached(): void;
  lost(): void;
}

/** `open(after)`: a source that tells what came after this sequence number. */
export class Live {
  private source: Source | undefined;
  private after: string | undefined;
  private pause = 2000;

  constructor(
    private readonly open: (after: string | undefined) => Source,
    private readonly told: Told,
    private readonly later: (call: () => void, ms: number) => void,
  ) {}

  start(): void {
    const source = (this.source = this.open(this.after));
    source.addEventListener('open', () => {
      this.pause = 2000;
      this.told.reached();
    });
    for (const what of kinds) {
      source.addEventListener(what, (event) => {
        if (event.lastEventId) this.after = event.lastEventId;
        const id = idIn(event.data);
        if (id !== undefined) this.told.changed({ what, id });
      });
    }
    source.addEventListener('error', () => {
      this.told.lost();
      // 2: the browser has given up (the server answered with something else); it does not try again by itself.
      if (source.readyState !== 2 || this.source !== source) return;
      source.close();
      this.later(() => this.start(), this.pause);
      this.pause = Math.min(2 * this.pause, 60_000);
    });
  }
}

function idIn(data: unknown): string | undefined {
  try {
    const value = JSON.parse(String(data)) as { id?: unknown };
    return typeof value.id === 'string' ? value.id : undefined;
  } catch {
    return undefined;
  }
}
