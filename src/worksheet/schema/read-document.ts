import * as v from 'valibot'
import { FORMAT, VERSION } from '../format/format.ts'
import { type Worksheet, WorksheetSchema } from './document.ts'
import { issueText } from './issue-text.ts'
import { migrate } from './migrate.ts'
import * as words from './words.ts'

/** Why a document cannot be opened: what, where in it, and whether a newer program might. */
export class DocumentError extends Error {
  constructor(
    message: string,
    /** Where: `cells[3].unit`, or empty for the whole document. */
    readonly place: string,
    readonly isNewer = false,
    /** Of a newer one: the whole of it, for `readNewer`. */
    readonly data?: unknown,
  ) {
    super(message)
  }
}

/** A worksheet's text larger than this is refused before it is parsed. */
export const MAX_DOCUMENT_LENGTH = 8_000_000

const DEEPEST_JSON = 40

/** Refuses text nested so deep that walking it might overflow the stack; a worksheet is flat. */
function refuseDeep(json: string): void {
  let depth = 0
  let inText = false
  for (let i = 0; i < json.length; i++) {
    const c = json.charCodeAt(i)
    if (inText) {
      if (c === 92) i++
      else if (c === 34) inText = false
    } else if (c === 34) inText = true
    else if (c === 91 || c === 123) {
      if (++depth > DEEPEST_JSON) throw new DocumentError(words.nestedTooDeep, '')
    } else if (c === 93 || c === 125) depth--
  }
}

/** Reads a worksheet from JSON text. Throws DocumentError. */
export function readDocument(json: string): Worksheet {
  if (json.length > MAX_DOCUMENT_LENGTH) throw new DocumentError(words.tooLarge, '')
  return readData(parseJson(json))
}

/** Parses text from outside, nested no deeper than is safe and without keys that change a prototype. Throws DocumentError. */
export function parseJson(json: string): unknown {
  refuseDeep(json)
  try {
    // `__proto__` as a key would become a prototype when spread; nothing honest uses it.
    return JSON.parse(json, (key, value) => (key === '__proto__' ? undefined : value))
  } catch (error) {
    throw new DocumentError(words.notJson((error as Error).message), '')
  }
}

/** Checks data against the schema. Throws DocumentError. */
export function readData(data: unknown): Worksheet {
  if (typeof data !== 'object' || data === null || (data as { format?: unknown }).format !== FORMAT)
    throw new DocumentError(words.notAWorksheet(FORMAT), 'format')
  const version = (data as { version?: unknown }).version
  if (typeof version === 'number' && version > VERSION)
    throw new DocumentError(words.newer(version, VERSION), 'version', true, data)
  const parsed = v.safeParse(WorksheetSchema, migrate(data as Record<string, unknown>))
  if (!parsed.success) throw explained(parsed.issues[0])
  refuseRepeatedIds(parsed.output)
  return parsed.output
}

function explained(issue: v.BaseIssue<unknown>): DocumentError {
  const place = (issue.path ?? []).map(({ key }) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`)).join('')
  const where = place.replace(/^\./, '')
  return new DocumentError(words.at(where, issueText(issue)), where)
}

function refuseRepeatedIds(worksheet: Worksheet): void {
  const seen = new Set<string>()
  worksheet.cells.forEach(({ id }, at) => {
    if (seen.has(id)) throw new DocumentError(words.sameId(at, id), `cells[${at}].id`)
    seen.add(id)
  })
}

/** The worksheet as JSON text, readable and stable. */
export const writeDocument = (worksheet: Worksheet): string => `${JSON.stringify(worksheet, null, 2)}\n`
