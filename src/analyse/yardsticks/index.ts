// Takes: the drain of a device and its water in a scenario. Gives: recovery and efficiency as the
// published definitions have them, beside the published yardsticks.
// Never calls a bench figure a rating: a rating is measured under the conditions of its standard.
export { atLeast, atMost, efficiencyFloor, reportedYardsticks } from './published-yardsticks.ts';
