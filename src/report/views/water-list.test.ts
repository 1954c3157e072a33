import { describe, expect, it } from 'vitest';
import { waterList } from './water-list.ts';

const water = (name: string, event: string) => ({ name, event });
const FEED_JULY = water('Feed', 'july');
const FEED_AUGUST = water('Feed', 'august');
const TANK = water('Tank A', 'july');
const PITCHER_JULY = water('Pitcher A', 'july');
const PITCHER_AUGUST = water('Pitcher A', 'august');
const ALL = [FEED_JULY, TANK, PITCHER_JULY, FEED_AUGUST, PITCHER_AUGUST];

describe('waters named in a cell', () => {
  it('are counted where all of them are meant', () => {
    expect(waterList(ALL, ALL)).toBe('all 5');
    expect(waterList([TANK], [TANK])).toBe('Tank A');
    expect(waterList([], ALL)).toBe('');
  });

  it('carry no event where every event of a water is meant, else the events meant', () => {
    expect(waterList([TANK, PITCHER_JULY, PITCHER_AUGUST], ALL)).toBe('all but Feed');
    expect(waterList([PITCHER_AUGUST], ALL)).toBe('Pitcher A [august]');
  });

  it('are named by those left out where that is shorter', () => {
    expect(waterList([FEED_JULY, PITCHER_JULY, FEED_AUGUST, PITCHER_AUGUST], ALL)).toBe(
      'all but Tank A',
    );
    expect(waterList([TANK], ALL)).toBe('Tank A');
  });
});
