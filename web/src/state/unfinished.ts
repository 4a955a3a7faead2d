// unfinished.ts: what was begun on a sheet and not kept: half a figure, half a note. It outlives a look at another part and a
// reload of the page; not the browser, whose next user would find a stranger's digits.

export interface Unfinished {
  get(key: string): unknown;
  /** Undefined: it was kept, or emptied. */
  put(key: string, value: unknown): void;
}
type Drawer = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

const place = (key: string) => `flatwise.begun.${key}`;

export function unfinishedIn(drawer: () => Drawer, job: string): Unfinished {
  return {
    get: (key) => {
      try {
        const text = drawer().getItem(place(`${job}.${key}`));
        return text === null ? undefined : (JSON.parse(text) as unknown);
      } catch {
        return undefined;  // A browser that keeps nothing: then it is lost with the sheet, as the page says at its head.
      }
    },
    put: (key, value) => {
      try {
        if (value === undefined) drawer().removeItem(place(`${job}.${key}`));
        else drawer().setItem(place(`${job}.${key}`), JSON.stringify(value));
      } catch {
        // As above.
      }
    },
  };
}
export const nothingBegun: Unfinished = { get: () => undefined, put: () => undefined };
