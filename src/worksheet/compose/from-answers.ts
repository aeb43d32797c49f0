import type { Sheet } from '../editing/sheet.ts'
import type { Worksheet } from '../schema/document.ts'
import type { ChosenPart } from './choose-parts.ts'
import { compose } from './compose.ts'
import { withFigures } from './figures.ts'
import type { ChoosingRule, OriginalKind, PartLibrary } from './part-library.ts'
import type { Filled, FilledRows } from './sections.ts'

/** What is known of a job before there is a sheet. Any of it may be missing. */
export interface Answers {
  /** A kind of the library's; the first of them where there is none, or none of that name. */
  readonly kind?: string
  /** A phone is all there is to photograph with. */
  readonly byPhone?: boolean
  /** There are several originals alike. */
  readonly several?: boolean
  readonly title?: string
  readonly job?: string
  /** What is filled in, by name. */
  readonly givens?: ReadonlyMap<string, Filled>
  readonly rows?: ReadonlyMap<string, FilledRows>
}

/** A part that computing chose. */
export interface Reasoned {
  readonly part: string
  /** A sentence with figures. */
  readonly why: string
}

export interface FromAnswers {
  readonly worksheet: Worksheet
  /** The same, computed. */
  readonly sheet: Sheet
  readonly chosen: readonly Reasoned[]
}

/** In metres: below it the border and the overlap that are usual leave little of an original. */
const SMALL_SIDE = 0.1
/** The share of a small original's short side that is left round it; common practice, no source. */
const SMALL_BORDER = 1 / 10
/** The most of a frame's short side that the next one repeats; common practice, no source. */
const MOST_OVERLAP = 1 / 4

/**
 * Composes a sheet from answers. The kind gives the parts to start from; each rule then adds a part where the sheet so far,
 * computed, asks for it. The order of the answers makes no difference. `open` computes a worksheet.
 */
export function fromAnswers(
  library: PartLibrary,
  answers: Answers,
  open: (worksheet: Worksheet) => Sheet,
): FromAnswers {
  const { choosing } = library
  const kind = choosing.kinds.find((one) => one.kind === answers.kind) ?? (choosing.kinds[0] as OriginalKind)
  const givens = new Map([...(answers.givens ?? [])].filter(([, { value }]) => value.trim() !== ''))
  const chosen: Reasoned[] = []
  let parts = startOf(library, kind, answers)
  let sheet = composed()
  for (const rule of choosing.rules) {
    if (!isNeeded(rule, sheet)) continue
    const added = [rule.part, ...(rule.with ?? [])].map((part): ChosenPart => ({ part }))
    const next = composed([...parts, ...added])
    // A part whose role is decided by another is of no use.
    if (!next.cells.some((cell) => cell.kind === 'note' && cell.part === rule.part)) continue
    chosen.push({ part: rule.part, why: withFigures(rule.because, sheet) })
    parts = [...parts, ...added]
    sheet = next
  }
  const way = wayCloser(sheet, (text) => composed(parts, new Map([['closer_by', { value: text, from: 'usual' }]])))
  if (way !== undefined) sheet = way
  return { worksheet: sheet.worksheet, sheet, chosen }

  function composed(set = parts, more: ReadonlyMap<string, Filled> = new Map()): Sheet {
    const make = (fitting: ReadonlyMap<string, Filled>): Sheet =>
      open(
        compose(library, {
          title: answers.title?.trim() || kind.title,
          ...(answers.job?.trim() ? { job: answers.job.trim() } : {}),
          parts: set,
          givens: new Map([...fitting, ...more, ...givens]),
          ...(answers.rows ? { rows: answers.rows } : {}),
          examples: false,
        }).worksheet,
      )
    const first = make(new Map())
    const border = fittingBorder(first)
    const second = border.size > 0 ? make(border) : first
    const overlap = fittingOverlap(second)
    return overlap.size > 0 ? make(new Map([...border, ...overlap])) : second
  }
}

/** Whether the sheet of a kind has no count of its own, so that it may be asked how many there are. */
export const mayBeSeveral = ({ choosing, parts }: PartLibrary, kind: OriginalKind): boolean =>
  !kind.parts.some((part) => parts.get(part)?.role === parts.get(choosing.several)?.role)

