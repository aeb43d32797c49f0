import type { Worksheet } from '../../worksheet/index.ts'
import { FullSheet } from '../../worksheet/renaming/full-sheet.ts'
import { libraryFor } from './library.ts'

/** The full formula compiler, fetched when a formula was not precompiled. */
export { FULL_CAPABILITIES } from '../../worksheet/renaming/full-sheet.ts'
export { libraryFor, wholeLibrary } from './library.ts'

/** A worksheet with all capabilities from the start. */
export const fullSheet = async (worksheet: Worksheet): Promise<FullSheet> =>
  new FullSheet(worksheet, await libraryFor(worksheet.cells))
