import { FULL_COMPILER as compiler } from '../../language/index.ts'
import type { SheetCapabilities } from '../editing/sheet.ts'
import { TABLES } from '../table/table-capability.ts'
import { RENAMING } from './renaming.ts'

/** All capabilities, the checker included. */
export const FULL_CAPABILITIES: SheetCapabilities = { compiler, tables: TABLES, renaming: RENAMING }
