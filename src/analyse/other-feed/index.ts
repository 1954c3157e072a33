// Takes: a bench, its reductions and the analysis of another feed. Gives: bounds of the product water of
// each device with that feed, or the reason why there is none, as rows.
// Never goes beyond what was tested, never fills in a condition, never judges whether a water may be drunk.
export { computeOtherFeed, type OtherFeedFact } from './compute-other-feed.ts';
export { CONDITION_UNCERTAINTY } from './event-conditions.ts';
export { type FeedWater, feedWater } from './feed-water.ts';
export { RANGE_END_LIMIT } from './tested-range.ts';
