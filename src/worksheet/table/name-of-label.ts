/** A name made from a label: `Width of the original` gives `width_of_the_original`. Empty where the label has no letters. */
export const nameOfLabel = (label: string): string =>
  label
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^[_0-9]+|_+$/g, '')
    .slice(0, 40)
    .replace(/_+$/, '')

/** Whether a name was generated when the cell was added; a table of version 1 was a schedule. */
export const isGeneratedName = (name: string): boolean =>
  /^(given|result|check|table|frame|schedule)(_\d+)?$/.test(name)
