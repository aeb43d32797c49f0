import { originOf } from '../../cells/shared/given-origin.ts'
import { asSet, type Setting } from '../../units/index.ts'
import { differenceText } from '../../worksheet/analysis/difference.ts'
import { declaredUnit } from '../../worksheet/document/read-given.ts'
import type { Outcome, Sheet, ValueOutcome } from '../../worksheet/index.ts'
import { plannedOf } from './measured-given.ts'
import type { StandFigureCell } from './stand-steps.ts'
import { standWords as words } from './words.ts'

/** Whether the figure to set or to reach is an example's, or is computed from such; what was measured in its place is not. */
export function targetRests(sheet: Sheet, cell: StandFigureCell, resting: ReadonlySet<string>): boolean {
  if (cell.kind === 'given')
    return originOf(cell) === 'measured' ? plannedOf(cell)?.kind === 'example' : resting.has(cell.id)
  if (cell.measured === undefined) return resting.has(cell.id)
  const { engine } = sheet
  const node = engine.node(cell.id)
  const { order, needs } = engine.layout
  const below = node ? [...(needs[engine.positionOf(node)] ?? [])] : []
  return below.some((at) => resting.has(order[at]?.cell.id ?? ''))
}

/** A figure as it is set on the equipment: the marked value, the exact one beside it. */
export function settingOf({ shown, type }: Pick<ValueOutcome, 'shown' | 'type'>): Setting {
  const set = asSet(shown)
  return type.kind === 'number' ? set : { ...set, figure: unbraced(set.figure.replaceAll('_', ' ')) }
}

/** A list without the braces that it has in a formula. */
export const unbraced = (text: string): string => text.replace(/^\{|\}$/g, '')

/** A figure at the stand: its target, and what was measured in its place. */
export interface Compared {
  /** Undefined where there is only a reading to take, or the figure is not known. */
  readonly target: Setting | undefined
  readonly targetText: string
  /** The text that was measured; empty where nothing was. */
  readonly typed: string
  readonly measuredText: string
  /** `4 mm over`; empty where nothing can be compared. */
  readonly difference: string
  /** Whether the measured figure is above the target; undefined where they are the same or cannot be compared. */
  readonly more: boolean | undefined
  /** What to do about the difference, where the sheet says: `Lower the carriage by 4 mm`. */
  readonly action: string | undefined
  /** Sentences on other measured values that cannot be right together with this one. */
  readonly contradicts?: readonly string[]
}

const NOT_COMPARED = { typed: '', measuredText: '', difference: '', more: undefined, action: undefined }

/** A figure of the stand: its target, what was measured, the difference, and what to do about it. */
export function comparedOf(sheet: Sheet, cell: StandFigureCell): Compared {
  const outcome = sheet.outcome(cell.id)
  return cell.kind === 'result' ? ofResult(cell.measured ?? '', outcome) : ofGiven(sheet, cell, outcome)
}

const sideOf = (measured: unknown, target: unknown): boolean | undefined =>
  typeof measured === 'number' && typeof target === 'number' && measured !== target ? measured > target : undefined

function ofResult(typed: string, outcome: Outcome): Compared {
  if (outcome.state !== 'value') return { ...NOT_COMPARED, typed, target: undefined, targetText: '' }
  const { measured, type, value } = outcome
  if (!measured)
    return { ...NOT_COMPARED, typed, target: settingOf(outcome), targetText: outcome.shown.mark ?? outcome.shown.text }
  const { computed, shown, difference, adjust, contradicts = [] } = measured
  return {
    target: computed && settingOf({ shown: computed.shown, type }),
    targetText: computed?.shown.text ?? '',
    typed,
    measuredText: shown.text,
    difference,
    more: sideOf(value, computed?.value),
    action: adjust,
    contradicts,
  }
}

function ofGiven(sheet: Sheet, cell: StandFigureCell & { kind: 'given' }, outcome: Outcome): Compared {
  const origin = originOf(cell)
  const shownText = outcome.state === 'value' ? unbraced(outcome.shown.text) : ''
  if (origin !== 'measured') {
    // A reading has no target: what is in the sheet until it is taken is an example or a usual value.
    if (cell.reading === true)
      return {
        ...NOT_COMPARED,
        ...(origin === 'typed' ? { typed: cell.value, measuredText: shownText } : {}),
        target: undefined,
        targetText: '',
      }
    const target = outcome.state === 'value' ? settingOf(outcome) : undefined
    return { ...NOT_COMPARED, target, targetText: target ? shownText : '' }
  }
  const planned = plannedOf(cell)
  const was = planned && sheet.trial([{ ...cell, value: planned.text }]).outcome(cell.id)
  const measured = { typed: cell.value, measuredText: shownText }
  if (was?.state !== 'value' || outcome.state !== 'value')
    return { ...NOT_COMPARED, ...measured, target: undefined, targetText: '' }
  const { unit } = declaredUnit(cell.unit)
  const [now, before] = [outcome.value, was.value]
  const more = sideOf(now, before)
  const said = more === undefined ? undefined : more ? cell.advice?.less : cell.advice?.more
  return {
    ...measured,
    target: settingOf(was),
    targetText: was.shown.text,
    difference:
      typeof now === 'number' && typeof before === 'number' ? differenceText(now, before, outcome.type, unit) : '',
    more,
    action: said?.replaceAll('{}', was.shown.text),
  }
}

/** What to do about the difference between a figure and its target, in one sentence; empty where there is none. */
export function adviceText({ action, more, difference, targetText, measuredText }: Compared): string {
  if (difference === '') return ''
  if (more === undefined) return words.onTarget
  return words.orUse(action ?? words.correctTo(targetText), measuredText)
}
