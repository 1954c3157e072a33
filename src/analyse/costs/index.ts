// Takes: a bench, its water use and the tariffs. Gives: the cost of owning each device in each
// scenario, by component, with what is not counted named.
// Never converts a currency, never counts as zero what is not known.
export { type CostFact, type Costs, computeCosts } from './compute-costs.ts';
export {
  energyKWh,
  type Ownership,
  type OwnershipCost,
  ownershipCost,
  presentValue,
  replacementInterval,
  replacementYears,
} from './ownership.ts';
export { type CostSeries, costSeries, type SpentBy } from './spent-over-time.ts';
