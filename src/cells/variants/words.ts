/** The words of sets of givens that are compared. */
export const variantsWords = {
  inSheet: (title: string): string => `${title} is now in the sheet.`,
  quantity: 'Quantity',
  present: 'Now',
  titleOf: (number: number): string => `Title of variant ${number}`,
  field: (label: string, title: string): string => `${label}, ${title}`,
  unreadable: 'Not understood:',
  use: (title: string): string => `Use ${title}`,
  add: 'Add a variant',
  empty: 'Nothing is compared yet. In Build, choose which givens vary and which results are compared.',
}
