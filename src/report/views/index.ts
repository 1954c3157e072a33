// Takes: rows and facts of a command. Gives: worded tables (views) for the terminal and Markdown.
// Never computes a figure, never draws a table.
// Imports the folders left of report/.
export { challengeReason, claimedText, claimReason, eventReason } from './claim-words.ts';
export { type ClaimChallenges, claimsViews } from './claims-view.ts';
export { compareViews, measureRows } from './compare-view.ts';
export { filterLifeViews } from './filter-life-view.ts';
export { lookupViews } from './lookup-view.ts';
export type { NameOf } from './next-test-words.ts';
export { nextTestsViews } from './next-tests-view.ts';
export { otherFeedViews } from './other-feed-view.ts';
export { poursView } from './pours-view.ts';
export { reductionText, sideText, summaryText } from './reduction-words.ts';
export { reductionViews } from './reductions-view.ts';
export { replicateViews } from './replicates-view.ts';
export { spikesViews } from './spikes-view.ts';
export { logReductionsViews, sumsViews } from './sums-view.ts';
export { testPackagesViews } from './test-packages-view.ts';
export { testPlanViews } from './test-plan-view.ts';
export { toldApartGroupViews, toldApartView, toldApartViews } from './told-apart-view.ts';
export { traceView } from './trace-view.ts';
export { inputsView, regionsView, sweepView } from './water-sweep-view.ts';
export { breakEvenView, curveView, waterUseViews } from './water-use-view.ts';
