import type { Library } from '../../language/index.ts'
import { Sheet } from '../editing/sheet.ts'
import type { Worksheet } from '../schema/document.ts'
import { FULL_CAPABILITIES } from './full-capabilities.ts'

/** A worksheet with all capabilities from the start: in the terminal, in tests, and for sheets only looked into. */
export class FullSheet extends Sheet {
  constructor(worksheet: Worksheet, library: Library) {
    super(worksheet, library, FULL_CAPABILITIES)
  }
}
