/** The full formula compiler, fetched when a formula was not precompiled. */
export { FULL_CAPABILITIES } from '../../worksheet/renaming/full-sheet.ts'
export { libraryFor, wholeLibrary } from './library.ts'
