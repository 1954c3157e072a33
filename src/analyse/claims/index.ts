// Takes: claims as read, reductions and sums. Gives: a verdict on each claim with the events it rests
// on, and what certification standards challenge against what the feed held.
// Never calls a device certified, never counts an event outside the conditions of a claim.
export type { Claim, ClaimTarget } from './claim.ts';
export type { Condition, ConditionState } from './claim-conditions.ts';
export { type Decision, decideAtLeast } from './decide-claim.ts';
export { type EfficiencyAgainstUse, efficiencyAgainstUse } from './efficiency-against-use.ts';
export {
  type FeedAgainstChallenge,
  feedAgainstChallenges,
  type UncertifiedInFeed,
  uncertifiedInFeed,
} from './feed-against-certification.ts';
export { claimTests, type JudgedClaim, judgeClaims, type VerdictReason } from './judge-claims.ts';
export type { EventReason, JudgedEvent } from './judge-event.ts';
