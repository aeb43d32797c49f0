/** What reads and computes any formula: fetched where what was prepared does not do. */
export { FULL_CAPABILITIES } from '../../worksheet/renaming/full-capabilities.ts'
export { libraryFor, wholeLibrary } from './library.ts'
