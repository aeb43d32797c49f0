import type { Library } from '../language/index.ts'
import type { Worksheet } from './document.ts'
import { Sheet } from './sheet.ts'
import { WHOLE } from './whole.ts'

/** A worksheet with everything at hand from the start: in the terminal, in tests, and for sheets only looked into. */
export class WholeSheet extends Sheet {
  constructor(worksheet: Worksheet, library: Library) {
    super(worksheet, library, WHOLE)
  }
}
