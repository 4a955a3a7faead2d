// still.ts: a hand for screens where nothing about a job is entered: blocks may lead somewhere, and that is all.
import type { Do } from '../api/shapes';
import { follow } from '../lib/places';
import type { Hand } from './hand';
import { router } from './router.svelte';
import { session } from './session.svelte';
import { nothingBegun } from './unfinished';

export function stillHand(): Hand {
  return {
    readOnly: true,
    field: undefined,
    marks: [],
    act: (what: Do) => {
      if ('go' in what && what.go) router.go(follow(router.place, what.go));
      else if ('open' in what) window.open(what.open, '_blank', 'noopener');
    },
    record: async () => undefined,
    waiting: () => [],
    unjudged: false,
    drop: () => undefined,
    photo: async () => undefined,
    photoAddress: (blob) => session.photoAddress(blob),
    offer: () => () => undefined,
    unfinished: nothingBegun,
    chooseField: () => undefined,
    moveOn: () => undefined,
    showMarks: () => undefined,
  };
}
