export { nameOfLabel } from '../../worksheet/document/name-of-label.ts'

/** Whether a name was generated when the cell was added. */
export const isGeneratedName = (name: string): boolean => /^(given|result|check|table|schedule)(_\d+)?$/.test(name)
