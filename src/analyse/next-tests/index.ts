// Takes: a bench, what is asked of it, a feed and the price list of laboratories. Gives: what could be
// shown, how much that takes, the cheapest packages, and the samples that settle most open verdicts.
// Never compares devices, never reads a file, never promises a result.
export { type CoverSet, EXACT_QUESTIONS } from './cheapest-cover.ts';
export { feedOfBench, feedOfFile, limitsOfBench, type PlannedFeed } from './feed-of-bench.ts';
export { nextTests } from './next-tests.ts';
export { plannedBench } from './planned-pair.ts';
export type { MarginPlan } from './replicates-needed.ts';
export { type CampaignSize, samplesOf, testPackages } from './test-packages.ts';
export { type PlanInput, testPlan } from './test-plan.ts';
export { type TestQuestion, testQuestions } from './test-questions.ts';
