// Takes: a bench and what tanks.csv says of a device. Gives: the tank ready for the refill model, what
// it drains in a scenario, and how that agrees with measured refills.
// Never fills in a figure that tanks.csv lacks, never plays a tank at a guessed pressure.
export { type DeviceTank, deviceTank } from './device-tank.ts';
export { type PlayedTank, playTank, tankDrainL, tankDrainModel } from './play-tank.ts';
export { tankAgainstRuns } from './tank-against-runs.ts';
