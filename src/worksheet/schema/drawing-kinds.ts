/** The kinds of drawing in the format; src/drawings/kinds/registry.ts lists the inputs of each and what draws it. */
export const DRAWING_KINDS = [
  'set-up',
  'column',
  'evenness',
  'readings',
  'depth',
  'depth-zone',
  'time',
  'tiles',
  'squareness',
  'ledger',
  'patches',
  'measured-light',
  'over-time',
  'lens-shadow',
] as const

export type DrawingKind = (typeof DRAWING_KINDS)[number]
