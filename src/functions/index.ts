import type { FunctionRecord, Library } from '../language/index.ts'
import { CLOSE_FOCUS } from './close-focus.ts'
import { LIGHTING } from './lighting.ts'

/** Every function of the language, in the order of the guide. */
export const FUNCTIONS: readonly FunctionRecord[] = [...CLOSE_FOCUS, ...LIGHTING]

export const LIBRARY: Library = new Map(FUNCTIONS.map((record) => [record.name, record]))
