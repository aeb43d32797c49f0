import * as v from 'valibot'
import { withoutOrigin } from '../storage/exchange/origin.ts'
import { newId } from '../storage/store/new-id.ts'
import type { Store } from '../storage/store/types.ts'
import type { Worksheet } from '../worksheet/schema/document.ts'
import { issueText } from '../worksheet/schema/issue-text.ts'
import { DocumentError, readData } from '../worksheet/schema/read-document.ts'
import { KitError, type Piece, PiecesSchema } from './piece.ts'
import { underLock } from './under-lock.ts'
import { kitFileWords as words } from './words.ts'

/** What a file with a studio's templates, functions and kit says it is. */
export const STUDIO_FORMAT = 'evenfield-studio'
const SETTING = 'templates'
const LOCK = 'evenfield-templates'
const MOST_TEMPLATES = 200
/** In characters. */
const LARGEST_SET = 40_000_000
const HEAD = 200

/** A sheet that new sheets of the studio start from, functions and examples with it. */
export interface StudioTemplate {
  readonly id: string
  readonly worksheet: Worksheet
}

const TemplatesSchema = v.pipe(
  v.array(v.looseObject({ id: v.pipe(v.string(), v.regex(/^[\w-]{1,64}$/)), worksheet: v.looseObject({}) })),
  v.maxLength(MOST_TEMPLATES),
)

type SavedTemplate = v.InferOutput<typeof TemplatesSchema>[number]

function readable({ id, worksheet }: SavedTemplate): StudioTemplate | undefined {
  try {
    return { id, worksheet: readData(worksheet) }
  } catch (error) {
    if (!(error instanceof DocumentError)) throw error
    return undefined
  }
}

/** The studio's templates, saved in this browser beside its sheets. */
export class StudioTemplates {
  constructor(private readonly store: Pick<Store, 'setting' | 'saveSetting'>) {}

  /** Every template that can be read, in the order they were added. Throws KitError. */
  async list(): Promise<readonly StudioTemplate[]> {
    return (await this.saved()).flatMap((one) => readable(one) ?? [])
  }

  private async saved(): Promise<readonly SavedTemplate[]> {
    const saved = await this.store.setting(SETTING)
    if (saved === undefined) return []
    const read = v.safeParse(TemplatesSchema, saved)
    // Overwriting them would lose what a newer version saved.
    if (!read.success) throw new KitError(words.newerTemplates)
    return read.output
  }

  async find(id: string): Promise<Worksheet | undefined> {
    return (await this.list()).find((one) => one.id === id)?.worksheet
  }

  /** Adds a sheet as a template; one of the same title is replaced. */
  put(worksheet: Worksheet): Promise<readonly StudioTemplate[]> {
    return this.take([worksheet])
  }

  /** Adds sheets as templates; those of the same titles are replaced. */
  take(worksheets: readonly Worksheet[]): Promise<readonly StudioTemplate[]> {
    return this.change((templates) => {
      const next = [...templates]
      for (const worksheet of worksheets) {
        const at = next.findIndex((one) => one.worksheet.title === worksheet.title)
        if (at >= 0) next[at] = { id: (next[at] as StudioTemplate).id, worksheet: withoutOrigin(worksheet) }
        else next.push({ id: newId(), worksheet: withoutOrigin(worksheet) })
      }
      if (next.length > MOST_TEMPLATES) throw new KitError(words.tooManyTemplates(MOST_TEMPLATES))
      return next
    })
  }

  remove(id: string): Promise<readonly StudioTemplate[]> {
    return this.change((templates) => templates.filter((one) => one.id !== id))
  }

  /** Reads and writes in one step, also when another tab does the same. */
  private change(
    how: (templates: readonly StudioTemplate[]) => readonly StudioTemplate[],
  ): Promise<readonly StudioTemplate[]> {
    return underLock(LOCK, async () => {
      const saved = await this.saved()
      const next = how(saved.flatMap((one) => readable(one) ?? []))
      // A template that only a newer version can read stays saved.
      await this.store.saveSetting(SETTING, [...next, ...saved.filter((one) => !readable(one))])
      return next
    })
  }
}

/** A studio's templates, with the functions in them, and its kit. */
export interface StudioSet {
  readonly templates: readonly Worksheet[]
  readonly kit: readonly Piece[]
}

/** The text of a studio’s file: its templates and its kit. */
export const writeStudioSet = ({ templates, kit }: StudioSet): string =>
  `${JSON.stringify({ format: STUDIO_FORMAT, version: 1, templates, kit }, undefined, 1)}\n`

/** The set in a file; undefined for a file of another format. Throws KitError, which names the place. */
export async function studioSetIn(file: Blob): Promise<StudioSet | undefined> {
  if (file.size > LARGEST_SET || !(await file.slice(0, HEAD).text()).includes(`"${STUDIO_FORMAT}"`)) return undefined
  return readStudioSet(await file.text())
}

/** Reads a studio’s file. Throws with a sentence where it is none. */
export function readStudioSet(text: string): StudioSet {
  let data: {
    readonly format?: unknown
    readonly version?: unknown
    readonly templates?: unknown
    readonly kit?: unknown
  }
  try {
    data = JSON.parse(text, (key, value) => (key === '__proto__' ? undefined : value)) ?? {}
  } catch {
    throw new KitError(words.setNotJson)
  }
  if (data.format !== STUDIO_FORMAT) throw new KitError(words.notASet)
  if (data.version !== 1) throw new KitError(words.newerTemplates)
  const kit = v.safeParse(PiecesSchema, data.kit ?? [])
  if (!kit.success) throw new KitError(words.unreadable('kit', issueText(kit.issues[0])))
  if (!Array.isArray(data.templates) || data.templates.length > MOST_TEMPLATES)
    throw new KitError(words.unreadable('templates', words.tooManyTemplates(MOST_TEMPLATES)))
  const templates = data.templates.map((worksheet: unknown, at) => {
    try {
      return readData(worksheet)
    } catch (error) {
      if (!(error instanceof DocumentError)) throw error
      throw new KitError(words.unreadable(`templates › ${at + 1}`, error.message))
    }
  })
  return { templates, kit: kit.output }
}
