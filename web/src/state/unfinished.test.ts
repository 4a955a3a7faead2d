import { describe, expect, it } from 'vitest';
import { unfinishedIn } from './unfinished';

function drawer() {
  const held = new Map<string, string>();
  return {
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, value: string) => void held.set(key, value),
    removeItem: (key: string) => void held.delete(key),
  };
}

describe('what was begun', () => {
  it('is found again, each job its own, until it is kept', () => {
    const one = drawer();
    unfinishedIn(() => one, 'a').put('bore_read/3', { digits: '3.93' });
    expect(unfinishedIn(() => one, 'a').get('bore_read/3')).toEqual({ digits: '3.93' });
    expect(unfinishedIn(() => one, 'b').get('bore_read/3')).toBeUndefined();
    unfinishedIn(() => one, 'a').put('bore_read/3', undefined);
    expect(unfinishedIn(() => one, 'a').get('bore_read/3')).toBeUndefined();
  });
  it('is nothing where the browser keeps nothing', () => {
    const shut = unfinishedIn(() => { throw new Error('denied'); }, 'a');
    shut.put('k', 1);
    expect(shut.get('k')).toBeUndefined();
  });
});