/** The parts of a kind, with a phone in the place of the camera where that is all there is, and a count of several. */
function startOf(library: PartLibrary, kind: OriginalKind, { byPhone, several }: Answers): ChosenPart[] {
  const { choosing } = library
  return [
    ...kind.parts.map((part): ChosenPart => (part === kind.lead ? { part, by: 'lead' } : { part })),
    ...(byPhone ? [{ part: choosing.phone }] : []),
    ...(several && mayBeSeveral(library, kind) ? [{ part: choosing.several }] : []),
  ]
}

function isNeeded({ where }: ChoosingRule, sheet: Sheet): boolean {
  if ('fails' in where) {
    const cell = sheet.named(where.fails)
    return cell?.kind === 'check' && sheet.checkState(cell.id) === 'fail'
  }
  if ('over' in where) {
    const value = sheet.named(where.beside) && numberOf(sheet, where.result)
    return value !== undefined && value > where.over
  }
  const cell = sheet.named(where.given)
  return cell?.kind === 'given' && cell.value === where.is
}

/** The value of a number in SI units, such as a length; undefined where it is not known. */
function numberOf(sheet: Sheet, name: string, side?: 'width' | 'height'): number | undefined {
  const cell = sheet.named(name)
  if (cell?.kind !== 'given' && cell?.kind !== 'result') return undefined
  const outcome = sheet.outcome(cell.id)
  if (outcome.state !== 'value') return undefined
  const value =
    side && typeof outcome.value === 'object' ? (outcome.value as Record<string, unknown>)[side] : outcome.value
  return typeof value === 'number' ? value : undefined
}

const inMillimetres = (metres: number): string => `${Math.max(1, Math.floor(metres * 1000 + 1e-9))} mm`

/** A usual value in the place of another: what is answered goes before it. */
const usual = (name: string, metres: number): ReadonlyMap<string, Filled> =>
  new Map([[name, { value: inMillimetres(metres), from: 'usual' }]])

/** A narrower border than the usual one, where that is out of proportion. */
function fittingBorder(sheet: Sheet): ReadonlyMap<string, Filled> {
  const sides = [numberOf(sheet, 'original', 'width'), numberOf(sheet, 'original', 'height')]
  const short = Math.min(...sides.map((side) => side ?? Number.POSITIVE_INFINITY))
  const border = numberOf(sheet, 'border')
  const isOut = border !== undefined && short < SMALL_SIDE && border > short * SMALL_BORDER
  return isOut ? usual('border', short * SMALL_BORDER) : new Map()
}

/** A smaller overlap than the usual one, where that is too much of a frame. */
function fittingOverlap(sheet: Sheet): ReadonlyMap<string, Filled> {
  const short = numberOf(sheet, 'tile_short') ?? numberOf(sheet, 'frame_short')
  const overlap = numberOf(sheet, 'overlap')
  const isOut = short !== undefined && overlap !== undefined && overlap > short * MOST_OVERLAP
  return isOut ? usual('overlap', short * MOST_OVERLAP) : new Map()
}

/** The sheet with the first means of coming closer that there is and that fails the fewest checks; undefined where it is chosen, or there is none. */
function wayCloser(sheet: Sheet, withWay: (text: string) => Sheet): Sheet | undefined {
  const chooses = sheet.named('closer_by')
  if (chooses?.kind !== 'given' || chooses.value !== '') return undefined
  const has = (name: string): boolean => {
    const cell = sheet.named(name)
    return cell?.kind === 'given' && cell.value !== ''
  }
  const tried = [
    ...(has('tubes') ? ['tubes'] : []),
    ...(has('powers') ? ['close-up lens'] : []),
    ...(has('both_tube') && has('both_power') ? ['both'] : []),
  ].map((text) => {
    const computed = withWay(text)
    return { computed, fails: computed.checkSummary.fail }
  })
  const least = Math.min(...tried.map(({ fails }) => fails))
  return tried.find(({ fails }) => fails === least)?.computed
}
