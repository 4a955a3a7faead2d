// told.ts: how one result or input of a working is written: its value, and where it is not exactly known its ± U with it.

interface Told {
  readonly value: { readonly shown: string } | { readonly value: string | number };
  readonly uncertainty?: { readonly shown?: string | undefined } | undefined;
}

export const toldValue = (value: Told['value']): string => ('shown' in value ? value.shown : String(value.value));
/** Value and ± U come as one text: only so they have the same decimals. */
export const told = (one: Told): string => one.uncertainty?.shown ?? toldValue(one.value);
