import { INDEX, TEMPLATES } from 'virtual:templates'
import type { Worksheet } from '../../worksheet/index.ts'
import { type FormulaIndex, formulasOf, markOf, type TemplateFile } from './template-file.ts'

const UNREACHED = 'This start could not be fetched. Reload the page, or start from an empty sheet.'

async function fetched<T>(address: string): Promise<T> {
  const answer = await fetch(address)
  if (!answer.ok) throw new Error(UNREACHED)
  return answer.json()
}

const files = new Map<string, Promise<TemplateFile>>()
/** What was prepared with a worksheet that is a template just as it was fetched. */
const withWorksheet = new WeakMap<Worksheet, TemplateFile>()

/** The file of a template; undefined where there is none of that name. */
export async function templateFile(key: string): Promise<TemplateFile | undefined> {
  if (!Object.hasOwn(TEMPLATES, key)) return undefined
  const known = files.get(key) ?? fetched<TemplateFile>(TEMPLATES[key] as string)
  files.set(key, known)
  try {
    const file = await known
    withWorksheet.set(file.worksheet, file)
    return file
  } catch (error) {
    files.delete(key)
    throw error
  }
}

/** The templates a worksheet's formulas come from, as far as they do: the fewest that hold the most. */
export async function preparedFor(worksheet: Worksheet): Promise<readonly TemplateFile[]> {
  const own = withWorksheet.get(worksheet)
  if (own) return [own]
  const wanted = new Set(formulasOf(worksheet.cells).map(markOf))
  if (wanted.size === 0) return []
  const held = Object.entries(await fetched<FormulaIndex>(INDEX)).map(
    ([key, marks]) => [key, marks.split(' ')] as const,
  )
  const found: string[] = []
  for (;;) {
    const count = (marks: readonly string[]): number => marks.filter((mark) => wanted.has(mark)).length
    const [key, marks] = held.reduce((best, one) => (count(one[1]) > count(best[1]) ? one : best), ['', []])
    if (key === '') break
    found.push(key)
    for (const mark of marks) wanted.delete(mark)
  }
  return (await Promise.all(found.map(templateFile))).filter((file) => file !== undefined)
}
