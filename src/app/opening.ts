import { Sheet, type Worksheet } from '../worksheet/index.ts'
import { libraryFor } from './library.ts'
import { OpenSheet } from './open-sheet.ts'
import './sheet-page.ts'

/** Opens a worksheet. This module brings the engine with it: the shelf does without. */
export const openWorksheet = async (worksheet: Worksheet): Promise<OpenSheet> =>
  new OpenSheet(new Sheet(worksheet, await libraryFor(worksheet.cells)))
