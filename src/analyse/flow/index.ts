// Takes: the timed pours of a bench. Gives: what they say beyond all volume over all time: repeats,
// first second, decline, settled flow, flow under standard conditions, production of a day.
// Never calls a field measurement a rating, never standardises without logged conditions.
export { type FlowFact, flowFacts } from './flow-facts.ts';
