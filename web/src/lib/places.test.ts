import { describe, expect, it } from 'vitest';
import { addressOf, follow, readPlace, type Place } from './places';

const job = '017f22e2-79b0-7cc3-98c4-dc0c0c07398f';
const bench: Place = { page: 'bench', job, spot: { stage: 'timing', station: 8, from: 'b', step: undefined } };

describe('readPlace', () => {
  it('reads back every address it writes', () => {
    const places: Place[] = [
      { page: 'start' }, { page: 'board' }, { page: 'wall' }, { page: 'machines' }, { page: 'shafts' }, { page: 'people' }, { page: 'gauges' }, { page: 'stock' }, { page: 'figures' }, { page: 'tablets' },
      { page: 'machine', id: job }, { page: 'shaft', id: job, copy: true }, { page: 'shaft', id: job, copy: false },
      { page: 'book', machine: job }, { page: 'book', machine: undefined }, bench,
      { page: 'study', id: job, ways: undefined, error_share: undefined, error_azimuth: undefined }, { page: 'study', id: job, ways: undefined, error_share: '3 %', error_azimuth: '0.5°' },
      { page: 'study', id: job, ways: '[{"name":"1 & 3","pattern":"step 2"},{"name":"½"}]', error_share: undefined, error_azimuth: undefined },
    ];
    for (const place of places) {
      const address = new URL(addressOf(place), 'http://x');
      expect(readPlace(address.pathname, address.search)).toEqual(place);
    }
  });
  it('does not take what it does not know', () => {
    expect(readPlace('/nowhere')).toEqual({ page: 'lost' });
    expect(readPlace('/job/a/b/c')).toEqual({ page: 'lost' });
    expect(readPlace('/job/%22x')).toEqual({ page: 'lost' });
    expect(readPlace(`/job/${job}`, '?stage=lunch&station=-1&from=c&step=x')).toEqual({ page: 'bench', job, spot: {} });
  });
});

describe('follow', () => {
  it('keeps what is not named', () => {
    expect(follow(bench, { station: 3 })).toEqual({ ...bench, spot: { ...bench.spot, station: 3 } });
    expect(follow(bench, { from: 'a' })).toEqual({ ...bench, spot: { ...bench.spot, from: 'a' } });
  });
  it('lets the server choose the station of another stage', () => {
    expect(follow(bench, { stage: 'stack' })).toEqual({ ...bench, spot: { stage: 'stack', station: undefined, from: 'b', step: undefined } });
  });
  it('goes to other pages and other jobs', () => {
    expect(follow(bench, { page: 'board' })).toEqual({ page: 'board' });
    expect(follow(bench, { page: 'machine', id: 'm' })).toEqual({ page: 'machine', id: 'm' });
    expect(follow(bench, { page: 'job', id: 'j', stage: 'kit' })).toEqual({ page: 'bench', job: 'j', spot: { stage: 'kit' } });
    expect(follow(bench, { page: 'job', id: job, station: 2 })).toEqual({ ...bench, spot: { ...bench.spot, station: 2 } });
  });
});
