/** What reads and computes any formula: fetched where what was prepared does not do. */
export { WHOLE } from '../worksheet/whole.ts'
export { libraryFor, wholeLibrary } from './library.ts'
