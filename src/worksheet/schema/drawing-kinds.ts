/** The kinds of drawing a worksheet may hold; src/drawings/kinds/registry.ts says what each is fed with and how it is drawn. */
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
] as const

export type DrawingKind = (typeof DRAWING_KINDS)[number]
