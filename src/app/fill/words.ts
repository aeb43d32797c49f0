import { plural } from '../../units/plural.ts'

export const fillWords = {
  fineAdjustments: 'Fine adjustments',
  rows: (n: number): string => plural(n, 'row'),
  emptyBefore: 'This sheet is empty.',
  emptyLink: 'Add your own cells in Build',
  emptyAfter: ', or add a section for a part of the job.',
  addASection: 'Add a section',
}
