import { LIBRARY } from '../functions/index.ts'
import { Sheet, type Worksheet } from '../worksheet/index.ts'
import { OpenSheet } from './open-sheet.ts'
import './sheet-page.ts'

/** Opens a worksheet. This module brings the engine with it: the shelf does without. */
export const openWorksheet = (worksheet: Worksheet): OpenSheet => new OpenSheet(new Sheet(worksheet, LIBRARY))
