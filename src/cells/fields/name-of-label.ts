export { nameOfLabel } from '../../worksheet/document/name-of-label.ts'

/** Names given when a cell was added, before anyone thought of one. */
export const isGeneratedName = (name: string): boolean => /^(given|result|check|table|schedule)(_\d+)?$/.test(name)
