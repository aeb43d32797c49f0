import type { Stage } from '../../worksheet/format/format.ts'

/** The headings of the shelf by stage of the job, in the order of work. */
export const MOMENTS: readonly (readonly [Stage, string])[] = [
  ['receive', 'Receive and quote'],
  ['frame', 'Frame'],
  ['light', 'Light'],
  ['sharp', 'Square and sharp'],
  ['accept', 'Expose and accept'],
  ['deliver', 'Run and deliver'],
]
