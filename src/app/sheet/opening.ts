import { functionsOf } from '../../functions/loaders.ts'
import { PrecompiledCompiler } from '../../language/evaluating/precompiled.ts'
import { Sheet } from '../../worksheet/editing/sheet.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { OpenSheet } from '../open/open-sheet.ts'
import { preparedFor } from '../templates/prepared-template.ts'
import './sheet-page.ts'

/** Opens a worksheet. This module brings the engine with it: the shelf does without. */
export async function openWorksheet(worksheet: Worksheet): Promise<OpenSheet> {
  const [{ files: prepared, isWhole }, tables, frames] = await Promise.all([
    preparedFor(worksheet),
    tablesFor(worksheet),
    framesFor(worksheet),
  ])
  // With formulas of its own it has the checker from the start where that can be fetched, so that nothing is computed twice.
  const full = isWhole ? undefined : await import('../common/full-language.ts').catch(() => undefined)
  if (full) return new OpenSheet(await full.fullSheet(worksheet), true)
  const library = await functionsOf(prepared.flatMap(({ functions }) => functions))
  let open: OpenSheet | undefined
  let isLacking = false
  const compiler = new PrecompiledCompiler(
    prepared.map((one) => one.prepared),
    () => {
      isLacking = true
      // Should it fail, it is asked for again at the next key.
      open?.loadFullLanguage().catch(() => {})
    },
  )
  open = new OpenSheet(new Sheet(worksheet, library, { compiler, ...tables, ...frames }))
  if (isLacking) await open.loadFullLanguage()
  return open
}

async function tablesFor({ cells }: Worksheet) {
  if (!cells.some(({ kind }) => kind === 'table')) return {}
  const { TABLES } = await import('../../worksheet/table/table-capability.ts')
  return { tables: TABLES }
}

async function framesFor({ cells }: Worksheet) {
  if (!cells.some(({ kind }) => kind === 'frame')) return {}
  const { readFrame } = await import('../../worksheet/frame/frame-readings.ts')
  return { frames: readFrame }
}
