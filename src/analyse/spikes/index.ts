// Takes: the doses of spikes.csv and the feeds of a bench. Gives: the nominal dose beside the feed as
// measured, and whether they agree. Never lets a nominal dose into a reduction, never mixes a spiked
// with a natural feed.
export { computeSpikes, type SpikeFact } from './compute-spikes.ts';
