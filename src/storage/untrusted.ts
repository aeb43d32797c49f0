import * as v from 'valibot'
import { FORMAT, VERSION, type Worksheet, WorksheetSchema } from '../worksheet/document.ts'

/** Why a text from outside is no worksheet: the place in it and what is wrong there. */
export class UntrustedError extends Error {}

/** A worksheet nests four deep; kept keys of later versions may go further, but not without end. */
const DEEPEST = 64

/** Refuses a text nested so deep that working with it later would overflow the stack. */
function refuseDeep(text: string): void {
  let depth = 0
  let inString = false
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at)
    if (inString) {
      if (code === 0x5c) at += 1
      else if (code === 0x22) inString = false
    } else if (code === 0x22) inString = true
    else if (code === 0x5b || code === 0x7b) {
      depth += 1
      if (depth > DEEPEST) throw new UntrustedError(`it is nested more than ${DEEPEST} deep at character ${at + 1}`)
    } else if (code === 0x5d || code === 0x7d) depth -= 1
  }
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null

/** `cell 3 (original_width), value`: where in the document an issue stands. */
function placeOf(issue: v.BaseIssue<unknown>, document: unknown): string {
  const keys = (issue.path ?? []).map((step) => ('key' in step ? step.key : undefined))
  if (keys.length === 0) return 'the document'
  if (keys[0] !== 'cells' || typeof keys[1] !== 'number') return keys.join(', ')
  const cells = isRecord(document) && Array.isArray(document.cells) ? document.cells : []
  const cell: unknown = cells[keys[1]]
  const called = isRecord(cell) ? [cell.name, cell.kind].find((word) => typeof word === 'string') : undefined
  const name = called === undefined ? '' : ` (${String(called).slice(0, 64)})`
  return [`cell ${keys[1] + 1}${name}`, ...keys.slice(2)].join(', ')
}

/** Checks a document against the schema; what is wrong is named with its place. */
export function checkDocument(document: unknown): Worksheet {
  if (!isRecord(document) || document.format !== FORMAT) throw new UntrustedError('it is not an Evenfield worksheet')
  if (typeof document.version === 'number' && document.version > VERSION) {
    throw new UntrustedError(
      `it was written by a newer Evenfield (version ${document.version} of the format, this one reads up to ${VERSION}); reload the page to get the newest`,
    )
  }
  const outcome = v.safeParse(WorksheetSchema, document)
  if (outcome.success) return outcome.output
  const [first, ...others] = outcome.issues
  const more = others.length === 0 ? '' : ` (and ${others.length} more)`
  throw new UntrustedError(`${placeOf(first, document)}: ${first.message}${more}`)
}

/** Reads a worksheet's text from outside. */
export function readText(text: string): Worksheet {
  refuseDeep(text)
  let document: unknown
  try {
    document = JSON.parse(text)
  } catch (error) {
    throw new UntrustedError(`its text breaks off or is not JSON (${(error as Error).message})`)
  }
  return checkDocument(document)
}
