// words.ts: the page's own words. A template with {count: 3} fills {count}, and {count|one|many} chooses by it.
import { words } from '../words.gen';

export type WordKey = keyof typeof words;

export function word(key: WordKey, args: Readonly<Record<string, string | number>> = {}): string {
  return words[key].replace(/\{(\w+)(?:\|([^|{}]*)\|([^|{}]*))?\}/g, (whole, name: string, one?: string, many?: string) => {
    const value = args[name];
    if (value === undefined) return whole;
    if (one === undefined || many === undefined) return String(value);
    return (Number(value) === 1 ? one : many).replaceAll('#', String(value));
  });
}
