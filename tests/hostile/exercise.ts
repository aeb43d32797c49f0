import { handOverPage } from '../../src/app/paper/hand-over.ts'
import { drawRange } from '../../src/drawings/range/range-plot.ts'
import { LIBRARY } from '../../src/functions/index.ts'
import { takeKitIn } from '../../src/kit/kit-files.ts'
import { KitError, readKitFile } from '../../src/kit/piece.ts'
import { BackupError, backupText, mergeBackup, mergeText, newSheetsIn } from '../../src/storage/exchange/backup.ts'
import { FileError, openFile } from '../../src/storage/exchange/file.ts'
import { fromLink, LinkError } from '../../src/storage/exchange/link.ts'
import { figuresOnly } from '../../src/storage/figures/figures-only.ts'
import { openMemory } from '../../src/storage/store/memory-store.ts'
import { StoreError } from '../../src/storage/store/store-error.ts'
import { rangeTable } from '../../src/worksheet/analysis/range-table.ts'
import { RangeInputError } from '../../src/worksheet/analysis/range-values.ts'
import { variantsTable } from '../../src/worksheet/analysis/variants-table.ts'
import {
  ChangeRefused,
  isNamed,
  type Range,
  readDocument,
  Sheet,
  type TableCell,
  type Variants,
  type Worksheet,
  writeDocument,
} from '../../src/worksheet/index.ts'
import { readTable, TableError, writeTable } from '../../src/worksheet/table/csv.ts'
import { exportRows } from '../../src/worksheet/table/export.ts'
import { footerOf } from '../../src/worksheet/table/footer.ts'
import { matchTable, pasteAt, takeTable } from '../../src/worksheet/table/match-import.ts'
import { asLink, type Case } from './generate.ts'

const OWN: Worksheet = { format: 'evenfield-worksheet', version: 2, title: 'Own', cells: [] }

/** The prototypes whose keys nobody may change. */
const PROTOTYPES = [Object, Array, Function, String, Number, Boolean, RegExp, Map, Set, Promise, Error].map(
  ({ prototype }) => prototype as object,
)
const keys = (): string => PROTOTYPES.map((one) => Reflect.ownKeys(one).map(String).join()).join(';')
const BEFORE = keys()

export function refusePollution(): void {
  if (keys() !== BEFORE || 'polluted' in {}) throw new Error('A prototype was changed.')
}

