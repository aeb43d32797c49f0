import type { Stage } from '../../worksheet/schema/format.ts'

/** The stages of a job as the shelf heads them, in the order they are worked through. */
export const MOMENTS: readonly (readonly [Stage, string])[] = [
  ['receive', 'Receive and quote'],
  ['frame', 'Frame'],
  ['light', 'Light'],
  ['sharp', 'Square and sharp'],
  ['accept', 'Expose and accept'],
  ['deliver', 'Run and deliver'],
]
