import { describe, expect, it } from 'vitest';
import { Live, type Change, type Source } from './live';

class FakeSource implements Source {
  readyState = 1;
  closed = false;
  listeners = new Map<string, (event: { data?: unknown; lastEventId?: string }) => void>();
  constructor(readonly after: string | undefined) {}
  addEventListener(name: string, listener: (event: { data?: unknown; lastEventId?: string }) => void): void {
    this.listeners.set(name, listener);
  }
  close(): void {
    this.closed = true;
  }
  tell(name: string, data?: unknown, lastEventId?: string): void {
    this.listeners.get(name)?.({ data, ...(lastEventId === undefined ? {} : { lastEventId }) });
  }
}

function listen() {
  const sources: FakeSource[] = [];
  const changes: Change[] = [];
  const state: string[] = [];
  const timers: (() => void)[] = [];
  const live = new Live(
    (after) => (sources.push(new FakeSource(after)), sources.at(-1)!),
    { changed: (change) => void changes.push(change), reached: () => void state.push('reached'), lost: () => void state.push('lost') },
    (call) => void timers.push(call),
  );
  live.start();
  return { sources, changes, state, timers };
}

describe('live', () => {
  it('tells what changed, and lets go what it cannot read', () => {
    const { sources, changes, state } = listen();
    sources[0]!.tell('open');
    sources[0]!.tell('job', '{"id": "j", "entry": "e"}', '7');
    sources[0]!.tell('stock', 'not JSON', '8');
    expect(changes).toEqual([{ what: 'job', id: 'j' }]);
    expect(state).toEqual(['reached']);
  });
  it('begins again where it was when the browser has given up', () => {
    const { sources, state, timers } = listen();
    sources[0]!.tell('job', '{"id": "j"}', '7');
    sources[0]!.readyState = 0;
    sources[0]!.tell('error');
    expect(timers).toHaveLength(0);
    sources[0]!.readyState = 2;
    sources[0]!.tell('error');
    timers[0]!();
    expect(sources).toHaveLength(2);
    expect([sources[0]!.closed, sources[1]!.after]).toEqual([true, '7']);
    expect(state).toEqual(['lost', 'lost']);
  });
});