/** A page that is handed over: tags as a reader finds them, its own style left out. */
export function refuseMarkup(page: string): void {
  const body = page.replace(/<style>[^<]*<\/style>/, '')
  for (const [tag, name] of body.matchAll(/<\/?([^\s>]*)[^>]*>/g)) {
    if (
      !/^(!doctype|html|head|meta|title|style|body|article|header|section|footer|div|p|b|h1|h2|dl|dt|dd|table|colgroup|col|thead|tbody|tr|th|td|span|code|figure|figcaption|svg|g|path|rect|circle|line|polyline|polygon|text|tspan|desc|defs|clippath|pattern|use)$/i.test(
        name ?? '',
      )
    )
      throw new Error(`A tag of no one’s making: ${tag.slice(0, 80)}`)
    if (/\son\w+\s*=|\s(src|href|style|srcdoc|action)\s*=/i.test(tag.replace(/="[^"]*"/g, '=""')))
      throw new Error(`An attribute that runs or loads: ${tag.slice(0, 80)}`)
  }
}

/** What is pasted into a table, saved from it and given for a column's name. */
export function useTable(sheet: Sheet, cell: TableCell, text: string): void {
  const node = sheet.engine.node(cell.id)
  if (!node) return
  footerOf(sheet.engine, node)
  writeTable(exportRows(sheet.engine, node))
  try {
    sheet.apply({ do: 'rename column', id: cell.id, column: 0, name: text })
  } catch (error) {
    if (!(error instanceof ChangeRefused)) throw error
  }
  try {
    const { rows } = readTable(text)
    const now = sheet.cell(cell.id) as TableCell
    const taken = takeTable(now, rows, matchTable(now.columns, rows), 'below')
    sheet.apply({ do: 'replace', cell: now.columns.length > 0 ? pasteAt(taken, rows, 0, 0) : taken })
    sheet.outcome(cell.id)
    footerOf(sheet.engine, sheet.engine.node(cell.id) as never)
  } catch (error) {
    if (!(error instanceof TableError)) throw error
  }
}

function useRange(sheet: Sheet, cell: Range): void {
  try {
    drawRange(rangeTable(sheet, cell), { width: 300 })
  } catch (error) {
    if (!(error instanceof RangeInputError)) throw error
  }
}

/** All that the program does with a sheet someone sent. */
async function useSheet(worksheet: Worksheet, hostileName: string, handsOver: boolean): Promise<void> {
  const sheet = new Sheet(worksheet, LIBRARY)
  void sheet.checkSummary
  for (const { id, kind } of sheet.cells) {
    if (kind === 'given' || kind === 'result' || kind === 'table') sheet.outcome(id)
    if (kind === 'check') sheet.check(id)
    if (kind === 'drawing') sheet.drawing(id)
    if (kind === 'variants') variantsTable(sheet, sheet.cell(id) as Variants)
    if (kind === 'range') useRange(sheet, sheet.cell(id) as Range)
  }
  const named = sheet.cells.find(isNamed)
  if (named)
    try {
      sheet.apply({ do: 'rename', id: named.id, name: hostileName })
    } catch (error) {
      if (!(error instanceof ChangeRefused)) throw error
    }
  const table = sheet.cells.find((cell) => cell.kind === 'table')
  if (table?.kind === 'table') useTable(sheet, table, hostileName)
  const given = sheet.cells.find((cell) => cell.kind === 'given')
  // As when someone pastes it into a field.
  if (given?.kind === 'given') sheet.apply({ do: 'replace', cell: { ...given, value: hostileName } })
  readDocument(writeDocument(figuresOnly(sheet)))
  if (!handsOver) return
  refuseMarkup(await handOverPage(sheet, { at: new Date(0), working: true, revision: hostileName }))
}

const opened = async ({ way, bytes }: Case): Promise<Worksheet | undefined> => {
  try {
    return way === 'link' ? await fromLink(asLink(bytes)) : await openFile(new Blob([bytes as BlobPart]))
  } catch (error) {
    if (error instanceof FileError || error instanceof LinkError) return undefined
    throw error
  }
}

/** Takes a backup in twice, and out again: nothing is written over, and what came in once does not come in again. */
async function takeBackup(bytes: Uint8Array): Promise<boolean> {
  const text = new TextDecoder().decode(bytes)
  const store = openMemory(undefined)
  const own = await store.save('a', OWN)
  try {
    await newSheetsIn(store, text)
    mergeText(await mergeBackup(store, text))
    await takeKitIn(store, text)
  } catch (error) {
    if (error instanceof BackupError) return false
    throw error
  }
  const listed = async () => [...(await store.list()), ...(await store.listRemoved())]
  const now = Date.now() + 120_000
  const sheets = await listed()
  for (const { id, changed, removed = 0 } of sheets) {
    if (!(changed <= now && removed <= now)) throw new Error('A date lies in the future.')
    await store.load(id).catch((error) => {
      if (!(error instanceof StoreError)) throw error
    })
    for (const { at } of await store.revisions(id)) if (!(at <= now)) throw new Error('A date lies in the future.')
  }
  const [mine] = sheets.filter(({ id }) => id === 'a')
  if (mine?.stamp !== own.stamp) throw new Error('A sheet of the browser’s own was written over.')
  await mergeBackup(store, text)
  if ((await listed()).length !== sheets.length) throw new Error('It came in twice.')
  const again = openMemory(undefined)
  await mergeBackup(again, (await backupText(store, true)).text)
  if ((await again.list()).length !== (await store.list()).length) throw new Error('A backup of it lacks a sheet.')
  return true
}

function takeKit(bytes: Uint8Array): boolean {
  try {
    readKitFile(new TextDecoder().decode(bytes))
    return true
  } catch (error) {
    if (error instanceof KitError) return false
    throw error
  }
}

/** Opens what someone sent and uses it; says whether it opened. Anything but a plain refusal is thrown. */
export async function exercise(one: Case, hostileName: string, handsOver = true): Promise<boolean> {
  if (one.way === 'backup' || one.way === 'kit') {
    const isTaken = one.way === 'kit' ? takeKit(one.bytes) : await takeBackup(one.bytes)
    refusePollution()
    return isTaken
  }
  const worksheet = await opened(one)
  refusePollution()
  if (!worksheet) return false
  await useSheet(worksheet, hostileName, handsOver)
  refusePollution()
  return true
}

/** The processor’s time an act takes, in ms: a busy machine makes nothing seem to hang. */
export async function measured<T>(act: () => Promise<T>): Promise<{ ms: number; gave: T }> {
  const start = process.cpuUsage()
  const gave = await act()
  const { user, system } = process.cpuUsage(start)
  return { ms: (user + system) / 1000, gave }
}
