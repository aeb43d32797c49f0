import { checkTable, namesInTable } from './table-node.ts'
import { tableOutcome } from './table-outcome.ts'

/** What the engine makes of a table; a sheet without one does without. */
export const TABLES = { namesIn: namesInTable, check: checkTable, outcome: tableOutcome }
