import { FULL_COMPILER as compiler, type Library } from '../../language/index.ts'
import { contradictionsIn } from '../analysis/contradictions.ts'
import { compared } from '../analysis/difference.ts'
import { Sheet, type SheetCapabilities } from '../editing/sheet.ts'
import { readFrame } from '../frame/frame-readings.ts'
import { defineFunction } from '../own-functions/define-function.ts'
import type { Worksheet } from '../schema/document.ts'
import { TABLES } from '../table/table-capability.ts'
import { RENAMING } from './renaming.ts'

/** All capabilities, the checker included. */
export const FULL_CAPABILITIES: SheetCapabilities = {
  compiler,
  define: defineFunction,
  tables: TABLES,
  frames: readFrame,
  renaming: RENAMING,
  compare: compared,
  compareMeasured: contradictionsIn,
}

/** A worksheet with all capabilities from the start: in the terminal, in tests, and for sheets only looked into. */
export class FullSheet extends Sheet {
  constructor(worksheet: Worksheet, library: Library) {
    super(worksheet, library, FULL_CAPABILITIES)
  }
}
