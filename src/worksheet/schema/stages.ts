/** The stages of a job, in the order they are worked through; sections follow them. */
export const STAGES = ['receive', 'frame', 'light', 'sharp', 'accept', 'deliver'] as const
export type Stage = (typeof STAGES)[number]
