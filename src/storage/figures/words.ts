/** The sentences written into a sheet of figures. */
export const FIGURES_WORDS = {
  emptyRange: 'A range that was not filled in.',
  figuresOnly: (day: string) =>
    `These are figures as they were on ${day}, without their formulas. Results, checks and drawings do not follow the givens.`,
} as const

/** The columns of a run’s plan as a table. */
export const RUN_HEADS = [
  'Set-up',
  'Magnification',
  'On the column, or original to sensor',
  'Exposure, equipment',
  'Originals',
  'Frames',
  'Time',
  'Disk',
]
