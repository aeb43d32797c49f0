import type { Cell, Worksheet } from '../../worksheet/schema/document.ts'
import { asStoreError, StoreError } from './store-error.ts'

/** The schema is fetched when a sheet is first read or saved: the shelf does without. */
const schema = () => import('../../worksheet/schema/read-document.ts')

/** The saved data as a worksheet. Throws a StoreError where it is none. */
export async function readable(data: unknown): Promise<Worksheet> {
  const { DocumentError, readData } = await schema().catch((error) => {
    throw asStoreError(error)
  })
  try {
    return readData(data)
  } catch (error) {
    if (error instanceof DocumentError) throw new StoreError('unreadable', error.message, error)
    throw error
  }
}

/** Cells found to be readable: a sheet is saved at every pause in typing, and most of its cells are as they were. */
const found = new WeakSet<Cell>()

/** Refuses a worksheet that could not be opened again once it is saved. */
export async function writable(worksheet: Worksheet): Promise<void> {
  // Saving never depends on the network: where the schema cannot be fetched the check is left out.
  const fetched = await schema().catch(() => undefined)
  if (!fetched) return
  const { DocumentError, readData } = fetched
  const fresh = worksheet.cells.filter((cell) => !found.has(cell))
  try {
    readData({ ...worksheet, cells: fresh })
  } catch (error) {
    if (error instanceof DocumentError) throw new StoreError('unwritable', error.message, error)
    throw error
  }
  for (const cell of fresh) found.add(cell)
}
