import { INDEX, TEMPLATES } from 'virtual:templates'
import { textMark } from '../../worksheet/document/rows-mark.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { type FormulaIndex, formulasOf, type TemplateFile } from './template-file.ts'
import { templateWords } from './words.ts'

/** Fetches a file of the site, as data. */
export async function fetched<T>(address: string): Promise<T> {
  const answer = await fetch(address)
  if (!answer.ok) throw new Error(templateWords.notFetched)
  return answer.json()
}

const files = new Map<string, Promise<TemplateFile>>()
/** The file of each worksheet that is a template exactly as fetched. */
const withWorksheet = new WeakMap<Worksheet, TemplateFile>()

/** The file of a template; undefined where no template has that name. */
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

/** The templates that have most of a worksheet's formulas, the likeliest first; of equals, that with the fewest others. */
export async function templatesLike(worksheet: Worksheet, count: number): Promise<readonly string[]> {
  const wanted = new Set(formulasOf(worksheet.cells).map(textMark))
  return Object.entries(await fetched<FormulaIndex>(INDEX))
    .map(([key, text]) => {
      const marks = text.split(' ')
      const shared = marks.filter((mark) => wanted.has(mark)).length
      return { key, shared, others: marks.length - shared }
    })
    .filter(({ shared }) => shared > 0)
    .sort((a, b) => b.shared - a.shared || a.others - b.others)
    .slice(0, count)
    .map(({ key }) => key)
}

/** A worksheet with the formulas of a template: it takes what was compiled for that. */
export function preparedAs(worksheet: Worksheet, file: TemplateFile): Worksheet {
  withWorksheet.set(worksheet, file)
  return worksheet
}

/** What the build has compiled of a worksheet. */
export interface Prepared {
  readonly files: readonly TemplateFile[]
  /** Whether no formula is left that it has not compiled. */
  readonly isWhole: boolean
}

/** The templates with precompiled formulas for a worksheet: few files that cover as many formulas as possible. */
export async function preparedFor(worksheet: Worksheet): Promise<Prepared> {
  const own = withWorksheet.get(worksheet)
  if (own) return { files: [own], isWhole: true }
  const missing = new Set(formulasOf(worksheet.cells).map(textMark))
  if (missing.size === 0) return { files: [], isWhole: true }
  const indexed = Object.entries(await fetched<FormulaIndex>(INDEX)).map(
    ([key, marks]) => [key, marks.split(' ')] as const,
  )
  const found: string[] = []
  for (;;) {
    const count = (marks: readonly string[]): number => marks.filter((mark) => missing.has(mark)).length
    const [key, marks] = indexed.reduce((best, one) => (count(one[1]) > count(best[1]) ? one : best), ['', []])
    if (key === '') break
    found.push(key)
    for (const mark of marks) missing.delete(mark)
  }
  const files = (await Promise.all(found.map(templateFile))).filter((file) => file !== undefined)
  return { files, isWhole: missing.size === 0 }
}
