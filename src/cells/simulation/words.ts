import { plural } from '../../units/plural.ts'

/** The words of a simulation. */
export const simulationWords = {
  stopped: 'the simulation stopped unexpectedly',
  lessThan: (share: string): string => `less than ${share}`,
  moreThan: (share: string): string => `more than ${share}`,
  simulate: 'Simulate',
  again: 'Simulate again',
  cancel: 'Cancel',
  running: 'Simulating…',
  tries: 'Tries',
  seed: 'Seed',
  wrongTries: 'The number of tries must be a whole number from 100 to 10 000 000.',
  wrongSeed: 'The seed must be a whole number from 0 to 4 294 967 295.',
  figures: (tries: number, mean: string, sd: string, low: string, high: string): string =>
    `In ${plural(tries, 'try', 'tries')} with random values within the limits: mean ${mean}, standard deviation ${sd}; 95 % of them lie from ${low} to ${high}.`,
  still: 'Within the limits this figure does not change.',
  none: 'No try gave a figure.',
  failed: (tries: number): string => `${plural(tries, 'try', 'tries')} gave no figure.`,
  influences: (list: string): string => `What matters most: ${list}.`,
  influence: (label: string, share: string): string => `${label} ${share}`,
  passes: (label: string, share: string): string => `${label} passes in ${share} of the tries.`,
  passesHere: (share: string): string => `Passes in ${share} of simulated tries.`,
  method: (seed: number): string =>
    `A Monte Carlo simulation after JCGM 101:2008, seed ${seed}. Limits count as rectangular unless the given says otherwise; no given depends on another.`,
  notComputed: 'The simulation could not be loaded. Check the connection, then try again.',
}
